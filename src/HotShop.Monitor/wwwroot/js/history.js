// The past of each appliance, for drawing: temperature and what fed it, thinned by the service and prolonged by what the live stream brings.
import { readings } from './api.js';
import { now } from './clock.js';
import { channelOf, feedChannel, fires, hotChannel } from './shop.js';

const pasts = new Map();
let stepSeconds = 300;

export const pastOf = appliance => pasts.get(appliance.id) ?? { hot: [], feed: [], due: [] };
export const gapMsOf = channel => Math.max(3000 * (channel?.intervalSeconds || 10), 2200 * stepSeconds);

export async function loadPast(hours, step) {
  stepSeconds = step;
  const to = now(), from = to - hours * 3600e3;
  await Promise.all(fires().map(async appliance => {
    const hot = hotChannel(appliance), feed = feedChannel(appliance), due = appliance.kind === 'annealer' ? channelOf(appliance, 'setpoint') : null;
    const series = channel => channel ? readings(channel.id, from, to, step).catch(() => []) : [];
    const [hotPast, feedPast, duePast] = await Promise.all([series(hot), series(feed), series(due)]);
    pasts.set(appliance.id, { hot: hotPast, feed: feedPast, due: duePast });
    for (const [channel, list] of [[hot, hotPast], [feed, feedPast], [due, duePast]]) if (channel?.atMs) prolong(list, channel.atMs, channel.value);
  }));
}

/** Adds what the live stream brought, keeping about one point a step. */
export function hearReading(reading) {
  for (const appliance of fires()) {
    const past = pasts.get(appliance.id);
    if (!past) continue;
    if (hotChannel(appliance)?.id === reading.id) prolong(past.hot, Date.parse(reading.at ?? reading.time), reading.value);
    if (channelOf(appliance, 'setpoint')?.id === reading.id) prolong(past.due, Date.parse(reading.at ?? reading.time), reading.value);
    if (feedChannel(appliance)?.id === reading.id) prolong(past.feed, Date.parse(reading.at ?? reading.time), reading.value);
  }
}

function prolong(series, t, v) {
  if (!Number.isFinite(v) || !Number.isFinite(t)) return;
  const last = series.at(-1), before = series.at(-2);
  if (last && t <= last.t) return;
  if (last && before && last.t - before.t < stepSeconds * 1000) series[series.length - 1] = { t, v, low: v, high: v };
  else series.push({ t, v, low: v, high: v });
  while (series.length > 3000) series.shift();
}
