// What the pot page showed last, so that it can be opened without the service and say how old its numbers are.
import { clockState, now, resumeClock } from './clock.js';
import { shop } from './shop.js';
import { setUnits } from './units.js';

const KEY = 'hotshop.pot-as-last-seen', MOST_ENTRIES = 200;

export function remember(furnace, pot, entries) {
  const { name, units, demo, speed, zone, currency } = shop.studio;
  const seen = { asOfMs: now(), clock: clockState(), studio: { name, units, demo, speed, zone, currency }, furnace, pot, entries: entries.slice(-MOST_ENTRIES) };
  // Without room it is not remembered; the queue of entries needs the room more.
  try { localStorage.setItem(KEY, JSON.stringify(seen)); } catch { localStorage.removeItem(KEY); }
}

/** {asOfMs, furnace, pot, entries} as last seen on this device, with the clock and the units set; null where nothing fits. */
export function recall(appliance) {
  let seen;
  try { seen = JSON.parse(localStorage.getItem(KEY)); } catch { return null; }
  if (!seen?.furnace || appliance && seen.furnace.appliance !== appliance) return null;
  shop.studio = seen.studio;
  shop.appliances = [seen.furnace];
  resumeClock(seen.clock);
  setUnits(seen.studio.units);
  return seen;
}
