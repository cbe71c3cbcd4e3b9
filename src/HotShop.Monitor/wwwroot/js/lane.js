// One lane of the strip: the temperature as a ribbon in its true colour, as thick as the fire is fed, gaps hatched, the
// expected pale with its band. The same lane serves the wall, the phone and the pages of single appliances.
import { glow } from './glow.js';
import { at, clamp, el, freshId, hatch, line, path, polyline, rect } from './svg.js';
import { valueAt } from './forecast.js';

/** Cuts a series where nothing was heard for longer than gapMs: {runs: [[point]], gaps: [[fromMs, toMs]], firstMs}: what lies before the first reading is not known to be a gap. */
export function cut(series, gapMs, fromMs, untilMs) {
  const runs = [], gaps = [];
  let run = [];
  for (const point of series) {
    const previous = run.at(-1);
    if (previous && point.t - previous.t > gapMs) { runs.push(run); gaps.push([previous.t, point.t]); run = []; }
    run.push(point);
  }
  if (run.length) runs.push(run);
  const last = series.at(-1);
  if (last && untilMs - last.t > gapMs) gaps.push([last.t, untilMs]);
  return { runs, gaps, firstMs: series.length && series[0].t - fromMs > gapMs ? series[0].t : null };
}

/** Vertical place of temperatures in a lane. A fire that stays within a narrow range is shown that range, never less than 60 °C. */
export function rangeOf(series, wide = false) {
  if (!series.length) return [0, 100];
  const values = series.map(p => p.v), low = Math.min(...values), high = Math.max(...values);
  if (wide || high - low > 250) return [Math.min(low, 20), high + 20];
  const middle = (low + high) / 2, half = Math.max(30, (high - low) / 2 + 8);
  return [middle - half, middle + half];
}

export function lane({ series, feed = [], plan = [], ahead = [], X, y, height, fromMs, nowMs, gapMs, feedMost = 1, range, small = false }) {
  const g = el('g', {}), [low, high] = range, thin = small ? 2.4 : 3, most = Math.min(height * .34, small ? 10 : 24);
  const pad = 3 + (thin + (feed.length ? most : 0)) / 2;
  const Y = v => y + height - pad - clamp((v - low) / (high - low), 0, 1) * (height - 2 * pad);
  const lastFeed = feed.at(-1);
  const widthAt = t => { const v = lastFeed && t > lastFeed.t && t - lastFeed.t < gapMs * 3 ? lastFeed.v : valueAt(feed, t, gapMs * 3); return thin + (v === null ? 0 : clamp(v / feedMost, 0, 1) * most); };
  const { runs, gaps, firstMs } = cut(series, gapMs, fromMs, nowMs);

  if (ahead.length > 1) {
    const up = ahead.map(p => [X(p.t), Y(p.high) - thin / 2]), down = ahead.map(p => [X(p.t), Y(p.low) + thin / 2]).reverse();
    g.append(path(`${polyline([...up, ...down])}Z`, 'band'));
    const width = widthAt(series.at(-1)?.t ?? nowMs);
    g.append(...ribbon(ahead, X, Y, () => width, 'ribbon expected'));
  }
  for (const run of runs) if (run.length > 1) g.append(...ribbon(run, X, Y, widthAt, 'ribbon'));
  if (plan.length > 1) g.append(path(polyline(plan.map(p => [X(p.t), Y(p.v)])), 'plan'));
  if (gaps.length) {
    const h = hatch(small ? 7 : 9);
    g.append(h.node);
    for (const [from, to] of gaps) g.append(rect(X(Math.max(from, fromMs)), y + 1, X(to) - X(Math.max(from, fromMs)), height - 2, 'gap-edge', { fill: h.fill }));
  }
  return { node: g, Y, gaps, firstMs };
}

function ribbon(points, X, Y, widthAt, cls) {
  const id = freshId(), x0 = X(points[0].t), x1 = X(points.at(-1).t);
  const up = points.map(p => at(X(p.t), Y(p.v) - widthAt(p.t) / 2)), down = points.map(p => at(X(p.t), Y(p.v) + widthAt(p.t) / 2)).reverse();
  const stops = [], every = Math.max(1, Math.floor(points.length / 48));
  points.forEach((p, i) => { if (i % every === 0 || i === points.length - 1) stops.push(el('stop', { offset: x1 > x0 ? ((X(p.t) - x0) / (x1 - x0)).toFixed(4) : 0, 'stop-color': glow(p.v) })); });
  return [el('defs', {}, el('linearGradient', { id, gradientUnits: 'userSpaceOnUse', x1: x0.toFixed(1), x2: Math.max(x1, x0 + .1).toFixed(1), y1: 0, y2: 0 }, ...stops)),
    path(`M${up.join('L')}L${down.join('L')}Z`, cls, { fill: `url(#${id})` })];
}

export const gather = (x, y, small) => line(x, y, x, y + (small ? 5 : 12), 'tick');
export const charge = (x, y, small) => rect(x - (small ? 3 : 6), y, small ? 6 : 12, small ? 6 : 11, 'block');
export const ready = (x, y) => path(`M${x - 7},${y}h14l-7,11Z`, 'block');
export const ends = (x, y) => path(`M${x - 7},${y + 1}h14l-7,10Z`, 'open-mark');
