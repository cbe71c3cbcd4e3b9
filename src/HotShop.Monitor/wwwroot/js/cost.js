// What the shop costs now: the last hour, and the studio's day so far. A paired screen is told no money: there it is the energy.
import { get } from './api.js';
import { hourOfDay, now } from './clock.js';
import { channelOf, fires, house, shop } from './shop.js';

const HOUR = 3600e3;
const burnsGas = appliance => channelOf(appliance, 'gas-flow') || channelOf(appliance, 'gas-volume') || channelOf(appliance, 'valve');

/** Where a meter counts the house's gas, the gas of single fires is in it already and is not counted twice. */
const payers = () => burnsGas(house()) ? [house(), ...fires().filter(a => !burnsGas(a))] : fires();

export async function loadCost() {
  const from = now() - hourOfDay(now()) * HOUR;
  const nothing = { money: null, energyKwh: null };
  const [hour, today] = await Promise.all([useSince(now() - HOUR), useSince(from)]).catch(() => [shop.lastHour ?? nothing, shop.today ?? nothing]);
  shop.lastHour = hour;
  shop.today = today;
}

async function useSince(fromMs) {
  const use = { money: null, energyKwh: null };
  await Promise.all(payers().map(async appliance => {
    const query = new URLSearchParams({ appliance: appliance.appliance, from: new Date(fromMs).toISOString(), to: new Date(now()).toISOString(), step: 'hour' });
    const rows = await get(`/api/fuel?${query}`);
    // An hour of which nothing is known is no free hour.
    for (const row of rows.filter(r => r.measuredShare > 0 || r.estimatedEnergyKwh > 0)) {
      use.energyKwh = (use.energyKwh ?? 0) + row.energyKwh + row.estimatedEnergyKwh;
      if (row.costAmount !== null && row.costAmount !== undefined) use.money = (use.money ?? 0) + row.costAmount;
    }
  }));
  return use;
}
