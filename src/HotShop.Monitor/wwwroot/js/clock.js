// The studio's time: its zone, and in a demo its speed. Nothing on a page asks the browser's own clock what time it is.
let anchorMs = Date.now(), anchorTick = performance.now(), speed = 1, zone = 'UTC', newest = 0, said = 0;
const formats = new Map();

/** takenTick: when the service wrote nowIso, on the clock of performance.now(); now, unless it came along with the page. */
export function setClock(nowIso, factor, zoneId, takenTick = performance.now()) {
  anchorMs = said = Date.parse(nowIso);
  anchorTick = takenTick;
  speed = factor || 1;
  if (zoneId) zone = zoneId;
  formats.clear();
}

/** For a page that opens without the service: what its clock said then, by this device's clock. */
export const clockState = () => ({ serviceMs: now(), deviceMs: Date.now(), speed, zone });
export function resumeClock(state) {
  setClock(new Date(state.serviceMs + (Date.now() - state.deviceMs) * state.speed).toISOString(), state.speed, state.zone);
  said = state.serviceMs;
}

export const now = () => anchorMs + (performance.now() - anchorTick) * speed;
export const clockSpeed = () => speed;

/**
 * Readings tell how late it is at the service. One from the future of this clock shows that it has fallen behind; in a demo, whose clock waits where the
 * computer is too slow, nothing newer than two real seconds ago shows that it has run ahead.
 */
export function heard(ms) {
  if (!(ms >= newest)) return;
  newest = ms;
  const ahead = now() - ms;
  if (ahead < 0 && ahead > -3600e3 || speed > 1 && ahead > 2000 * speed) { anchorMs = ms; anchorTick = performance.now(); }
}

/** The time to write on an entry: in a demo none that the service has not seen yet, as two minutes of it pass in the blink of an eye. */
export const stamp = () => new Date(speed > 1 ? Math.min(now(), Math.max(newest, said)) : now()).toISOString();

function format(key, options) {
  if (!formats.has(key)) {
    try { formats.set(key, new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...options })); }
    catch { formats.set(key, new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', hourCycle: 'h23', ...options })); }
  }
  return formats.get(key);
}

export const time = ms => format('time', { hour: '2-digit', minute: '2-digit' }).format(ms);
export const weekday = ms => format('day', { weekday: 'short' }).format(ms);
export const date = ms => format('date', { weekday: 'short', day: 'numeric', month: 'short' }).format(ms);
const dayKey = ms => format('key', { year: 'numeric', month: '2-digit', day: '2-digit' }).format(ms);
/** The studio's day as YYYY-MM-DD. */
export const dateKey = ms => dayKey(ms).split('/').reverse().join('-');
export const hourOfDay = ms => Number(format('hour', { hour: '2-digit' }).format(ms)) + Number(format('minute', { minute: '2-digit' }).format(ms)) / 60;

/** "14:02" today, "Tue 21:30" within a week, "3 Mar 21:30" beyond. */
export function when(ms) {
  if (dayKey(ms) === dayKey(now())) return time(ms);
  if (Math.abs(ms - now()) < 6 * 86400e3) return `${weekday(ms)} ${time(ms)}`;
  return `${format('far', { day: 'numeric', month: 'short' }).format(ms)} ${time(ms)}`;
}

/** A duration in the words a person would use: "6 s", "27 min", "4 h", "3 days". */
export function span(milliseconds) {
  const seconds = Math.max(0, milliseconds / 1000);
  if (seconds < 90) return `${Math.round(seconds)} s`;
  if (seconds < 90 * 60) return `${Math.round(seconds / 60)} min`;
  if (seconds < 36 * 3600) return `${Math.round(seconds / 3600)} h`;
  return `${Math.round(seconds / 86400)} days`;
}
