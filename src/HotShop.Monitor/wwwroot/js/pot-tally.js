// The day's tally: all gathers of a day counted afterwards. It begins with what was logged, or with another day's count, and is edited before it is sent.
import { now } from './clock.js';
import { counter, offer } from './pot-fields.js';
import { html } from './svg.js';
import { both } from './units.js';

const HALF_DAY = 12 * 3600e3, WEEK_DAYS = 7, OFFERED = 5;
const noon = day => Date.parse(`${day.date}T12:00:00Z`);
const nameOf = day => `${new Intl.DateTimeFormat('en-GB', { weekday: 'long', timeZone: 'UTC' }).format(noon(day))}`;
const shortDate = day => new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' }).format(noon(day));
export const gathersInWords = gathers => Object.entries(gathers).map(([size, n]) => `${n} ${size}`).join(', ') || 'none';

/** Days that a tally can be made for: today, and those before that were worked; the missing ones first behind today. */
export function daysToTally(days, todayKey) {
  const today = days.find(d => d.date === todayKey) ?? { date: todayKey, from: null, to: null, gathers: {}, state: 'under-way' }, before = days.filter(d => d.date < todayKey);
  return [today, ...before.filter(d => d.state === 'missing').reverse(), ...before.filter(d => d.state !== 'missing').slice(-2).reverse()];
}

/** Days whose count may serve again: the same weekday of the week before first, then the last ones. */
export function daysLike(days, day) {
  const counted = days.filter(d => d.date !== day.date && Object.keys(d.gathers).length).reverse(), weeks = d => Math.round((noon(day) - noon(d)) / 86400e3);
  const same = counted.filter(d => weeks(d) > 0 && weeks(d) % WEEK_DAYS === 0);
  return [...same, ...counted.filter(d => !same.includes(d))].slice(0, OFFERED);
}

/** sheet content; take(entry, words) logs it. day: the one to begin with. */
export function tallySheet({ pot, sizes, todayKey, day: first, take }) {
  const days = pot?.days ?? [], choices = daysToTally(days, todayKey), body = html('div', {});
  const build = day => {
    const isToday = day.date === todayKey, total = html('p', { class: 'total' }), masses = Object.fromEntries((pot?.sizes ?? []).map(s => [s.size, s.massKg]));
    const counters = sizes.map(size => [size, counter(size, day.gathers[size] ?? 0, () => sum())]);
    const sum = () => { total.textContent = `Together about ${both('mass', counters.reduce((kg, [size, c]) => kg + c.value * (masses[size] ?? 0), 0), 1)}`; };
    const like = daysLike(days, day), logged = Object.keys(day.gathers).length > 0;
    sum();
    body.replaceChildren(
      html('div', { class: 'days', role: 'group', 'aria-label': 'Day' }, choices.map(d => html('button', { type: 'button', class: 'chip', 'aria-pressed': String(d === day), onclick: () => build(d) },
        d.date === todayKey ? 'Today' : `${nameOf(d).slice(0, 3)} ${shortDate(d)}`, d.state === 'missing' ? html('small', {}, 'not logged') : null))),
      html('p', { class: 'note' }, logged ? `${day.state === 'tallied' ? 'Tallied' : 'Logged'} so far: ${gathersInWords(day.gathers)}. A tally counts all gathers of the day and takes the place of the single ones.`
        : 'Nothing is logged of this day. A tally counts all its gathers; none at all is a tally too.'),
      ...(like.length ? [html('h3', {}, 'Same as'), html('div', { class: 'likes' }, like.map((d, i) => offer(`${i === 0 && (noon(day) - noon(d)) / 86400e3 === WEEK_DAYS ? 'last ' : ''}${nameOf(d)}`, `${shortDate(d)}: ${gathersInWords(d.gathers)}`,
        () => { for (const [size, c] of counters) c.value = d.gathers[size] ?? 0; }))) ] : []),
      ...counters.map(([, c]) => c.node), total,
      html('button', { type: 'button', class: 'main', id: 'log-tally', onclick: () => send(day, isToday, counters, take) }, isToday ? 'Log the tally' : `Log the tally of ${nameOf(day)}`));
  };
  build(choices.find(d => d.date === first) ?? choices[0]);
  return ['Tally', body];
}

function send(day, isToday, counters, take) {
  const gathers = Object.fromEntries(counters.map(([size, c]) => [size, c.value])), nowIso = new Date(now()).toISOString();
  // A day under way is counted up to now; what is gathered later comes on top.
  const to = isToday ? nowIso : day.to, from = day.from && Date.parse(day.from) < Date.parse(to) ? day.from : new Date(Date.parse(to) - HALF_DAY).toISOString();
  const words = `Tally of ${isToday ? 'today' : nameOf(day)}: ${gathersInWords(Object.fromEntries(Object.entries(gathers).filter(([, n]) => n > 0)))}`;
  take(day.tallyId ? { entry: 'correction', of: day.tallyId, gathers, from, to, text: 'counted again' } : { entry: 'tally', gathers, from, to }, words);
}
