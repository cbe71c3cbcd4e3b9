// Alarms: what stands open, with what to do first; and what rang before, was it answered.
import { get, post } from './api.js';
import { date, now, span, when } from './clock.js';
import { keepCurrent, loadShop, loadStudio, openAlarms } from './shop.js';
import { el, html, line, mark, scale, text } from './svg.js';
import { secondLine, spoken, troubleMark } from './trouble.js';
import { whoLogs } from './entry-queue.js';

const WEEKS = 4, DAY = 86400e3;
const id = name => document.getElementById(name);
let history = [], visitor = null;

async function start() {
  try { await loadStudio(); await loadShop(); await loadHistory(); visitor = await get('/api/visitor').catch(() => null); }
  catch (problem) {
    id('loading').replaceChildren(html('h1', {}, 'The alarms cannot be shown'), html('p', { class: 'lede' }, problem.message), html('p', {}, 'Messages to phones do not depend on this page.'));
    return setTimeout(() => location.reload(), 10_000);
  }
  id('loading').hidden = true;
  id('alarms').hidden = false;
  show();
  if (location.hash) document.getElementById(decodeURIComponent(location.hash.slice(1)))?.scrollIntoView();
  keepCurrent({ onChange: kind => { if (kind === 'alarm') show(); }, onAgain: async () => { await loadHistory().catch(() => {}); show(); } });
}

async function loadHistory() { history = await get(`/api/alarms/history?from=${new Date(now() - WEEKS * 7 * DAY).toISOString()}&to=${new Date(now() + 60e3).toISOString()}`); }

function show() {
  const open = openAlarms(), free = open.filter(a => a.state === 'unacknowledged').length, over = open.filter(a => a.state === 'returned-unacknowledged').length;
  id('summary').textContent = open.length ? `${open.length} ${open.length === 1 ? 'alarm is' : 'alarms are'} open` : 'No alarm is open';
  id('summary-more').textContent = open.length ? [free ? `nobody has ${free} of them yet` : null, over ? `${over} ${over === 1 ? 'is' : 'are'} over and ${over === 1 ? 'waits' : 'wait'} for an answer` : null].filter(Boolean).join(' · ') || 'somebody has each of them' : history.length ? `the last one began ${when(Math.max(...history.map(a => Date.parse(a.since))))}` : '';
  id('open').replaceChildren(...open.map(card));
  const past = history.filter(a => !open.some(o => o.occurrence === a.occurrence)).sort((a, b) => Date.parse(b.since) - Date.parse(a.since));
  id('history-empty').hidden = past.length > 0;
  id('history-empty').textContent = open.length ? 'Nothing else rang in the last four weeks.' : 'Nothing rang in the last four weeks.';
  id('history').replaceChildren(...past.slice(0, 100).map(a => html('li', { id: a.occurrence }, html('p', {}, `${a.sentence}`, html('small', {}, ` ${story(a)}`)), troubleMark(a.priority, 28))));
  drawStrip([...open, ...past]);
}

const endOf = a => a.clearedAt ?? null;
function story(a) {
  const since = Date.parse(a.since), end = endOf(a), answered = a.acknowledgedAt, who = a.who;
  return [`began ${when(since)}`, answered ? `${who ?? 'somebody'} had it in ${span(Date.parse(answered) - since)}` : 'nobody answered', end ? `lasted ${span(Date.parse(end) - since)}` : null].filter(Boolean).join(' · ');
}

function card(a) {
  const said = html('p', { class: 'meta', role: 'status' });
  const take = html('button', { type: 'button', class: 'main', onclick: async event => {
    event.currentTarget.disabled = true;
    try { await post(`/api/alarms/occurrences/${encodeURIComponent(a.occurrence)}/acknowledge`, { who: whoLogs() || visitor?.name || 'somebody at the pages' }); await loadShop(); show(); }
    catch (problem) { said.textContent = problem.message; take.disabled = false; }
  } }, a.state === 'returned-unacknowledged' ? 'I have seen it' : 'I have it');
  return html('li', { id: a.occurrence, class: `p${a.priority}` }, html('div', { class: 'head' }, troubleMark(a.priority, 44), html('div', {}, html('h2', {}, html('span', { class: 'unseen' }, `Priority ${a.priority}: `), spoken(a)), html('p', { class: 'meta' }, secondLine({ ...a, consequence: null })))),
    html('dl', {}, ...[['May lead to', a.consequence], ['First', a.firstStep], ['Caution', a.caution]].filter(([, words]) => words).flatMap(([name, words]) => [html('dt', {}, name), html('dd', {}, words)])),
    said, a.who && a.state === 'acknowledged' ? null : html('div', { class: 'acts' }, take));
}

/** Four weeks of alarms on the strip: each as long as it lasted, urgent ones on top. */
function drawStrip(list) {
  const width = Math.max(300, id('alarms').getBoundingClientRect().width), height = 96, from = now() - WEEKS * 7 * DAY, X = scale(from, now(), 0, width - 8), svg = id('alarm-strip'), g = el('g', {}), rows = { 1: 18, 2: 42, 3: 64 };
  svg.toggleAttribute('hidden', list.length === 0);
  for (let t = Math.ceil(from / (7 * DAY)) * 7 * DAY; t < now(); t += 7 * DAY) g.append(line(X(t), 4, X(t), 76, 'hair'), X(t) < width - 80 ? text(X(t) + 3, 92, date(t), 'faint', 14) : '');
  for (const a of list) {
    const x = X(Math.max(from, Date.parse(a.since))), end = X(endOf(a) ? Date.parse(endOf(a)) : now()), y = rows[a.priority] ?? 64;
    g.append(el('line', { x1: x, y1: y, x2: Math.max(end, x + 2), y2: y, class: `thread thread-${a.priority}` }), mark(a.priority, x, y, 8));
  }
  g.append(line(0, 76, width, 76, 'hair'), line(width - 8, 0, width - 8, 80, 'now'));
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren(svg.querySelector('title'), g);
}

start();
