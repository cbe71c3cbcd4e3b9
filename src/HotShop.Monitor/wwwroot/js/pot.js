// The pot: how much glass, until when; and the log, in reach of a thumb. It opens and takes entries without the service, too.
import { get, whenSignedOut } from './api.js';
import { dateKey, now, stamp, when } from './clock.js';
import { discard, keepSending, log, onQueueChange, waiting, whoLogs } from './entry-queue.js';
import { keepForOffline } from './offline.js';
import { bench, pressChip, showBench } from './pot-bench.js';
import { fillDots } from './pot-dots.js';
import { entrySheet } from './pot-entry.js';
import { readPot } from './pot-facts.js';
import { glassRows } from './pot-glass.js';
import { holding, showLog } from './pot-log.js';
import { recall, remember } from './pot-memory.js';
import { showNote } from './pot-note.js';
import { drawSection } from './pot-section.js';
import { chargeSheet, dipSheet, moreSheet, openSheet } from './pot-sheets.js';
import { RANGES, drawPotStrip } from './pot-strip.js';
import { tallySheet } from './pot-tally.js';
import { endUndo, lastTaken, startUndo } from './pot-undo.js';
import { answerOf, missingRows, tableRows } from './pot-words.js';
import { fires, hotChannel, isOld, keepCurrent, loadShop, loadStudio } from './shop.js';
import { html } from './svg.js';
import { both } from './units.js';

const AGAIN_MS = 5000, LONGEST_HOURS = 28 * 24;
const id = name => document.getElementById(name);
const asked = decodeURIComponent(location.pathname.split('/')[2] ?? '') || null, wanted = new URLSearchParams(location.search).get('entry');
let furnace = null, pot = null, entries = [], range = 'day', asOfMs = null, isLive = false, isWanted = wanted !== null;

function start() {
  // Who has entries here that wait is told; whoever has none is led to sign in.
  whenSignedOut(() => waiting().some(w => !w.refused) ? tell() : location.assign(`/signin?returnUrl=${encodeURIComponent(location.pathname)}`));
  keepSending();
  onQueueChange(() => { showEntries(); tell(); if (isLive) soon(); });
  id('acts').addEventListener('click', pressed);
  id('ranges').addEventListener('click', chosen);
  keepForOffline();
  addEventListener('online', connect);
  connect();
}

let connecting = false;
/** Once the service answers the page lives by its stream; until then it shows what it saw last, and asks again. */
async function connect() {
  if (isLive || connecting) return;
  connecting = true;
  try {
    await loadStudio();
    await loadShop();
    const furnaces = fires().filter(a => a.kind === 'furnace');
    furnace = furnaces.find(a => a.appliance === asked) ?? furnaces[0];
    if (!furnace) throw new Error('No furnace is set up. Name one, with its pot, in hotshop.json.');
    await again();
    isLive = true;
    chooseFurnace(furnaces);
    keepCurrent({ onAgain: refresh, onChange: kind => { if (kind === 'derived' || kind === 'log') soon(); } });
    open();
  } catch (problem) {
    if (!isLive) { showAsLastSeen(problem); setTimeout(connect, AGAIN_MS); }
  } finally { connecting = false; }
}

async function again() {
  const name = encodeURIComponent(furnace.appliance), hours = range === 'day' ? 24 : RANGES[range].back, since = isWanted ? LONGEST_HOURS : Math.max(36, hours);
  [pot, entries] = await Promise.all([readPot(furnace, hours), get(`/api/logbook?corrected=true&appliance=${name}&from=${new Date(now() - since * 3600e3).toISOString()}`)]);
  asOfMs = now();
  if (range === 'day') remember(furnace, pot, entries);
}

let due = 0;
/** The service has something new; ask once for all that came within half a second. */
function soon() { clearTimeout(due); due = setTimeout(refresh, 500); }
async function refresh() { try { await again(); show(); } catch { tell(); /* the page keeps what it has, and says how old it is */ } }

function showAsLastSeen(problem) {
  const seen = recall(asked);
  if (!seen) {
    id('loading').replaceChildren(html('h1', {}, 'The pot cannot be shown'), html('p', { class: 'lede' }, problem.message));
    return;
  }
  ({ furnace, pot, entries, asOfMs } = seen);
  open();
}

let isOpen = false;
function open() {
  if (!isOpen) {
    isOpen = true;
    id('loading').hidden = true;
    id('pot').hidden = id('acts').hidden = false;
    new ResizeObserver(show).observe(id('picture'));
    setInterval(() => { showTop(); tell(); }, 1000);
  }
  show();
  const entry = isWanted ? list().find(e => e.id === wanted) : null;
  isWanted = false;
  if (entry) openEntry(entry);
}

function chooseFurnace(furnaces) {
  if (furnaces.length < 2) return;
  id('furnaces').replaceChildren(...furnaces.map(f => html('a', { class: 'button', href: `/pot/${encodeURIComponent(f.appliance)}`, 'aria-current': f === furnace ? 'page' : null }, f.name)));
}

const temperature = () => { const c = hotChannel(furnace); return c && !isOld(c) ? c.value : null; };
const list = () => holding(entries, waiting().filter(w => !w.entry.appliance || w.entry.appliance === furnace.appliance));
const isCutOff = () => !isLive || document.body.classList.contains('cut-off');

function show() {
  if (!furnace) return;
  showTop();
  const answer = answerOf(pot), isKnown = pot?.massKg >= 0;
  id('mass').textContent = answer.mass;
  id('mass-more').textContent = answer.more;
  id('until').textContent = answer.until;
  id('missing').replaceChildren(...missingRows(pot, day => openTally(day)));
  id('picture').hidden = id('ranges').hidden = !isKnown;
  if (isKnown) {
    drawSection(id('section'), pot, { temperatureCelsius: temperature(), notClear: pot.readyAt && Date.parse(pot.readyAt) > now() });
    fillDots(id('dots'), pot.sizes ?? []);
    drawPotStrip(id('pot-strip'), pot, list(), { width: Math.max(300, id('picture').getBoundingClientRect().width), temperatureCelsius: temperature(), range, onEntry: openEntry });
    id('pot-rows').replaceChildren(...tableRows(pot));
  }
  id('glass').hidden = !pot?.glass;
  if (pot?.glass) id('glass-rows').replaceChildren(...glassRows(pot.glass));
  showBench(id('bench'), pot?.people);
  showEntries();
  tell();
}

function showTop() {
  const c = hotChannel(furnace);
  id('where').textContent = [furnace.name, c ? isOld(c) ? `${both('temperature', c.value)}, last at ${c.atMs ? when(c.atMs) : 'no time'}` : both('temperature', c.value).replace(',', ' ·') : null].filter(Boolean).join(' · ');
}

function tell() {
  id('pot').classList.toggle('old', isCutOff());
  showNote(id('kept'), { asOfMs, isCutOff: isCutOff(), openedWithout: !isLive });
}

function showEntries() {
  if (!furnace) return;
  const known = list();
  showLog(id('log-list'), known, waiting(), { wanted, open: openEntry, discard });
  id('log-empty').hidden = known.length > 0;
}

function chosen(event) {
  const button = event.target.closest('button[data-range]');
  if (!button) return;
  range = button.dataset.range;
  for (const b of id('ranges').querySelectorAll('button')) b.setAttribute('aria-pressed', String(b === button));
  refresh();
}

const sizesNow = () => pot?.sizes?.length ? pot.sizes.map(s => s.size) : ['small', 'medium', 'large'];
const done = (entry, words) => { id('sheet').close(); take(entry, words); };
const openEntry = entry => openSheet(id('sheet'), entrySheet(entry, { sizes: sizesNow(), people: bench(pot?.people), send: (fields, words) => done({ entry: 'correction', of: entry.id, ...fields }, words) }));
const openTally = day => openSheet(id('sheet'), tallySheet({ pot, sizes: sizesNow(), todayKey: dateKey(now()), day, take: done }));
const sheets = {
  charge: () => chargeSheet(pot, done), dip: () => dipSheet(pot, done), tally: () => tallySheet({ pot, sizes: sizesNow(), todayKey: dateKey(now()), take: done }),
  more: () => moreSheet({ pot, done, changed: () => showBench(id('bench'), pot?.people) }),
};

function pressed(event) {
  const button = event.target.closest('button');
  if (!button) return;
  const { size, sheet, who } = button.dataset;
  if (size) take({ entry: 'gather', size, count: 1 }, `${size[0].toUpperCase()}${size.slice(1)} gather${whoLogs() ? `, ${whoLogs()}` : ''}`);
  else if (who) { pressChip(who); showBench(id('bench'), pot?.people); }
  else if (sheet) openSheet(id('sheet'), sheets[sheet]());
  else if (button.id === 'undo' && lastTaken()) { log({ appliance: furnace.appliance, time: stamp(), entry: 'correction', of: lastTaken().id, text: 'taken back at once' }); endUndo('Taken back'); }
}

function take(entry, words) {
  const taken = log({ appliance: furnace.appliance, time: stamp(), ...entry });
  if (!taken) { id('taken').textContent = 'Not logged: this device has no room left. Discard refused entries below, or get the line back.'; return; }
  navigator.vibrate?.(20);
  startUndo(taken, words);
}

start();
