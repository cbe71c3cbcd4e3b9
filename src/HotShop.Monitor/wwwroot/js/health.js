// Health: is the watcher well? Parts, ways to a phone, sensors with age and quality, refused messages with their reasons.
import { get, post } from './api.js';
import { now, span, when } from './clock.js';
import { age } from './saying.js';
import { isOld, keepCurrent, loadShop, loadStudio, shop } from './shop.js';
import { el, html } from './svg.js';
import { figure, qualityWords, quantityWords } from './units.js';

const FIRST = 5, COUNTS = {
  accepted: 'readings accepted', stored: 'stored', duplicate: 'sent twice, kept once', redelivered: 'delivered again', refused: 'refused', conflict: 'conflicts: same time, other value', conflicts: 'conflicts',
  late: 'came late', 'impossible-time': 'with an impossible time', 'too-old': 'too old to keep', 'retained-without-time': 'last values without time',
};
const id = name => document.getElementById(name);
let health = null, outlets = [], showAll = false;

async function start() {
  try { await loadStudio(); await loadShop(); await again(); }
  catch (problem) {
    id('loading').replaceChildren(html('h1', {}, 'The health cannot be shown'), html('p', { class: 'lede' }, problem.message));
    return setTimeout(() => location.reload(), 10_000);
  }
  id('loading').hidden = true;
  id('health').hidden = false;
  id('refused-more').addEventListener('click', () => { showAll = true; showRefused(); });
  show();
  keepCurrent({ onAgain: refresh });
  setInterval(showSensors, 2000);
  setInterval(refresh, 10_000);
}

async function again() { [health, outlets] = await Promise.all([get('/api/health'), get('/api/outlets').catch(problem => problem.status === 403 ? null : Promise.reject(problem))]); }
async function refresh() { try { await again(); show(); } catch { /* the bar above says it */ } }

function show() {
  const bad = health.parts.filter(p => p.state === 'trouble'), unset = health.parts.filter(p => p.state === 'not-set-up'), silent = shop.appliances.flatMap(a => a.channels).filter(isOld), unproven = (outlets ?? []).filter(o => !o.isProven);
  id('summary').textContent = bad.length ? `The watcher has trouble with its ${bad.map(p => p.part).join(' and ')}` : unset.length ? `The watcher is at work, but not all of it is set up` : 'The watcher is at work';
  id('summary-more').textContent = [silent.length ? `${silent.length} of its sensors ${silent.length === 1 ? 'is' : 'are'} not heard` : 'every sensor is heard', outlets === null ? null : unproven.length ? `${unproven.length} ${unproven.length === 1 ? 'way' : 'ways'} to a phone not proven` : outlets.length ? 'every way to a phone is proven' : 'nobody can be called'].filter(Boolean).join(' · ');
  id('parts').replaceChildren(...health.parts.map(p => html('li', {}, sign(p.state === 'working'), html('p', {}, `${p.part}: ${p.state === 'not-set-up' ? 'not set up' : p.state}`, html('small', {}, ` ${[p.detail, p.since && Date.parse(p.since) > 0 ? `since ${when(Date.parse(p.since))}` : null].filter(Boolean).join(', ')}`)))));
  showOutlets();
  showSensors();
  showRefused();
  showTurnedAway();
  const numbers = { ...health.counters, ...(health.store?.readingsStored !== undefined ? { stored: health.store.readingsStored } : {}) };
  const facts = Object.entries(numbers).map(([name, n]) => [COUNTS[name] ?? name, Number(n).toLocaleString('en-GB')]);
  if (health.store) facts.push(['store on disk', size(health.store.bytes)], ['write-ahead log', size(health.store.walBytes)]);
  if (health.store?.waitingToBeWritten !== undefined) facts.push(['waiting to be written', String(health.store.waitingToBeWritten)]);
  if (health.openPages !== undefined) facts.push(['open pages', String(health.openPages)]);
  id('counts').replaceChildren(...facts.map(([name, value]) => html('div', {}, html('dt', {}, name), html('dd', {}, value))));
}

/** Working is an empty ring, trouble a filled triangle: told apart by shape, and the word stands beside. */
const sign = well => el('svg', { viewBox: '-12 -12 24 24', class: 'state', 'aria-hidden': 'true' }, well ? el('circle', { r: 7, class: 'ring' }) : el('path', { d: 'M0,-10L11,9H-11Z', class: 'bad' }));
const size = bytes => bytes > 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : bytes > 1e6 ? `${(bytes / 1e6).toFixed(1)} MB` : `${Math.round(bytes / 1e3)} kB`;

function showOutlets() {
  id('outlets-empty').hidden = outlets === null || outlets.length > 0;
  if (outlets === null) return id('outlets').replaceChildren(html('li', {}, html('p', {}, 'Only the owner sees and tests the ways to a phone.')));
  id('outlets').replaceChildren(...outlets.map(o => {
    const proof = o.lastReceiptAt ? `last proof ${when(Date.parse(o.lastReceiptAt))}${o.isProven ? '' : ': too long ago'}` : 'never proven';
    const more = [proof, o.lastSentAt ? `last sent ${when(Date.parse(o.lastSentAt))}` : 'nothing sent yet', o.waiting ? `${o.waiting} waiting` : null, o.lastError ? `last error: ${o.lastError}` : null].filter(Boolean).join(' · ');
    return html('li', {}, html('p', {}, `${o.name ?? o.person} by ${o.outlet}`, html('small', {}, ` ${more}`)),
      html('button', { type: 'button', 'aria-label': `Test call to ${o.name ?? o.person} by ${o.outlet}`, onclick: event => testCall(event.currentTarget, o) }, 'Test call'));
  }));
}

async function testCall(button, outlet) {
  button.disabled = true;
  const sent = now();
  id('outlet-said').replaceChildren(html('p', {}, `Test to ${outlet.name ?? outlet.person} by ${outlet.outlet} is on its way. Tap the link in it and its button; this page waits for the receipt.`));
  try { await post('/api/outlets/test', { person: outlet.person, outlet: outlet.outlet }); }
  catch (problem) { id('outlet-said').replaceChildren(html('p', {}, problem.message)); button.disabled = false; return; }
  const watch = setInterval(async () => {
    await refresh();
    const mine = outlets?.find(o => o.person === outlet.person && o.outlet === outlet.outlet), proof = mine?.lastReceiptAt ? Date.parse(mine.lastReceiptAt) : 0;
    if (proof >= sent - 2000) { clearInterval(watch); id('outlet-said').replaceChildren(html('p', {}, `Proven: the receipt came at ${when(proof)}, ${span(proof - sent)} after the call.`)); }
    else if (mine?.lastError) id('outlet-said').replaceChildren(html('p', {}, `Not through yet: ${mine.lastError}. It is tried again.`));
  }, 3000);
  setTimeout(() => clearInterval(watch), 15 * 60_000);
}

function showSensors() {
  id('sensors').replaceChildren(...shop.appliances.flatMap(a => a.channels.map(c => {
    const old = isOld(c), quality = old && c.quality === 'good' ? 'old' : qualityWords(c.quality), f = figure(c.quantity, c.value);
    return html('tr', { class: old ? 'old' : null }, html('th', { scope: 'row' }, `${a.name}, ${c.channel}`, html('small', {}, quantityWords(c.quantity))), html('td', {}, `${f.number} ${f.unit}`, html('small', {}, f.other)),
      html('td', {}, c.atMs ? old ? `last at ${when(c.atMs)}` : age(c) : 'never heard', html('small', {}, quality)));
  })));
}

function showRefused() {
  const all = health.refused ?? [], list = showAll ? all : all.slice(0, FIRST);
  id('refused-note').textContent = all.length ? 'Unreadable messages never become values. Each says why, and what to send instead.' : 'None. Every message that came could be read.';
  id('refused').replaceChildren(...list.map(r => html('li', {}, html('p', {}, r.reason, html('small', {}, ` ${when(Date.parse(r.at))}${r.sender ? `, from ${r.sender}` : ''}`), html('br'), html('code', {}, `${r.topic}  ${r.sample ?? ''}`)))));
  id('refused-more').hidden = showAll || all.length <= FIRST;
  id('refused-more').textContent = `Show all ${all.length}`;
}

/** Most devices are not told that they were refused: a person has to see it here. */
function showTurnedAway() {
  const list = health.broker?.denials ?? [];
  id('turned-away-note').textContent = list.length ? 'Since the service started. A device of MQTT 3.1.1 is not told that its message was refused.' : 'Nothing since the service started.';
  id('turned-away').replaceChildren(...list.slice(0, 20).map(d => html('li', {}, html('p', {}, `${d.kind} of ${d.client}: ${d.reason}`,
    html('small', {}, ` ${when(Date.parse(d.lastAt))}${d.user ? `, user ${d.user}` : ''}${d.times > 1 ? `, ${d.times.toLocaleString('en-GB')} times` : ''}`), ...(d.about ? [html('br'), html('code', {}, d.about)] : [])))));
}

start();
