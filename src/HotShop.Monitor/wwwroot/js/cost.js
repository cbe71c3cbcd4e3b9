// What the shop costs now: the last hour, and the studio's day so far.
import { get } from './api.js';
import { hourOfDay, now } from './clock.js';
import { channelOf, fires, house, shop } from './shop.js';

const HOUR = 3600e3;
const burnsGas = appliance => channelOf(appliance, 'gas-flow') || channelOf(appliance, 'gas-volume') || channelOf(appliance, 'valve');

/** Where a meter counts the house's gas, the gas of single fires is in it already and is not counted twice. */
const payers = () => burnsGas(house()) ? [house(), ...fires().filter(a => !burnsGas(a))] : fires();

export async function loadCost() {
  const from = now() - hourOfDay(now()) * HOUR;
  const [hour, today] = await Promise.all([costOf(now() - HOUR), costOf(from)]);
  shop.costLastHour = hour;
  shop.costToday = today;
}

async function costOf(fromMs) {
  let sum = null;
  await Promise.all(payers().map(async appliance => {
    const query = new URLSearchParams({ appliance: appliance.appliance, from: new Date(fromMs).toISOString(), to: new Date(now()).toISOString(), step: 'hour' });
    const rows = await get(`/api/fuel?${query}`);
    // An hour of which nothing is known is no free hour.
    for (const row of rows) if (row.costAmount !== null && row.costAmount !== undefined && (row.measuredShare > 0 || row.estimatedEnergyKwh > 0)) sum = (sum ?? 0) + row.costAmount;
  }));
  return sum;
}
