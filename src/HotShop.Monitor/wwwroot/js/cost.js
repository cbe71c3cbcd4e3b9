// What the shop costs now: the last hour, and the studio's day so far. A paired screen is told no money: there it is the energy.
import { get } from './api.js';
import { hourOfDay, now } from './clock.js';
import { shop } from './shop.js';

const HOUR = 3600e3;

export async function loadCost() {
  const from = now() - hourOfDay(now()) * HOUR;
  const nothing = { money: null, energyKwh: null };
  const [hour, today] = await Promise.all([useSince(now() - HOUR), useSince(from)]).catch(() => [shop.lastHour ?? nothing, shop.today ?? nothing]);
  shop.lastHour = hour;
  shop.today = today;
}

/** Of the whole studio: the service counts no gas twice. */
async function useSince(fromMs) {
  const use = { money: null, energyKwh: null };
  const query = new URLSearchParams({ from: new Date(fromMs).toISOString(), to: new Date(now()).toISOString(), step: 'hour' });
  // An hour of which nothing is known is no free hour.
  for (const row of (await get(`/api/fuel?${query}`)).filter(r => r.measuredShare > 0 || r.estimatedEnergyKwh > 0)) {
    use.energyKwh = (use.energyKwh ?? 0) + row.energyKwh + row.estimatedEnergyKwh;
    if (row.costAmount !== null && row.costAmount !== undefined) use.money = (use.money ?? 0) + row.costAmount;
  }
  return use;
}
