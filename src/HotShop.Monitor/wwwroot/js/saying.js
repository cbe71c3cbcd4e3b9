// What an appliance has to say for itself: the figures of the floor, in words where words are better.
import { now, span, when } from './clock.js';
import { channelOf, feedChannel, fires, hotChannel, house, isOld, loadOf, shop } from './shop.js';
import { both, figure, modeWords, money, qualityWords } from './units.js';

const COLD = 120;

/** {name, unit, number, first, second, old, off, spoken}: number stands large, first and second are the small lines below it. */
export function temperatureOf(appliance) {
  const channel = hotChannel(appliance), off = appliance.mode === 'off' || appliance.mode === 'out-of-service';
  if (!channel) return words(appliance.name, modeWords(appliance.mode), `since ${whenOrUnknown(appliance.modeSince)}`, 'no thermometer', { off: true });
  const f = figure('temperature', channel.value);
  if (isOld(channel)) return { ...words(appliance.name, f.number, f.other, lastAt(channel), { old: true }), unit: f.unit };
  if (off && channel.value < COLD) return words(appliance.name, modeWords(appliance.mode), `since ${whenOrUnknown(appliance.modeSince)}`, f.text.replace(',', ' ·'), { off: true });
  const doubt = channel.quality !== 'good' ? qualityWords(channel.quality) : null;
  return { ...words(appliance.name, f.number, f.other, doubt ?? `${age(channel)} · ${course(appliance, channel)}`, { old: doubt !== null }), unit: f.unit };
}

function words(name, number, first, second, more) {
  return { name, unit: '', number, first, second, old: false, off: false, ...more };
}

const whenOrUnknown = iso => iso ? when(Date.parse(iso)) : 'not known';
export const lastAt = channel => channel.atMs ? `last at ${when(channel.atMs)}` : 'never heard';
export const age = channel => channel.atMs ? span(now() - channel.atMs) : 'never heard';

/** How far an annealer is from its curve: set point or plan of its load; null where neither is known. */
export function deviationOf(appliance) {
  const channel = hotChannel(appliance);
  if (!channel || isOld(channel)) return null;
  const due = dueOf(appliance);
  return due === null ? null : channel.value - due;
}

export function dueOf(appliance) {
  const setpoint = channelOf(appliance, 'setpoint');
  if (setpoint && !isOld(setpoint)) return setpoint.value;
  const load = loadOf(appliance);
  if (load?.curve?.length) {
    const points = curveOf(load), t = now(), i = points.findIndex(p => p.t >= t);
    if (i > 0) { const a = points[i - 1], b = points[i]; return a.v + (b.v - a.v) * (t - a.t) / (b.t - a.t || 1); }
  }
  return null;
}

/** The plan of a load as [{t, v}] in ms and °C, whatever the service calls the temperature. */
export const curveOf = load => (load?.curve ?? []).map(p => ({ t: Date.parse(p.time), v: p.celsius ?? p.temperatureCelsius ?? p.value })).filter(p => Number.isFinite(p.t) && Number.isFinite(p.v));

function course(appliance, channel) {
  if (appliance.kind !== 'annealer') return modeWords(appliance.mode);
  const off = deviationOf(appliance);
  if (off === null) return modeWords(appliance.mode);
  if (Math.abs(off) < 3) return 'on curve';
  return `${figure('temperature', channel.value - off).number} due`;
}

/** Deviation as a clause for a reader: "14 °C (25 °F) below its curve". */
export function deviationWords(appliance) {
  const off = deviationOf(appliance);
  if (off === null) return null;
  if (Math.abs(off) < 3) return 'on its curve';
  const f = figure('temperature-difference', Math.abs(off));
  return `${f.number} ${f.unit} (${f.other}) ${off < 0 ? 'below' : 'above'} its curve`;
}

export function glassOf(pot) {
  if (!pot || pot.massKg === null || pot.massKg === undefined) return { name: 'Glass', unit: '', number: '?', first: 'not known yet', second: 'dip to begin', off: true, old: false };
  const f = figure('mass', pot.massKg), half = (pot.massKgHigh95 - pot.massKgLow95) / 2;
  return {
    name: 'Glass', unit: f.unit, number: f.number, old: false, off: false,
    first: `± ${figure('mass', half).number} · ${f.other}`, second: pot.hoursLeft > 0 && pot.hoursLeft < 72 ? `till ${when(now() + pot.hoursLeft * 3600e3)}` : modeLine(pot),
  };
}
const modeLine = pot => pot.readyAt && Date.parse(pot.readyAt) > now() ? `ready ${when(Date.parse(pot.readyAt))}` : 'nobody gathering';

/** Gas for the whole house: its own meter, or what the fires report together. */
export function gasOf() {
  const meter = channelOf(house(), 'gas-flow');
  if (meter) {
    const f = figure('gas-flow', meter.value);
    return { name: 'Gas', unit: f.unit, number: f.number, first: f.other, second: isOld(meter) ? lastAt(meter) : age(meter), old: isOld(meter), off: false, value: isOld(meter) ? null : meter.value };
  }
  const flows = fires().map(a => channelOf(a, 'gas-flow')).filter(Boolean);
  if (!flows.length) return null;
  if (flows.every(isOld)) return { name: 'Gas', unit: '', number: '–', first: 'not known', second: lastAt(flows[0]), old: true, off: false, value: null };
  const sum = flows.filter(c => !isOld(c)).reduce((s, c) => s + c.value, 0), silent = flows.filter(isOld).length, f = figure('gas-flow', sum);
  return { name: 'Gas', unit: f.unit, number: f.number, first: f.other, second: silent ? `without ${silent} silent` : 'sum of the fires', old: false, off: false, value: sum };
}

export function moneyOf() {
  const hour = shop.lastHour?.money ?? null, today = shop.today?.money ?? null, energyKwh = shop.lastHour?.energyKwh ?? null;
  if (hour === null && energyKwh === null) return null;
  if (hour === null) return { name: 'Energy', number: figure('energy', energyKwh).number, unit: 'kWh', first: 'last hour', second: `${figure('energy', shop.today?.energyKwh).number} kWh today` };
  return { name: 'Money', number: money(hour, shop.studio.currency, hour < 10 ? 1 : 0), unit: '', first: 'in the last hour', second: today === null ? '' : `${money(today, shop.studio.currency)} today` };
}

/** The appliance in one sentence, for the table and for whoever listens instead of looks. */
export function sentenceOf(appliance) {
  const t = temperatureOf(appliance), channel = hotChannel(appliance), feed = feedChannel(appliance);
  const temperature = channel ? (t.off ? `${modeWords(appliance.mode)}, ${both('temperature', channel.value)}` : both('temperature', channel.value)) : modeWords(appliance.mode);
  return [temperature, channel && isOld(channel) ? lastAt(channel) : null, feed && !isOld(feed) ? both(feed.quantity, feed.value) : null, deviationWords(appliance), loadOf(appliance)?.glass?.find(g => g.isLow)?.words].filter(Boolean).join('; ');
}
