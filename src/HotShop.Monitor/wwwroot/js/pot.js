// The pot: how much glass, until when; and the log, in reach of a thumb.
import { CutOff, get } from './api.js';
import { now, span, stamp, when } from './clock.js';
import { discard, keepSending, log, onQueueChange, waiting } from './entry-queue.js';
import { readPot } from './pot-facts.js';
import { fillDots } from './pot-dots.js';
import { drawSection } from './pot-section.js';
import { openSheet } from './pot-sheets.js';
import { drawPotStrip } from './pot-strip.js';
import { fires, hotChannel, isOld, keepCurrent, loadShop, loadStudio } from './shop.js';
import { storyOf } from './story.js';
import { html, el } from './svg.js';
import { both, figure } from './units.js';

const UNDO_MS = 10_000;
const id = name => document.getElementById(name);
let furnace = null, pot = null, entries = [], lastTaken = null, undoTimer = 0;

async function start() {
  keepSending();
  try {
    await loadStudio();
    await loadShop();
    const asked = id('pot').dataset.appliance, furnaces = fires().filter(a => a.kind === 'furnace');
    furnace = furnaces.find(a => a.appliance === asked) ?? furnaces[0];
    if (!furnace) throw new Error('No furnace is set up. Name one, with its pot, in hotshop.json.');
    localStorage.setItem('hotshop.furnace', furnace.appliance);
    chooseFurnace(furnaces);
    keepCurrent({ onAgain: refresh, onChange: kind => { if (kind === 'derived' || kind === 'log') soon(); } });
    await again();
  } catch (problem) { return showProblem(problem); }
  id('loading').hidden = true;
  id('pot').hidden = false;
  id('acts').hidden = false;
  show();
  onQueueChange(() => { showLog(); soon(); });
  new ResizeObserver(show).observe(id('picture'));
  setInterval(showTop, 1000);
  id('acts').addEventListener('click', pressed);
}

async function again() {
  const name = encodeURIComponent(furnace.appliance);
  [pot, entries] = await Promise.all([readPot(furnace), get(`/api/logbook?appliance=${name}&from=${new Date(now() - 36 * 3600e3).toISOString()}`)]);
}

let due = 0;
/** The service has something new; ask once for all that came within half a second. */
function soon() { clearTimeout(due); due = setTimeout(refresh, 500); }
async function refresh() { try { await again(); if (!id('pot').hidden) show(); } catch { /* the bar above says that the line is down; the page keeps what it has */ } }

function showProblem(problem) {
  // Cut off, but a furnace was known here before: its log goes on.
  const goesOn = problem instanceof CutOff && lastFurnace();
  id('loading').replaceChildren(html('h1', {}, 'The pot cannot be shown'), html('p', { class: 'lede' }, problem.message),
    goesOn ? html('p', {}, `Entries for ${goesOn} can still be logged; they are kept here and sent when the service answers. ${waiting().length} waiting.`) : '');
  id('acts').hidden = !goesOn;
  id('acts').addEventListener('click', pressed);
  setTimeout(() => { if (!id('sheet').open) location.reload(); }, 15_000);
}

function chooseFurnace(furnaces) {
  if (furnaces.length < 2) return;
  id('furnaces').replaceChildren(...furnaces.map(f => html('a', { class: 'button', href: `/pot/${encodeURIComponent(f.appliance)}`, 'aria-current': f === furnace ? 'page' : null }, f.name)));
}

const lastFurnace = () => id('pot').dataset.appliance || localStorage.getItem('hotshop.furnace');
const temperature = () => { const c = hotChannel(furnace); return c && !isOld(c) ? c.value : null; };
const gone = () => { const all = [...entries, ...waiting().map(w => w.entry)]; return new Set(all.filter(e => e.entry === 'correction').map(e => e.of)); };
const known = () => { const seen = new Set(entries.map(e => e.id)), over = gone(); return [...entries, ...waiting().map(w => w.entry).filter(e => !seen.has(e.id))].filter(e => e.entry !== 'correction' && !over.has(e.id)); };

function show() {
  showTop();
  showAnswer();
  if (pot?.massKg !== undefined && pot?.massKg !== null) {
    const notClear = pot.readyAt && Date.parse(pot.readyAt) > now();
    drawSection(id('section'), pot, { temperatureCelsius: temperature(), notClear });
    fillDots(id('dots'), pot.sizes ?? []);
    drawPotStrip(id('pot-strip'), pot, known(), { width: Math.max(300, id('picture').getBoundingClientRect().width), temperatureCelsius: temperature() });
    showTable();
  }
  id('picture').hidden = !(pot?.massKg >= 0);
  showLog();
}

function showTop() {
  const c = hotChannel(furnace);
  id('where').textContent = [furnace.name, c ? isOld(c) ? `${both('temperature', c.value)}, last at ${c.atMs ? when(c.atMs) : 'no time'}` : both('temperature', c.value).replace(',', ' ·') : null].filter(Boolean).join(' · ');
}

function showAnswer() {
  if (!pot || pot.massKg === null || pot.massKg === undefined) {
    id('mass').textContent = 'Glass not known yet';
    id('mass-more').textContent = '';
    id('until').textContent = 'Log a dip, and the count of charges and gathers begins there.';
    return;
  }
  const f = figure('mass', pot.massKg), half = figure('mass', (pot.massKgHigh95 - pot.massKgLow95) / 2);
  id('mass').textContent = `${f.number} ${f.unit}`;
  id('mass-more').textContent = `± ${half.number} · ${f.other}`;
  const clear = pot.readyAt ? Date.parse(pot.readyAt) : null, words = [];
  if (clear && clear > now()) words.push(`Charged, not clear yet: ready about ${when(clear)}.`);
  if (pot.hoursLeft > 0 && pot.hoursLeft < 72) words.push(`Glass until about ${when(Math.round((now() + pot.hoursLeft * 3600e3) / 6e5) * 6e5)} at the pull of the last hours.`);
  else words.push('Nobody has gathered lately.');
  const last = pot.lastCharge, amount = last?.massKg ?? last?.mass;
  if (last) words.push(`Last charge ${when(Date.parse(last.time))}${amount ? `, ${Math.round(amount * 10) / 10} ${last.massKg ? 'kg' : last.unit ?? 'kg'}` : ''}.`);
  id('until').textContent = words.join(' ');
}

function showTable() {
  const rows = [['Glass', `${both('mass', pot.massKg)}; 95 %: ${both('mass', pot.massKgLow95)} to ${both('mass', pot.massKgHigh95)}`], ['Level', `${both('length', pot.levelCm)}, ${both('length', pot.freeboardCm)} below the rim`],
    ...(pot.sizes ?? []).map(s => [`${s.size} gathers left`, `${Math.floor(s.left)}; 95 %: ${Math.floor(s.leftLow)} to ${Math.floor(s.leftHigh)}; ${both('mass', s.massKg, 2)} each`]), ...pot.history.filter((_, i, all) => i % Math.ceil(all.length / 16) === 0).map(h => [when(h.t), both('mass', h.v)])];
  id('pot-rows').replaceChildren(...rows.map(([a, b]) => html('tr', {}, html('th', { scope: 'row' }, a), html('td', {}, b))));
}

function showLog() {
  const queue = new Map(waiting().map(w => [w.entry.id, w])), list = known().sort((a, b) => Number(queue.has(b.id)) - Number(queue.has(a.id)) || Date.parse(b.time) - Date.parse(a.time)).slice(0, 30), wanted = new URLSearchParams(location.search).get('entry');
  id('log-list').replaceChildren(...list.map(e => {
    const kept = queue.get(e.id), state = kept?.refused ? `refused: ${kept.refused}` : kept ? 'kept here, not sent yet' : null;
    return html('li', { id: `entry-${e.id}`, class: e.id === wanted ? 'wanted' : null }, html('span', {}, storyOf(e), state ? html('small', {}, state) : null),
      kept?.refused ? html('button', { type: 'button', onclick: () => discard(e.id) }, 'Discard') : html('button', { type: 'button', 'aria-label': `Correct: strike out ${storyOf(e)}`, onclick: () => strike(e) }, 'Strike out'));
  }));
  id('log-empty').hidden = list.length > 0;
}

function pressed(event) {
  const button = event.target.closest('button');
  if (!button) return;
  if (button.dataset.size) take({ entry: 'gather', size: button.dataset.size, count: 1 }, `${button.dataset.size[0].toUpperCase()}${button.dataset.size.slice(1)} gather`);
  else if (button.dataset.sheet) openSheet(id('sheet'), button.dataset.sheet, { pot, sizes: sizesNow(), take });
  else if (button.id === 'undo' && lastTaken) { strike(lastTaken); endUndo('Taken back'); }
}

const sizesNow = () => pot?.sizes?.length ? pot.sizes.map(s => s.size) : ['small', 'medium', 'large'];

function take(entry, words) {
  lastTaken = log({ appliance: furnace?.appliance ?? lastFurnace(), time: stamp(), ...entry });
  navigator.vibrate?.(20);
  const until = performance.now() + UNDO_MS;
  id('undo').disabled = false;
  clearInterval(undoTimer);
  const count = () => {
    const left = until - performance.now();
    if (left <= 0) return endUndo(words);
    id('taken').textContent = words;
    id('taken-more').textContent = `logged ${when(Date.parse(lastTaken.time))}${waiting().some(w => w.entry.id === lastTaken.id) ? ', kept here until the line is back' : ''}`;
    id('undo-left').textContent = `${Math.ceil(left / 1000)} s`;
    ring(left / UNDO_MS);
  };
  count();
  undoTimer = setInterval(count, 250);
}

function ring(share) {
  const turn = share * 2 * Math.PI, x = 17 + 13 * Math.sin(turn), y = 17 - 13 * Math.cos(turn);
  id('undo-ring').replaceChildren(el('circle', { cx: 17, cy: 17, r: 13, fill: 'none', stroke: 'var(--line)', 'stroke-width': 3 }),
    el('path', { d: share > .999 ? 'M17,4A13,13 0 1 1 16.9,4' : `M17,4A13,13 0 ${share > .5 ? 1 : 0} 1 ${x.toFixed(1)},${y.toFixed(1)}`, fill: 'none', stroke: 'var(--ink-1)', 'stroke-width': 4 }));
}

function endUndo(words) {
  clearInterval(undoTimer);
  id('undo').disabled = true;
  id('undo-left').textContent = '';
  id('undo-ring').replaceChildren();
  id('taken').textContent = words;
  if (lastTaken) id('taken-more').textContent = `${span(now() - Date.parse(lastTaken.time))} ago; strike it out in the log below if it was wrong`;
  lastTaken = null;
}

function strike(entry) { log({ appliance: entry.appliance ?? furnace.appliance, time: stamp(), entry: 'correction', of: entry.id }); }

start();
