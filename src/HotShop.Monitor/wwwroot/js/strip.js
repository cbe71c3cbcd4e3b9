// The strip: all lanes over one stretch of time. Past left, a line for now, expected right; night hours shaded; words left of their mark.
import { date, hourOfDay, now, span, time, weekday, when } from './clock.js';
import { expected } from './forecast.js';
import { gapMsOf, pastOf } from './history.js';
import { charge, ends, gather, lane, rangeOf, ready } from './lane.js';
import { curveOf } from './saying.js';
import { feedChannel, fires, hotChannel, isOld, loadOf, openAlarms } from './shop.js';
import { el, line, mark, rect, scale, text } from './svg.js';

const NIGHT = [20, 7], HOUR = 3600e3;
const sameAppliance = (entry, appliance) => entry.appliance === appliance.appliance || entry.appliance === appliance.id;

/** What one lane needs, from the past and the plan of an appliance. */
export function laneOf(appliance, fromMs, toMs) {
  const past = pastOf(appliance), channel = hotChannel(appliance), nowMs = now(), load = loadOf(appliance), plan = load ? curveOf(load) : [];
  const series = past.hot.filter(p => p.t >= fromMs && p.t <= nowMs);
  const inTrouble = openAlarms().some(a => sameAppliance(a, appliance) && a.state !== 'returned-unacknowledged');
  // In trouble nothing can be expected to go on as it was.
  const steady = !inTrouble && ['holding', 'working'].includes(appliance.mode) && channel && !isOld(channel);
  const fresh = channel && !isOld(channel);
  const since = steady && appliance.modeSince ? Date.parse(appliance.modeSince) + HOUR : 0;
  const ahead = fresh ? expected({ past: plan.length > 1 ? past.hot : past.hot.filter(p => p.t >= since), plan: plan.length > 1 ? plan : null, nowMs, untilMs: toMs, steady }) : [];
  const usual = { 'gas-flow': 10, power: 4, relay: 1 }[feedChannel(appliance)?.quantity] ?? 1;
  const feedMost = Math.max(usual, ...past.feed.map(p => p.v));
  const planShown = plan.filter(p => p.t >= fromMs - 96 * HOUR);
  return { series, feed: past.feed, plan: clip(planShown.length > 1 ? planShown : past.due, fromMs, toMs), ahead, feedMost, gapMs: gapMsOf(channel), range: rangeOf([...series, ...ahead, ...ahead.map(p => ({ v: p.low })), ...ahead.map(p => ({ v: p.high }))], appliance.kind !== 'furnace') };
}

/** A polyline cut to a stretch of time, with points made at both ends. */
export function clip(points, fromMs, toMs) {
  const out = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i], b = points[i + 1], v = t => a.v + (b.v - a.v) * (t - a.t) / (b.t - a.t || 1);
    if (b.t <= fromMs || a.t >= toMs) continue;
    if (!out.length) out.push({ t: Math.max(a.t, fromMs), v: v(Math.max(a.t, fromMs)) });
    out.push({ t: Math.min(b.t, toMs), v: v(Math.min(b.t, toMs)) });
  }
  return out;
}

/** Draws the whole strip; returns where each lane lies, for the threads. */
export function drawStrip(svg, { width, height, backHours, aheadHours, alarms, entries, pots, onStory }) {
  const nowMs = now(), from = nowMs - backHours * HOUR, to = nowMs + aheadHours * HOUR, size = Math.max(14, Math.min(20, height / 15));
  const left = Math.round(size * 7.2), axis = size * 1.7, X = scale(from, to, left, width), list = fires(), g = el('g', {}), places = new Map();
  const weight = a => (a.kind === 'furnace' ? 1.5 : 1) * (alarms.some(x => sameAppliance(x, a) && x.state !== 'returned-unacknowledged') ? 1.5 : 1) * (a.mode === 'off' && !pastOf(a).hot.length ? .6 : 1);
  const sum = list.reduce((s, a) => s + weight(a), 0) || 1, room = height - axis - 6;
  shadeNights(g, X, from, to, left, width, room);
  let y = 4;
  const tags = [];
  for (const appliance of list) {
    const h = room * weight(appliance) / sum, words = appliance.kind === 'furnace' ? Math.min(18, h * .3) : 2, trouble = alarms.find(x => sameAppliance(x, appliance) && x.state !== 'returned-unacknowledged');
    const drawn = lane({ ...laneOf(appliance, from, to), X, y: y + words, height: h - words - 2, fromMs: from, nowMs });
    g.append(drawn.node, line(left, y + h, width, y + h, 'hair', { opacity: .6 }));
    g.append(text(0, y + h / 2 + size * .35, appliance.name, trouble ? '' : 'dim', size));
    for (const [a, b] of drawn.gaps) if (b - a > HOUR / 3) tags.push({ x: X(a) - 6, y: y + (words > 8 ? size * .9 : h / 2 + size * .35), words: b >= nowMs ? `silent since ${when(a)}` : `no reading ${span(b - a)}`, anchor: 'end' });
    if (!pastOf(appliance).hot.length) tags.push({ x: left + 8, y: y + h / 2 + size * .35, words: hotChannel(appliance) ? 'no reading yet' : 'no thermometer', anchor: 'start' });
    if (drawn.firstMs) tags.push({ x: X(drawn.firstMs) - 6, y: y + h / 2 + size * .35, words: `no reading before ${when(drawn.firstMs)}`, anchor: 'end' });
    if (appliance.kind === 'furnace') tags.push(...furnaceMarks(g, appliance, { X, y, from, to, nowMs, size, entries, pot: pots.get(appliance.id), onStory }));
    if (appliance.kind === 'annealer') tags.push(...annealerTag(appliance, { y, h, size, width, to, X }));
    places.set(appliance.id, { y, height: h });
    y += h;
  }
  placeTags(g, tags.filter(t => !t.mark), size * .92, left, width, tags.filter(t => t.mark));
  hours(g, X, from, to, left, width, room + 4, size);
  g.append(line(X(nowMs), 0, X(nowMs), room + 10, 'now'), text(X(nowMs), room + 6 + size * 1.05, 'now', null, size, 'middle'));
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren(svg.querySelector('title') ?? '', g);
  return { places, X, from, to, bottom: room + 4, left };
}

function furnaceMarks(g, appliance, { X, y, from, to, nowMs, size, entries, pot, onStory }) {
  const tags = [];
  for (const e of entries.filter(e => sameAppliance(e, appliance))) {
    const t = Date.parse(e.time);
    if (t < from || t > nowMs) continue;
    const shape = e.entry === 'gather' || e.entry === 'tally' ? gather(X(t), y) : e.entry === 'charge' ? charge(X(t), y) : ['dip', 'note', 'ladle-out', 'returned-glass'].includes(e.entry) ? el('circle', { cx: X(t), cy: y + 6, r: 5, class: 'open-mark' }) : null;
    if (!shape) continue;
    const area = rect(X(t) - 8, y - 3, 16, 20, null, { fill: 'transparent', style: 'cursor:pointer' });
    area.addEventListener('click', () => onStory(e));
    g.append(shape, area);
    tags.push({ mark: true, x: X(t), y: y + size * .8 });
    if (e.entry === 'charge') tags.push({ x: X(t) - 10, y: y + size * .8, words: `${e.mass ?? e.massKg ?? ''} ${e.unit ?? 'kg'}`, anchor: 'end' });
  }
  const clear = pot?.readyAt ? Date.parse(pot.readyAt) : null;
  if (clear && clear > from && clear < to) { g.append(ready(X(clear), y)); tags.push({ x: X(clear) - 11, y: y + size * .8, words: `ready ${time(clear)}`, anchor: 'end' }); }
  const end = pot?.hoursLeft > 0 ? nowMs + pot.hoursLeft * HOUR : null;
  if (end && end < to) { g.append(ends(X(end), y)); tags.push({ x: X(end) - 11, y: y + size * .8, words: `glass till ${time(end)}`, anchor: 'end' }); }
  return tags;
}

function annealerTag(appliance, { y, h, size, width, to, X }) {
  const load = loadOf(appliance), done = load?.doneAt ? Date.parse(load.doneAt) : curveOf(load).at(-1)?.t;
  if (!done || done < now()) return [];
  return [{ x: Math.min(width - 4, X(Math.min(done, to))), y: y + Math.min(h - 4, size), words: `curve ends ${when(done)}${done > to ? ' →' : ''}`, anchor: 'end' }];
}

/** Words that would lie on a mark or on each other: the later one is left out; the mark itself stays, and its story can be asked for. */
function placeTags(g, tags, size, left, width, marks) {
  const taken = marks.map(m => ({ a: m.x - 3, b: m.x + 3, y: m.y }));
  for (const tag of tags) {
    const w = tag.words.length * size * .5, a = tag.anchor === 'end' ? tag.x - w : tag.x, b = a + w;
    if (a < left || b > width || taken.some(o => Math.abs(o.y - tag.y) < size && a < o.b + 6 && b > o.a - 6)) continue;
    taken.push({ a, b, y: tag.y });
    g.append(text(tag.x, tag.y, tag.words, 'dim strip-words', size, tag.anchor));
  }
}

function shadeNights(g, X, from, to, left, width, room) {
  const quarter = HOUR / 4;
  let start = null;
  for (let t = Math.floor(from / quarter) * quarter; t <= to + quarter; t += quarter) {
    const hour = hourOfDay(t), night = hour >= NIGHT[0] || hour < NIGHT[1];
    if (night && start === null) start = t;
    if ((!night || t > to) && start !== null) { const a = Math.max(left, X(start)), b = Math.min(width, X(t)); if (b > a) g.append(rect(a, 0, b - a, room + 4, 'night-hours')); start = null; }
  }
}

function hours(g, X, from, to, left, width, y, size) {
  const every = (to - from) / HOUR > 16 ? 3 : 2;
  for (let t = Math.ceil(from / HOUR) * HOUR; t <= to; t += HOUR) {
    const hour = Math.round(hourOfDay(t));
    if (hour % every || X(t) < left + 4) continue;
    g.append(line(X(t), y, X(t), y + 6, 'hair'));
    if (Math.abs(X(t) - X(now())) < size * 2.6 || X(t) > width - size) continue;
    g.append(text(X(t), y + size * 1.15, hour % 24 === 0 ? `${weekday(t)} 00` : String(hour).padStart(2, '0'), 'faint', size * .92, 'middle'));
  }
  g.append(line(left, y, width, y, 'hair'));
}

/** The strip as rows: one an hour, for reading aloud and for copying. */
export function stripTable(hoursBack) {
  const nowMs = now(), rows = [];
  for (let k = hoursBack; k >= 0; k--) rows.push(nowMs - k * HOUR);
  return { rows, label: t => `${date(t)} ${time(t)}` };
}
export { mark };
