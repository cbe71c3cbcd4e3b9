// The shop in section on its floor, in the configured order. Gas pipes are as thick as their flow, electric cables dashed.
import { now } from './clock.js';
import { pastOf } from './history.js';
import { annealer } from './piece-annealer.js';
import { furnace } from './piece-furnace.js';
import { gloryHole } from './piece-glory-hole.js';
import { oven } from './piece-oven.js';
import { curveOf, deviationOf, gasOf } from './saying.js';
import { channelOf, feedChannel, hotChannel, isOld, loadOf } from './shop.js';
import { el, line, path, rect, text } from './svg.js';
import { figure } from './units.js';

/** The drawing of one appliance, standing on (0, 0), and the points where pipes and threads meet it. */
export function piece(appliance, pot) {
  const channel = hotChannel(appliance), isOldNow = channel ? isOld(channel) : false, temperatureCelsius = channel?.value ?? null;
  const off = appliance.mode === 'off' || appliance.mode === 'out-of-service';
  if (appliance.kind === 'furnace') {
    const flow = feedChannel(appliance), most = Math.max(1, ...pastOf(appliance).feed.map(p => p.v));
    return furnace({
      temperatureCelsius, isOld: isOldNow, profile: pot?.innerProfile, fullDepthCm: pot?.fullDepthCm,
      fireShare: flow && !isOld(flow) && stateOf(appliance, 'flame') !== false ? Math.min(1, flow.value / most) : 0,
      glass: pot?.massKg >= 0 && pot.capacityKg ? { share: share(pot, 'levelCm', 'massKg'), low: share(pot, 'levelCmLow95', 'massKgLow95'), high: share(pot, 'levelCmHigh95', 'massKgHigh95') } : null,
    });
  }
  if (appliance.kind === 'glory-hole') return gloryHole({ temperatureCelsius, isOld: isOldNow, isOff: off, isShut: stateOf(appliance, 'door') === false });
  if (appliance.kind === 'annealer') {
    const load = curveOf(loadOf(appliance)), plan = load.length > 1 ? load : thin(pastOf(appliance).due), from = plan[0]?.t ?? now() - 24 * 3600e3;
    return annealer({ temperatureCelsius, isOld: isOldNow, plan, measured: thin(pastOf(appliance).hot.filter(p => p.t >= from)), nowMs: now(), deviationCelsius: deviationOf(appliance) });
  }
  return oven({ temperatureCelsius, isOld: isOldNow });
}

/** A state that is known now as true or false; null where there is no sensor or it is silent. */
const stateOf = (appliance, quantity) => { const c = channelOf(appliance, quantity); return c && c.value !== null && !isOld(c) ? c.value >= .5 : null; };

const share = (pot, level, mass) => pot.fullDepthCm && pot[level] !== undefined && pot[level] !== null ? pot[level] / pot.fullDepthCm : pot[mass] / pot.capacityKg;
const thin = points => points.filter((_, i) => i % Math.ceil(points.length / 160) === 0 || i === points.length - 1);

/**
 * Draws the room into svg. places: [{appliance, left, width}] in px; returns where a thread meets each appliance, and how wide a ring to draw there.
 */
export function drawRoom(svg, { width, height, places, pots, houseLeft }) {
  const points = new Map(), floor = height - 2, k = (height - 44) / 262, g = el('g', {});
  const pieces = places.map(({ appliance, left, width: column }) => {
    const drawn = piece(appliance, pots.get(appliance.id)), fits = Math.min(k, column / drawn.width), x = left + drawn.width / 2 * fits;
    drawn.node.setAttribute('transform', `translate(${x.toFixed(1)},${floor}) scale(${fits.toFixed(4)})`);
    const px = ([dx, dy]) => [x + dx * fits, floor + dy * fits];
    points.set(appliance.id, { hot: px(drawn.at.hot), ring: drawn.ring * fits });
    return { appliance, drawn, feed: px(drawn.at.feed), x };
  });
  pipes(g, pieces, { houseLeft, width, height, k });
  for (const p of pieces) g.append(p.drawn.node);
  g.append(line(0, floor, width, floor, 'floor-line'));
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren(svg.querySelector('title') ?? '', g);
  return points;
}

const PIXELS_PER_FLOW = 1.5;

function pipes(g, pieces, { houseLeft, width, height, k }) {
  const fed = pieces.map(p => ({ ...p, gas: channelOf(p.appliance, 'gas-flow'), power: channelOf(p.appliance, 'power') ?? channelOf(p.appliance, 'relay') }));
  const gas = fed.filter(p => p.gas), flowOf = p => p.gas && !isOld(p.gas) ? Math.max(0, p.gas.value) : 0;
  const total = gasOf(), thick = flow => Math.min(22, 1 + flow * PIXELS_PER_FLOW * Math.max(.7, k));
  // The house's wall with its meter, from which everything is fed.
  g.append(rect(houseLeft, 6, 9, height - 8, 'masonry'));
  if (gas.length) {
    g.append(rect(houseLeft + 9, 8, 30, 26, 'masonry'), el('circle', { cx: houseLeft + 24, cy: 21, r: 7, class: 'hair' }));
    let top = 12;
    for (const p of [...gas].sort((a, b) => b.feed[0] - a.feed[0])) {
      const w = thick(flowOf(p)), y = top + w / 2, [fx, fy] = p.feed, drop = p.appliance.kind === 'furnace' ? fx + 16 : fx;
      const off = flowOf(p) < .05;
      g.append(path(`M${houseLeft + 39},${y}H${drop}V${fy}${drop === fx ? '' : `H${fx}`}`, off ? 'hair' : 'gas-pipe', { 'stroke-width': off ? 1 : w, 'stroke-dasharray': off ? '3 6' : null, opacity: isOld(p.gas) ? .45 : 1 }));
      const f = figure('gas-flow', p.gas.value);
      const right = drop !== fx;
      g.append(text(right ? drop + w / 2 + 8 : drop - w / 2 - 8, top + w + (right ? 40 : 20), isOld(p.gas) ? 'gas not known' : off ? 'no gas' : `${f.number} ${f.unit}`, 'dim pipe-words', null, right ? 'start' : 'end'));
      top += w + 3;
    }
  }
  const electric = fed.filter(p => p.power && !p.gas);
  if (electric.length) {
    const y = height * .1, from = Math.min(...electric.map(p => p.feed[0])) - 40 * k;
    g.append(path(`M${from},${y}H${Math.max(...electric.map(p => p.feed[0]))}`, 'cable'));
    for (const p of electric) {
      g.append(line(p.feed[0], y, p.feed[0], p.feed[1], 'cable'));
      const edge = p.feed[0] > width - 110;
      g.append(text(p.feed[0] + (edge ? -8 : 8), y + 20, isOld(p.power) ? 'power not known' : figure(p.power.quantity, p.power.value).text, 'dim pipe-words', null, edge ? 'end' : 'start'));
    }
  }
  return total;
}
