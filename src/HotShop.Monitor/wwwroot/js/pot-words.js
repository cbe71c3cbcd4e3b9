// What the pot page says in words and in its table.
import { now, when } from './clock.js';
import { html } from './svg.js';
import { both, figure } from './units.js';
import { plainUnit } from './story.js';

/** {mass, more, until}: the great number, the small one beside it, and the sentence below. */
export function answerOf(pot) {
  if (!pot || pot.massKg === null || pot.massKg === undefined) return { mass: 'Glass not known yet', more: '', until: 'Log a dip, and the count of charges and gathers begins there.' };
  const f = figure('mass', pot.massKg), half = figure('mass', (pot.massKgHigh95 - pot.massKgLow95) / 2), clear = pot.readyAt ? Date.parse(pot.readyAt) : null, words = [];
  if (clear && clear > now()) words.push(`Not clear yet: ready about ${when(clear)}.`);
  if (pot.hoursLeft > 0 && pot.hoursLeft < 72) words.push(`Glass until about ${when(Math.round((now() + pot.hoursLeft * 3600e3) / 6e5) * 6e5)} at this pull.`);
  else if (!words.length) words.push('Nobody has gathered lately.');
  const last = pot.lastCharge, amount = last?.massKg ?? last?.mass;
  if (last) words.push(`Last charge ${when(Date.parse(last.time))}${amount ? `, ${Math.round(amount * 10) / 10} ${last.massKg ? 'kg' : plainUnit(last.unit) || 'kg'}` : ''}.`);
  return { mass: `${f.number} ${f.unit}`, more: `± ${half.number} · ${f.other}`, until: words.join(' ') };
}

const dayName = date => new Intl.DateTimeFormat('en-GB', { weekday: 'long', timeZone: 'UTC' }).format(Date.parse(`${date}T12:00:00Z`));

/** Days that were worked and not logged: each with what it makes the glass less sure by, and a button to tally it. */
export function missingRows(pot, tally) {
  return (pot?.days ?? []).filter(d => d.state === 'missing' && d.expectedKg !== null && d.expectedKg !== undefined).map(d => html('p', { class: 'missing' },
    html('span', {}, `Nobody logged ${dayName(d.date)}: taken as ${figure('mass', d.expectedKg).number} ± ${both('mass', d.expectedKgHalfWidth95)}.`),
    html('button', { type: 'button', onclick: () => tally(d.date) }, `Tally ${dayName(d.date)}`)));
}

const hours = value => (Math.round(value * 10) / 10).toFixed(1);

export function tableRows(pot) {
  const every = Math.ceil(pot.history.length / 16);
  return [['Glass', `${both('mass', pot.massKg)}; 95 %: ${both('mass', pot.massKgLow95)} to ${both('mass', pot.massKgHigh95)}`], ['Level', `${both('length', pot.levelCm)}, ${both('length', pot.freeboardCm)} below the rim; 95 %: ${both('length', pot.freeboardCmLow95)} to ${both('length', pot.freeboardCmHigh95)} below`],
    ...(pot.hoursLeft > 0 ? [['Taken lately', `${both('mass', pot.pullKgPerHour)} an hour; 95 %: ${both('mass', pot.pullKgPerHourLow95)} to ${both('mass', pot.pullKgPerHourHigh95)}`],
      ['Lasts at that', `${hours(pot.hoursLeft)} h; 95 %: ${hours(pot.hoursLeftLow95)} to ${hours(pot.hoursLeftHigh95)} h`]] : []),
    ...(pot.sizes ?? []).map(s => [`${s.size} gathers left`, `${Math.floor(s.left)}; 95 %: ${Math.floor(s.leftLow)} to ${Math.floor(s.leftHigh)}; ${both('mass', s.massKg, 2)} each`]),
    ...pot.history.filter((_, i) => i % every === 0).map(h => [when(h.t), both('mass', h.v)])].map(([a, b]) => html('tr', {}, html('th', { scope: 'row' }, a), html('td', {}, b)));
}
