// What is known of the shop now: read once, then kept up to date by the live stream.
import { get } from './api.js';
import { clockSpeed, heard, now, setClock, time, weekday } from './clock.js';
import { listen } from './live.js';
import { setUnits } from './units.js';

/** What the way from the sensor to this page may take; in a demo it counts as many times over. */
const DELIVERY_MS = 1000;
const HOT_CHANNELS = ['crown', 'glass', 'chamber', 'middle', 'shelf'];

export const shop = { studio: null, appliances: [], alarms: [], loads: [], trouble: null };

/** What came along with the page counts once; after that the service is asked. */
let first = JSON.parse(document.getElementById('first-state')?.textContent ?? 'null');

/** When the first byte of the page came. */
const pageTick = () => performance.getEntriesByType('navigation')[0]?.responseStart ?? performance.now();

export async function loadStudio() {
  shop.studio = first?.studio ?? await get('/api/studio');
  setClock(shop.studio.now, shop.studio.speed, shop.studio.zone, first ? pageTick() : undefined);
  setUnits(shop.studio.units);
  const name = document.getElementById('studio-name');
  if (name) name.textContent = shop.studio.demo ? `${shop.studio.name} (demo${shop.studio.speed > 1 ? `, ${shop.studio.speed}×` : ''})` : shop.studio.name;
  showClock();
}

export async function loadShop() {
  const [appliances, alarms, loads] = first ? [first.appliances, first.alarms, first.loads]
    : await Promise.all([get('/api/appliances'), get('/api/alarms'), get('/api/annealing/loads').catch(() => [])]);
  first = null;
  for (const a of appliances) for (const c of a.channels) c.atMs = c.at ? Date.parse(c.at) : null;
  shop.appliances = appliances.map(kept).sort((a, b) => (a.position?.order ?? a.position?.x ?? 0) - (b.position?.order ?? b.position?.x ?? 0));
  shop.alarms = alarms;
  shop.loads = loads;
}

/** Who holds an appliance or a channel holds it for as long as the page is open: what is asked anew goes into the same objects. */
function kept(fresh) {
  const old = shop.appliances.find(a => a.id === fresh.id);
  if (!old) return fresh;
  const channels = fresh.channels.map(c => Object.assign(old.channels.find(o => o.id === c.id) ?? {}, c));
  return Object.assign(old, fresh, { channels });
}

function showClock() {
  const clock = document.getElementById('clock');
  if (!clock) return;
  const words = `${weekday(now())} ${time(now())}`;
  if (clock.textContent !== words) { clock.textContent = words; clock.dateTime = new Date(now()).toISOString(); }
}

/** Keeps the shop current. onChange(kind, item) after each event, onAgain() when everything was read anew. */
export function keepCurrent({ onChange = () => {}, onAgain = () => {} } = {}) {
  setInterval(showClock, 1000);
  listen({
    onEvent: (kind, item) => { apply(kind, item); onChange(kind, item); },
    onBack: () => again(onAgain),
    onState: state => showLinkState(state),
    isBehind: clockSpeed() > 10,
  });
  // A demo that runs fast grows old fast.
  setInterval(() => again(onAgain), Math.max(8_000, 60_000 / Math.sqrt(clockSpeed())));
}

async function again(onAgain) {
  try { await loadStudio(); await loadShop(); shop.trouble = null; onAgain(); }
  catch (problem) { shop.trouble = problem; }
}

function apply(kind, item) {
  if (kind === 'reading') {
    const channel = findChannel(item.id ?? item.channel);
    if (!channel) return;
    Object.assign(channel, { value: item.value, quality: item.quality ?? 'good', at: item.at ?? item.time });
    channel.atMs = Date.parse(channel.at);
    heard(channel.atMs);
  } else if (kind === 'derived') {
    const appliance = findAppliance(item.appliance);
    const known = appliance?.derived?.find(d => d.name === item.name);
    if (known) Object.assign(known, item); else appliance?.derived?.push(item);
  } else if (kind === 'log') {
    const appliance = item.entry === 'mode' ? findAppliance(item.appliance) : null;
    if (appliance) Object.assign(appliance, { mode: item.mode, modeSince: item.time });
  } else if (kind === 'alarm') {
    const place = shop.alarms.findIndex(a => a.occurrence === item.occurrence);
    const over = item.state === 'normal';
    if (place >= 0 && over) shop.alarms.splice(place, 1);
    else if (place >= 0) Object.assign(shop.alarms[place], item);
    else if (!over) shop.alarms.push(item);
  }
}

function showLinkState(state) {
  const bar = document.getElementById('link-state');
  if (!bar) return;
  bar.hidden = state === 'connected';
  bar.textContent = state === 'connected' ? '' : `No connection to the service since ${time(now())}. What stands here is what was last heard; log entries are kept and sent later.`;
  document.body.classList.toggle('cut-off', state !== 'connected');
}

const tail = id => String(id ?? '').split('/').slice(-2).join('/');
export const findChannel = id => shop.appliances.flatMap(a => a.channels).find(c => c.id === id || tail(c.id) === tail(id));
export const findAppliance = id => shop.appliances.find(a => a.id === id || a.appliance === id || a.appliance === String(id ?? '').split('/').at(-1));

export const fires = () => shop.appliances.filter(a => a.kind !== 'shop');
export const house = () => shop.appliances.find(a => a.kind === 'shop');
export const channelOf = (appliance, quantity) => appliance?.channels.find(c => c.quantity === quantity);
export const derivedOf = (appliance, ...names) => appliance?.derived?.find(d => names.includes(d.name));
/** The temperature an appliance is known by: crown, chamber and so on before any other. */
export const hotChannel = appliance => {
  const hot = appliance.channels.filter(c => c.quantity === 'temperature');
  return HOT_CHANNELS.map(name => hot.find(c => c.channel === name)).find(Boolean) ?? hot[0];
};
/** Gas, else electric power, else the relay that switches it: what feeds the fire. */
export const feedChannel = appliance => channelOf(appliance, 'gas-flow') ?? channelOf(appliance, 'power') ?? channelOf(appliance, 'relay');

/** Older than three intervals, or said to be so by the service. A channel that reports on change is only as old as its quality says. */
export function isOld(channel) {
  if (!channel || channel.atMs === null) return true;
  if (['stale', 'missing', 'open-circuit', 'no-terminals'].includes(channel.quality)) return true;
  return channel.reports !== 'on-change' && now() - channel.atMs > 3000 * (channel.intervalSeconds || 10) + DELIVERY_MS * clockSpeed();
}
export const loadOf = appliance => shop.loads.find(l => (l.appliance === appliance.appliance || l.appliance === appliance.id) && !(l.closedAt && Date.parse(l.closedAt) < now()));

const OPEN = ['unacknowledged', 'acknowledged', 'returned-unacknowledged'];
/** Alarms that want attention, the most urgent and then the newest first. */
export const openAlarms = () => shop.alarms.filter(a => OPEN.includes(a.state))
  .sort((a, b) => Number(a.state === 'returned-unacknowledged') - Number(b.state === 'returned-unacknowledged') || a.priority - b.priority || Date.parse(b.since) - Date.parse(a.since));
