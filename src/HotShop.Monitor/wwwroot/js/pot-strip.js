// The strip of the pot: its glass as thickness, gathers as ticks, charges as blocks, and what is left to the right of now.
import { now, time, when } from './clock.js';
import { glow } from './glow.js';
import { charge, ends, gather, ready } from './lane.js';
import { el, line, path, polyline, scale, text } from './svg.js';

const HOUR = 3600e3, BACK = 16, AHEAD = 12;
// Nobody knows who will gather: the band lets the pull be this share faster or slower than lately. A choice, not a measurement.
const PULL_DOUBT = .3;

export function drawPotStrip(svg, pot, entries, { width, temperatureCelsius }) {
  const nowMs = now(), from = nowMs - BACK * HOUR, to = nowMs + AHEAD * HOUR, X = scale(from, to, 0, width), base = 84, tall = 60, g = el('g', {});
  const most = Math.max(pot.capacityKg || 0, ...pot.history.map(h => h.high), pot.massKg || 0, 1), H = kg => base - Math.max(0, kg) / most * tall;
  const past = pot.history.filter(h => h.t >= from && h.t <= nowMs);
  past.push({ t: nowMs, v: pot.massKg, low: pot.massKgLow95, high: pot.massKgHigh95 });
  const ahead = whatIsLeft(pot, nowMs, to), fill = temperatureCelsius === null ? 'var(--pipe)' : glow(temperatureCelsius);
  const area = points => `${polyline([[X(points[0].t), base], ...points.map(p => [X(p.t), H(p.v)]), [X(points.at(-1).t), base]])}Z`;
  const band = points => `${polyline([...points.map(p => [X(p.t), H(p.high)]), ...points.map(p => [X(p.t), H(p.low)]).reverse()])}Z`;
  g.append(path(area(past), null, { fill }), path(area(ahead), null, { fill, opacity: .42 }), path(band(past), 'band'), path(band(ahead), 'band'));
  for (const points of [past, ahead]) g.append(path(polyline(points.map(p => [X(p.t), H(p.v)])), 'lead'));
  let worded = -Infinity;
  for (const e of [...entries].sort((a, b) => Date.parse(a.time) - Date.parse(b.time))) {
    const t = Date.parse(e.time);
    if (t < from || t > nowMs) continue;
    if (e.entry === 'gather' || e.entry === 'tally') g.append(gather(X(t), base + 2));
    if (e.entry !== 'charge') continue;
    g.append(charge(X(t), base + 2));
    // A series of charges is worded once, above its first block.
    if (X(t) - worded > 90) g.append(text(X(t), base - tall - 6, `charge ${e.mass ?? e.massKg ?? ''} ${e.unit ?? 'kg'}`, 'dim', 14, X(t) > width - 80 ? 'end' : 'start'));
    worded = X(t);
  }
  const end = pot.hoursLeft > 0 ? nowMs + pot.hoursLeft * HOUR : null, clear = pot.readyAt ? Date.parse(pot.readyAt) : null;
  if (end && end < to) g.append(ends(X(end), base + 2));
  if (clear && clear > from && clear < to) g.append(ready(X(clear), base + 2), text(X(clear) - 10, base + 13, `ready ${time(clear)}`, 'dim', 14, 'end'));
  const words = end && end < to ? [X(end), `glass till ${time(end)}`] : null;
  if (words) g.append(text(Math.min(width - 4, words[0] + 40), base + 30, words[1], 'dim', 14, words[0] > width - 60 ? 'end' : 'middle'));
  g.append(text(4, base + 30, when(from), 'faint', 14), line(0, base, width, base, 'hair'), line(X(nowMs), 6, X(nowMs), base + 14, 'now'), text(X(nowMs), base + 30, 'now', null, 15, 'middle'));
  svg.setAttribute('viewBox', `0 0 ${width} ${base + 36}`);
  svg.replaceChildren(svg.querySelector('title'), g);
}

function whatIsLeft(pot, nowMs, to) {
  const heel = pot.workedHeelKg ?? 0, left = pot.hoursLeft > 0 ? pot.hoursLeft * HOUR : Infinity, half = (pot.massKgHigh95 - pot.massKgLow95) / 2 || 0, points = [];
  for (let i = 0; i <= 24; i++) {
    const t = nowMs + (to - nowMs) * i / 24, drop = Math.min(1, (t - nowMs) / left) * Math.max(0, pot.massKg - heel), v = pot.massKg - drop, doubt = Math.hypot(half, PULL_DOUBT * drop);
    points.push({ t, v, low: Math.max(0, v - doubt), high: v + doubt });
  }
  return points;
}
