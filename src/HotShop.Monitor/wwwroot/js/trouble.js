// The words of what is wrong: the most urgent trouble large, the next two as a line each, the rest counted.
import { now, span, when } from './clock.js';
import { fires, hotChannel, isOld, loadOf, openAlarms, shop } from './shop.js';
import { html, mark, el } from './svg.js';
import { lastAt } from './saying.js';

const LINES = 2;

export function troubleMark(priority, size = 56) {
  return el('svg', { viewBox: '-26 -26 52 52', width: size, height: size, 'aria-hidden': 'true', class: 'trouble-mark' }, mark(priority, 0, priority === 2 ? 3 : 0, 20));
}

/** "since 13:41, 27 min · the bench lead has it · ..." */
export function secondLine(alarm) {
  const since = Date.parse(alarm.since), ended = alarm.state === 'returned-unacknowledged';
  return [ended ? `began ${when(since)}` : `since ${when(since)}, ${span(now() - since)}`, ended ? `over${alarm.clearedAt ? ` since ${when(Date.parse(alarm.clearedAt))}` : ''}, but nobody has answered` : alarm.who ? `${alarm.who} has it` : 'nobody has it yet', ended ? null : alarm.consequence].filter(Boolean).join(' · ');
}

/** What is over is said to be over: its sentence speaks of the moment it rang. */
export const spoken = alarm => alarm.state === 'returned-unacknowledged' ? `Over: ${alarm.sentence}` : alarm.sentence;

export function fillTroubles(section, pots) {
  const alarms = openAlarms(), signature = JSON.stringify(alarms.map(a => [a.occurrence, a.state, a.who, a.sentence])) + (alarms.length ? Math.floor(now() / 60000) : quietLine(pots));
  if (section.dataset.signature === signature) return alarms;
  section.dataset.signature = signature;
  if (!alarms.length) {
    section.replaceChildren(html('h1', {}, headline()), html('p', { class: 'sub' }, quietLine(pots)));
    return alarms;
  }
  const [first, ...others] = alarms, long = spoken(first).length > 70 ? ' longer' : spoken(first).length > 46 ? ' long' : '';
  section.replaceChildren(
    html('a', { class: `trouble first p${first.priority}${long}`, href: `/alarms#${encodeURIComponent(first.occurrence)}` }, troubleMark(first.priority),
      html('div', {}, html('h1', {}, html('span', { class: 'unseen' }, `Priority ${first.priority}: `), spoken(first)), html('p', { class: 'sub' }, secondLine(first)))),
    others.length ? html('div', { class: 'others' }, ...others.slice(0, LINES).map(a => html('a', { class: `trouble next p${a.priority}`, href: `/alarms#${encodeURIComponent(a.occurrence)}` }, troubleMark(a.priority, 32),
      html('p', {}, html('span', { class: 'unseen' }, `Priority ${a.priority}: `), spoken(a), html('small', {}, ` ${a.who ? `${a.who} has it` : `since ${when(Date.parse(a.since))}`}`)))),
      others.length > LINES ? html('p', { class: 'sub rest' }, html('a', { href: '/alarms' }, `and ${others.length - LINES} more`)) : null) : '');
  return alarms;
}

const silent = () => fires().filter(a => { const c = hotChannel(a); return c && isOld(c); });

function headline() {
  if (!fires().length) return 'No appliance is set up yet';
  const quiet = silent();
  if (quiet.length === fires().filter(hotChannel).length && quiet.length) return 'Nothing is heard from the shop';
  return quiet.length ? `All that is heard is as it should be` : 'All fires are as they should be';
}

function quietLine(pots) {
  if (!fires().length) return 'Name your appliances in hotshop.json ("hotshop init" writes one to begin with), then open Set-up and watch which line answers.';
  const words = [], quiet = silent();
  for (const a of quiet) words.push(`${a.name} ${lastAt(hotChannel(a))}`);
  const pot = [...pots.values()].find(p => p?.hoursLeft > 0 && p.hoursLeft < 72);
  if (pot) words.push(`glass until about ${when(Math.round((now() + pot.hoursLeft * 3600e3) / 6e5) * 6e5)}`);
  for (const a of fires()) { const done = loadOf(a)?.doneAt; if (done && Date.parse(done) > now()) words.push(`${a.name}'s curve ends ${when(Date.parse(done))}`); }
  if (!quiet.length && !words.length) words.push('every reading is fresh');
  return words.slice(0, 3).join(' · ');
}
export { shop };
