// Set-up: what is wired to what. A live value and a minute of its trace stand beside each channel while somebody touches the sensor.
import { get, post, readings } from './api.js';
import { clockSpeed, dateKey, now, span, when } from './clock.js';
import { age } from './saying.js';
import { findChannel, isOld, keepCurrent, loadShop, loadStudio, shop } from './shop.js';
import { el, html, polyline, scale } from './svg.js';
import { figure, modeWords, qualityWords, quantityWords } from './units.js';
import { isShown, showUnknown } from './wiring.js';

const TRACE = 60;
const id = name => document.getElementById(name);
const lines = new Map(), traces = new Map();

async function start() {
  try {
    await loadStudio();
    await loadShop();
    for (const { channel } of await get('/api/setup/channels')) { const known = findChannel(channel.id); if (known) known.topic = channel.topic; }
  } catch (problem) {
    id('loading').replaceChildren(html('h1', {}, 'The channels cannot be shown'), html('p', { class: 'lede' }, problem.message));
    return setTimeout(() => location.reload(), 10_000);
  }
  id('loading').hidden = true;
  id('setup').hidden = false;
  build();
  keepCurrent({ onChange: (kind, item) => { if (kind === 'reading') heardFrom(item); } });
  setInterval(() => { for (const [channel, line] of lines) write(channel, line); summary(); }, 1000);
  id('pair').addEventListener('click', pair);
  showScreens();
  showUnknown().then(showStray);
  for (const channel of lines.keys()) await lastMinutes(channel);
}

/** Ten minutes of trace to begin with, so that a line has a shape before somebody touches its sensor. */
async function lastMinutes(channel) {
  const past = await readings(channel.id, now() - 600e3, now(), 20).catch(() => []), since = traces.get(channel);
  traces.set(channel, [...past.filter(p => !since.length || p.t < since[0].t), ...since].slice(-TRACE));
  write(channel, lines.get(channel));
}

function summary() {
  const channels = shop.appliances.flatMap(a => a.channels), heard = channels.filter(c => !isOld(c)).length;
  id('summary').textContent = channels.length ? `${heard} of ${channels.length} channels are heard` : 'No channel is set up yet';
}

function build() {
  summary();
  if (!shop.appliances.length) id('appliances').replaceChildren(html('p', { class: 'notice' }, 'Name the appliances and their channels in hotshop.json; "hotshop init" writes one to begin with, "hotshop check" says what is wrong in it.'));
  id('appliances').append(...shop.appliances.map(a => html('section', { class: 'group' }, html('h2', {}, a.name, html('small', {}, a.kind === 'shop' ? '' : modeWords(a.mode))), ...a.channels.map(c => {
    const parts = { value: html('div', { class: 'value' }), state: html('small'), trace: el('svg', { viewBox: '0 0 108 36', 'aria-hidden': 'true', preserveAspectRatio: 'none' }) };
    const row = html('div', { class: 'wire' }, html('p', {}, c.channel, html('small', {}, quantityWords(c.quantity))), parts.value, parts.trace, html('p', { class: 'topic' }, parts.state, html('code', {}, c.topic ?? `hotshop/${c.id}`), ...trust(c)));
    lines.set(c, { ...parts, row });
    traces.set(c, c.atMs ? [{ t: c.atMs, v: c.value }] : []);
    write(c, lines.get(c));
    return row;
  }))));
}

/** What the sensor is, what corrects it and how far it can be trusted: when the page was opened. */
function trust(c) {
  const shown = (quantity, v) => { const f = figure(quantity, v, 1); return `${f.number} ${f.unit}`; }, temperature = v => shown('temperature', v);
  const said = [c.thermocouple && `type ${c.thermocouple}`, c.tolerance].filter(Boolean);
  if (c.calibration) {
    const { from, by, correctionKelvins: k, asReadCelsius, isHeld } = c.calibration;
    said.push(`read ${temperature(asReadCelsius)}, corrected by ${shown('temperature-difference', k)} since ${dateKey(Date.parse(from))}${by ? ` (${by})` : ''}${isHeld ? '; this reading lies outside what was calibrated' : ''}`);
  }
  if (c.valueLow95 != null) said.push(`true value between ${temperature(c.valueLow95)} and ${temperature(c.valueHigh95)}, 95 %`);
  return said.length ? [html('small', { class: 'trust' }, said.join(' · '))] : [];
}

function write(channel, { value, state, trace, row }) {
  const f = figure(channel.quantity, channel.value), old = isOld(channel);
  row.classList.toggle('old', old);
  value.replaceChildren(`${f.number} ${f.unit}`, html('small', {}, f.other));
  state.textContent = channel.atMs ? old ? `${qualityWords(channel.quality === 'good' ? 'stale' : channel.quality)}, last at ${when(channel.atMs)}` : `${age(channel)} ago, ${qualityWords(channel.quality)}, every ${span(channel.intervalSeconds * 1000)}${channel.reports === 'on-change' ? ' or on change' : ''}` : 'never heard: is the device on, is the topic right?';
  const points = traces.get(channel);
  if (points.length < 2) return trace.replaceChildren(el('line', { x1: 0, y1: 18, x2: 108, y2: 18, class: 'trace-base' }));
  const low = Math.min(...points.map(p => p.v)), high = Math.max(...points.map(p => p.v)), X = scale(points[0].t, points.at(-1).t || 1, 2, 106), Y = scale(low, high === low ? low + 1 : high, 32, 4);
  trace.replaceChildren(el('path', { d: polyline(points.map(p => [X(p.t), Y(p.v)])), class: 'trace', 'vector-effect': 'non-scaling-stroke' }));
}

function heardFrom(item) {
  const channel = findChannel(item.id), points = traces.get(channel);
  if (!points) return;
  points.push({ t: Date.parse(item.at), v: item.value });
  if (points.length > TRACE) points.shift();
  const { row } = lines.get(channel);
  // In a demo that runs fast every line answers all the time: nothing to point out.
  if (clockSpeed() > 10) return write(channel, lines.get(channel));
  row.classList.remove('moved');
  void row.offsetWidth;
  row.classList.add('moved');
  write(channel, lines.get(channel));
}

/** What was refused last: most often a misspelt id, or a payload in another shape. */
async function showStray() {
  const { refused } = await get('/api/health').catch(() => ({ refused: [] })), topics = new Map();
  for (const r of refused ?? []) if (!topics.has(r.topic) && !isShown(r.topic) && !([...lines.keys()].some(c => c.topic === r.topic) && r.reason.startsWith('no channel listens'))) topics.set(r.topic, r);
  id('stray').hidden = topics.size === 0;
  id('stray-list').replaceChildren(...[...topics.values()].slice(0, 20).map(r => html('li', {}, html('p', {}, html('code', {}, r.topic), html('br'), html('small', {}, `${r.reason} (${when(Date.parse(r.at))})`)))));
}

async function showScreens() {
  const screens = await get('/api/screens').catch(problem => problem.status === 403 || problem.status === 404 ? null : []);
  id('pair').hidden = screens === null;
  id('screens').replaceChildren(...(screens ?? []).map(s => html('li', {}, html('p', {}, s.name, html('small', {}, ` paired ${when(Date.parse(s.pairedAt))}`)),
    html('button', { type: 'button', 'aria-label': `Remove ${s.name}`, onclick: () => remove(s) }, 'Remove'))), ...(screens === null ? [html('li', {}, html('p', {}, 'Only the owner pairs screens.'))] : screens.length ? [] : [html('li', {}, html('p', {}, 'No screen is paired yet.'))]));
}

async function remove(screen) {
  await fetch(`/api/screens/${encodeURIComponent(screen.id)}`, { method: 'DELETE' });
  showScreens();
}

async function pair() {
  try {
    const { code, until } = await post('/api/screens/pairing');
    const minutes = Math.round((Date.parse(until) - Date.now()) / 60000);
    id('pairing').replaceChildren(html('p', {}, `On the screen open ${location.origin}/pair and type`), html('p', { class: 'big' }, code), html('p', {}, `It holds for ${minutes > 0 && minutes < 60 ? minutes : 10} minutes and for one screen.`));
  } catch (problem) { id('pairing').replaceChildren(html('p', {}, problem.message)); }
}

start();
