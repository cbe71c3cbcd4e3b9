// The words of what is wrong: the most urgent trouble large, the next two as a line each, the rest counted.
import { now, span, when } from './clock.js';
import { fires, hotChannel, isOld, loadOf, openAlarms } from './shop.js';
import { html, mark, el } from './svg.js';
import { deviationOf, deviationWords, lastAt } from './saying.js';

const LINES = 2, WORTH_SAYING_CELSIUS = 8;

export function troubleMark(priority, size = 56) {
  return el('svg', { viewBox: '-26 -26 52 52', width: size, height: size, 'aria-hidden': 'true', class: 'trouble-mark' }, mark(priority, 0, priority === 2 ? 3 : 0, 20));
}

/** "since 13:41, 27 min · the bench lead has it · ..." */
export function secondLine(alarm) {
  const since = Date.parse(alarm.since), ended = alarm.state === 'returned-unacknowledged';
  return [ended ? `began ${when(since)}` : `since ${when(since)}, ${span(now() - since)}`, ended ? `over${alarm.clearedAt ? ` since ${when(Date.parse(alarm.clearedAt))}` : ''}, but nobody has answered` : alarm.who ? `${alarm.who} has it` : 'nobody has it yet', ended ? null : alarm.consequence].filter(Boolean).join(' · ');
}

/** What is over is said to be over: its sentence speaks of the moment it rang. */
export const spoken = alarm => alarm.state === 'returned-unacknowledged' ? `Over. It said: ${alarm.sentence}` : alarm.sentence;

export function fillTroubles(section, pots) {
  const alarms = openAlarms(), active = alarms.filter(a => a.state !== 'returned-unacknowledged'), over = alarms.filter(a => a.state === 'returned-unacknowledged');
  const signature = JSON.stringify(alarms.map(a => [a.occurrence, a.state, a.who, a.sentence])) + Math.floor(now() / 60000) + (active.length ? '' : quietLine(pots));
  if (section.dataset.signature === signature) return;
  section.dataset.signature = signature;
  const lines = [...active.slice(1, 1 + LINES), ...over].slice(0, LINES), rest = alarms.length - Math.min(1, active.length) - lines.length;
  section.replaceChildren(active.length ? large(active[0]) : html('div', {}, html('h1', {}, headline()), html('p', { class: 'sub' }, quietLine(pots))),
    lines.length ? html('div', { class: 'others' }, ...lines.map(small), rest > 0 ? html('p', { class: 'sub rest' }, html('a', { href: '/alarms' }, `and ${rest} more`)) : null) : '');
}

const unseen = alarm => html('span', { class: 'unseen' }, `Priority ${alarm.priority}: `);
const linkTo = alarm => `/alarms#${encodeURIComponent(alarm.occurrence)}`;

function large(alarm) {
  const long = alarm.sentence.length > 70 ? ' longer' : alarm.sentence.length > 46 ? ' long' : '';
  return html('a', { class: `trouble first p${alarm.priority}${long}`, href: linkTo(alarm) }, troubleMark(alarm.priority),
    html('div', {}, html('h1', {}, unseen(alarm), alarm.sentence), html('p', { class: 'sub' }, secondLine(alarm))));
}

function small(alarm) {
  const over = alarm.state === 'returned-unacknowledged';
  return html('a', { class: `trouble next p${alarm.priority}`, href: linkTo(alarm) }, troubleMark(alarm.priority, 32),
    html('p', {}, unseen(alarm), spoken(alarm), html('small', {}, over ? ' nobody has answered' : ` ${alarm.who ? `${alarm.who} has it` : `since ${when(Date.parse(alarm.since))}`}`)));
}

const silent = () => fires().filter(a => { const c = hotChannel(a); return c && isOld(c); });

/** Off its curve, but not yet by as much or for as long as an alarm needs: said, so that calm words stay true. */
const drifting = () => fires().filter(a => Math.abs(deviationOf(a) ?? 0) >= WORTH_SAYING_CELSIUS);

function headline() {
  if (!fires().length) return 'No appliance is set up yet';
  const quiet = silent();
  if (quiet.length === fires().filter(hotChannel).length && quiet.length) return 'Nothing is heard from the shop';
  if (drifting().length) return 'No alarm stands';
  return quiet.length ? 'All that is heard is as it should be' : 'All fires are as they should be';
}

function quietLine(pots) {
  if (!fires().length) return 'Name your appliances in hotshop.json ("hotshop init" writes one to begin with), then open Set-up and watch which line answers.';
  const words = [], quiet = silent();
  for (const a of drifting()) words.push(`${a.name} is ${deviationWords(a)}`);
  for (const a of quiet) words.push(`${a.name} ${lastAt(hotChannel(a))}`);
  const pot = [...pots.values()].find(p => p?.hoursLeft > 0 && p.hoursLeft < 72);
  if (pot) words.push(`glass until about ${when(Math.round((now() + pot.hoursLeft * 3600e3) / 6e5) * 6e5)}`);
  for (const a of fires()) { const done = loadOf(a)?.doneAt; if (done && Date.parse(done) > now()) words.push(`${a.name}'s curve ends ${when(Date.parse(done))}`); }
  if (!quiet.length && !words.length) words.push('every reading is fresh');
  return words.slice(0, 3).join(' · ');
}
