// Meters: what passed, and is it right? Each meter at its place behind the others, what was read, and a field for the next reading.
import { get } from './api.js';
import { when } from './clock.js';
import { keepSending, onQueueChange } from './entry-queue.js';
import { startDial } from './meter-dial.js';
import { entryForm, unsentOf } from './meter-entry.js';
import { photoOf } from './meter-photo.js';
import { rateStrip } from './meter-strip.js';
import { plain, unitWords } from './meter-words.js';
import { keepCurrent, loadShop, loadStudio, shop } from './shop.js';
import { html } from './svg.js';

const id = name => document.getElementById(name);
const KEPT = 'hotshop.meters';
let known = null, isAsking = false;

async function start() {
  try { await loadStudio(); await loadShop(); } catch { /* what this device kept of the meters is shown */ }
  await load();
  if (!known) { id('loading').replaceChildren(html('p', { class: 'lede' }, 'The meters cannot be shown: there is no connection, and this device has kept nothing of them yet.')); return setTimeout(() => location.reload(), 10_000); }
  id('loading').hidden = true;
  id('meters').hidden = false;
  startDial();
  keepCurrent({ onChange: (kind, item) => { if (kind === 'log' && (item.entry === 'meter-reading' || item.entry === 'correction')) again(); } });
  onQueueChange(again);
  keepSending();
  setInterval(again, 60_000);
}

async function load() {
  try {
    known = await get('/api/meters');
    localStorage.setItem(KEPT, JSON.stringify(known));
  } catch { known ??= JSON.parse(localStorage.getItem(KEPT) ?? 'null'); }
  if (known) show();
}

async function again() {
  if (isAsking) return;
  isAsking = true;
  try { await load(); } finally { isAsking = false; }
}

/** A field that somebody is typing in stays as it is; everything else is drawn anew. */
function show() {
  const { meters, gas } = known, main = meters.find(m => m.isMain && m.energy === 'gas') ?? meters[0];
  id('passed').textContent = main ? heading(main) : 'Meters';
  id('passed-more').textContent = main ? `${passedWords(main, main.week)} in seven days, today included` : '';
  id('none').hidden = meters.length > 0;
  showWaiting(meters);
  const roots = meters.filter(m => !meters.some(o => o.id === m.parent));
  const busy = document.activeElement?.closest('#tree form');
  if (!busy || ![...busy.querySelectorAll('input[inputmode]')].some(i => i.value && i.value !== '0')) id('tree').replaceChildren(...roots.map(branch));
  id('factor').hidden = !meters.some(m => m.energy === 'gas');
  id('factor-words').textContent = gas.words;
  id('factor-more').textContent = `${plain(gas.grossKwhPerM3, 3)} kWh gross in a cubic metre there, so ${plain(gas.kwhPerMeteredM3, 3)} kWh in one that the meter counts.`;
}

const heading = main => main.today.energyKwh > 0 ? `${passedWords(main, main.today)} today` : main.readings.length < 2 && main.reports === 'typed' ? 'Read the meter twice, and it tells what passed' : 'Nothing has passed today yet';

function passedWords(meter, passed) {
  const energy = `${plain(passed.energyKwh)} kWh`;
  return meter.energy === 'gas' ? `${plain(passed.volumeM3)} m³, ${energy}` : energy;
}

function branch(meter) {
  const behind = known.meters.filter(m => m.parent === meter.id);
  return html('li', { class: 'meter' }, card(meter), behind.length ? html('ul', {}, behind.map(branch)) : null);
}

function card(meter) {
  const last = meter.readings[0], strip = rateStrip(meter), isTyped = meter.reports === 'typed';
  const entry = isTyped ? entryForm(meter, again) : html('details', {}, html('summary', {}, 'Type what the meter itself says, to compare'), entryForm(meter, again));
  return html('div', { class: 'card', 'data-meter': meter.id }, html('h2', {}, `${meter.name}, ${meter.channel}`), html('p', { class: 'place' }, placeWords(meter)),
    html('dl', { class: 'figures' }, last ? fact(`Read ${when(Date.parse(last.time))}${last.who ? `, ${last.who}` : ''}`, html('span', { class: 'register' }, plain(last.reading, 3)), unitWords(meter, last.unit)) : null,
      !isTyped && meter.sensorValue !== null ? fact(`Sent ${when(Date.parse(meter.sensorTime))}`, plain(meter.sensorValue, 2), meter.energy === 'gas' ? 'm³ or m³/h' : 'kWh or kW') : null,
      fact('Today', passedWords(meter, meter.today), interval(meter.today)), fact('Seven days', passedWords(meter, meter.week), interval(meter.week))),
    strip, meter.register ? html('p', { class: meter.register.isBeyond ? 'against beyond' : 'against' }, meter.register.words) : null,
    meter.against ? html('p', { class: meter.against.isBeyond ? 'against beyond' : 'against' }, meter.against.words) : null,
    meter.readings.length || isTyped || meter.energy === 'gas' ? entry : null, meter.readings.length ? readingsOf(meter) : null);
}

const fact = (name, value, more) => html('div', {}, html('dt', {}, name), html('dd', {}, value, more ? html('small', {}, more) : null));
const interval = p => p.energyKwh > 0 ? `${plain(p.energyKwhLow95)} to ${plain(p.energyKwhHigh95)} kWh` : null;

function placeWords(meter) {
  const parent = known.meters.find(m => m.id === meter.parent), kind = meter.energy === 'gas' ? 'gas' : 'electricity';
  const served = meter.serves.map(s => shop.appliances.find(a => a.appliance === s)?.name ?? s).join(', ');
  const place = meter.isMain ? `Main meter of the ${kind}` : `${kind[0].toUpperCase()}${kind.slice(1)} of ${served}${parent ? `, behind ${parent.name}, ${parent.channel}` : ''}`;
  return `${place}; ${meter.reports === 'typed' ? 'read by people' : 'sends by itself'}`;
}

function readingsOf(meter) {
  return html('details', {}, html('summary', {}, `The last ${meter.readings.length} readings`), html('ul', { class: 'readings' }, meter.readings.map(r => html('li', {},
    html('span', {}, html('span', { class: 'register' }, plain(r.reading, 3)), ` ${unitWords(meter, r.unit)}${r.isExchange ? `, then exchanged: the new one began at ${plain(r.newMeterReading, 3)}` : ''}`, ' ', html('small', {}, `${when(Date.parse(r.time))}${r.who ? `, ${r.who}` : ''}`)),
    photoOf(r, again)))));
}

function showWaiting(meters) {
  const list = meters.flatMap(m => unsentOf(m).map(w => ({ meter: m, ...w })));
  id('waits').hidden = !list.length;
  id('waits').textContent = list.map(({ meter, entry, refused }) => refused ? `${plain(entry.reading, 3)} ${unitWords(meter, entry.unit)} was not taken: ${refused}` : `${plain(entry.reading, 3)} ${unitWords(meter, entry.unit)} is kept here and sent when the service can be reached.`).join(' ');
}

start();
