// The strip of the pot: its glass as thickness, gathers as ticks, charges as blocks, and what is left to the right of now.
// A day, a week or four weeks of the same drawing.
import { hourOfDay, now, time, weekday, when } from './clock.js';
import { glow } from './glow.js';
import { charge, ends, gather, ready } from './lane.js';
import { el, hatch, line, path, polyline, rect, scale, text } from './svg.js';

const HOUR = 3600e3;
/** Nobody knows who will gather: the band lets the pull be this share faster or slower than lately. A choice, not a measurement. */
const PULL_DOUBT = .3;
export const RANGES = { day: { back: 16, ahead: 12, words: 'sixteen hours' }, week: { back: 168, ahead: 24, words: 'a week' }, month: { back: 672, ahead: 48, words: 'four weeks' } };

/** onEntry(entry): somebody tapped its mark; entries are in order of time. */
export function drawPotStrip(svg, pot, entries, { width, temperatureCelsius, range = 'day', onEntry = () => {} }) {
  const { back, ahead: hoursAhead } = RANGES[range], nowMs = now(), from = nowMs - back * HOUR, to = nowMs + hoursAhead * HOUR, X = scale(from, to, 0, width), base = 84, tall = 60, g = el('g', {});
  const most = Math.max(pot.capacityKg || 0, ...pot.history.map(h => h.high), pot.massKg || 0, 1), H = kg => base - Math.max(0, kg) / most * tall;
  const past = pot.history.filter(h => h.t >= from && h.t <= nowMs);
  past.push({ t: nowMs, v: pot.massKg, low: pot.massKgLow95, high: pot.massKgHigh95 });
  const ahead = whatIsLeft(pot, nowMs, to), fill = temperatureCelsius === null ? 'var(--pipe)' : glow(temperatureCelsius);
  const area = points => `${polyline([[X(points[0].t), base], ...points.map(p => [X(p.t), H(p.v)]), [X(points.at(-1).t), base]])}Z`;
  const band = points => `${polyline([...points.map(p => [X(p.t), H(p.high)]), ...points.map(p => [X(p.t), H(p.low)]).reverse()])}Z`;
  g.append(path(area(past), null, { fill }), path(area(ahead), null, { fill, opacity: .42 }), path(band(past), 'band'), path(band(ahead), 'band'));
  for (const points of [past, ahead]) g.append(path(polyline(points.map(p => [X(p.t), H(p.v)])), 'lead'));
  notLogged(g, pot, { X, from, nowMs, base, tall, width });
  marks(g, entries, { X, from, nowMs, base, tall, width, range, onEntry });
  expected(g, pot, { X, from, to, nowMs, base, width, range });
  scaleBelow(g, { X, from, nowMs, base, width, range });
  svg.setAttribute('viewBox', `0 0 ${width} ${base + 36}`);
  svg.replaceChildren(svg.querySelector('title'), g);
}

/** Worked days of which nobody logged anything, hatched like any other gap. */
function notLogged(g, pot, { X, from, nowMs, base, tall, width }) {
  for (const day of (pot.days ?? []).filter(d => d.state === 'missing' && Date.parse(d.to) > from)) {
    const a = Math.max(0, X(Date.parse(day.from))), b = Math.min(X(nowMs), X(Date.parse(day.to))), lines = hatch(8);
    if (b - a < 2) continue;
    g.append(lines.node, rect(a, base - tall, b - a, tall, null, { fill: lines.fill }));
    if (b - a > 60) g.append(text(Math.min(width - 4, (a + b) / 2), base - tall - 6, 'nobody logged', 'dim', 14, 'middle'));
  }
}

function marks(g, entries, { X, from, nowMs, base, tall, width, range, onEntry }) {
  let worded = -Infinity;
  const taps = [];
  for (const e of entries) {
    const t = Date.parse(e.time);
    if (t < from || t > nowMs) continue;
    if (e.entry === 'gather' || e.entry === 'tally') { if (range === 'month') continue; g.append(gather(X(t), base + 2, range === 'week')); }
    else if (e.entry === 'charge') {
      g.append(charge(X(t), base + 2, range !== 'day'));
      // A series of charges is worded once, above its first block.
      if (range === 'day' && X(t) - worded > 90) g.append(text(X(t), base - tall - 6, `charge ${e.mass ?? e.massKg ?? ''} ${e.unit === '[lb_av]' ? 'lb' : e.unit ?? 'kg'}`, 'dim', 14, X(t) > width - 80 ? 'end' : 'start'));
      worded = X(t);
    } else if (['dip', 'ladle-out', 'returned-glass', 'pot-changed', 'note'].includes(e.entry)) g.append(el('circle', { cx: X(t), cy: base + 8, r: range === 'day' ? 4.5 : 3, class: 'open-mark' }));
    else continue;
    taps.push({ x: X(t), entry: e });
  }
  if (!taps.length) return;
  // One wide target under the strip: a thumb means the mark that is nearest.
  const area = rect(0, base - 12, width, 46, null, { fill: 'transparent', style: 'cursor:pointer' });
  area.addEventListener('click', event => {
    const box = area.getBoundingClientRect(), x = (event.clientX - box.left) / box.width * width, nearest = taps.reduce((a, b) => Math.abs(b.x - x) < Math.abs(a.x - x) ? b : a);
    if (Math.abs(nearest.x - x) < 32) onEntry(nearest.entry);
  });
  g.append(area);
}

function expected(g, pot, { X, from, to, nowMs, base, width, range }) {
  const end = pot.hoursLeft > 0 ? nowMs + pot.hoursLeft * HOUR : null, clear = pot.readyAt ? Date.parse(pot.readyAt) : null;
  if (end && end < to) g.append(ends(X(end), base + 2));
  if (clear && clear > from && clear < to && (range === 'day' || clear > nowMs)) g.append(ready(X(clear), base + 2), text(X(clear) - 10, base + 13, `ready ${time(clear)}`, 'dim', 14, 'end'));
  if (end && end < to) g.append(text(Math.min(width - 4, X(end) + 40), base + 30, `glass till ${time(end)}`, 'dim', 14, X(end) > width - 60 ? 'end' : 'middle'));
}

function scaleBelow(g, { X, from, nowMs, base, width, range }) {
  g.append(line(0, base, width, base, 'hair'), line(X(nowMs), 6, X(nowMs), base + 14, 'now'), text(X(nowMs), base + 30, 'now', null, 15, 'middle'));
  if (range === 'day') { g.append(text(4, base + 30, when(from), 'faint', 14)); return; }
  const every = range === 'week' ? 1 : 7;
  let days = 0;
  for (let t = Math.ceil(from / HOUR) * HOUR; t < nowMs; t += HOUR) {
    if (Math.round(hourOfDay(t)) % 24 !== 0) continue;
    if (days++ % every) continue;
    g.append(line(X(t), base, X(t), base + 6, 'hair'));
    if (X(nowMs) - X(t) > 34) g.append(text(X(t) + 3, base + 30, range === 'week' ? weekday(t) : when(t).replace(/ \d\d:\d\d$/, ''), 'faint', 14));
  }
}

function whatIsLeft(pot, nowMs, to) {
  const heel = pot.workedHeelKg ?? 0, left = pot.hoursLeft > 0 ? pot.hoursLeft * HOUR : Infinity, half = (pot.massKgHigh95 - pot.massKgLow95) / 2 || 0, points = [];
  for (let i = 0; i <= 24; i++) {
    const t = nowMs + (to - nowMs) * i / 24, drop = Math.min(1, (t - nowMs) / left) * Math.max(0, pot.massKg - heel), v = pot.massKg - drop, doubt = Math.hypot(half, PULL_DOUBT * drop);
    points.push({ t, v, low: Math.max(0, v - doubt), high: v + doubt });
  }
  return points;
}
