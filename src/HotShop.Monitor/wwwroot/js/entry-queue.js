// The log keeps taking entries when the line is down. Each has an id made here and is sent until the service has it;
// the same id is the same entry, so sending twice or from two phones merges by itself.
import { CutOff, freshEntryId, post } from './api.js';

const KEY = 'hotshop.entries', AGAIN_MS = 5000;
let sending = false, signedOut = false, listener = () => {};

const read = () => { try { return JSON.parse(localStorage.getItem(KEY) ?? '[]'); } catch { return []; } };
const write = list => localStorage.setItem(KEY, JSON.stringify(list));

export const waiting = () => read();
/** The service asked for a sign-in when entries were sent last: they wait until somebody signs in. */
export const isSignedOut = () => signedOut;
export const onQueueChange = hear => { listener = hear; };
export const whoLogs = () => localStorage.getItem('hotshop.who') ?? '';
export const nameWhoLogs = who => localStorage.setItem('hotshop.who', who.trim());

/** Takes the entry at once and sends it as soon as possible. Returns it with its id; null where this device has no room to keep it. */
export function log(entry) {
  const whole = { id: freshEntryId(), ...entry, ...(whoLogs() ? { who: whoLogs() } : {}) };
  try { write([...read(), { entry: whole }]); } catch { return null; }
  listener();
  send();
  return whole;
}

export function discard(id) {
  write(read().filter(w => w.entry.id !== id));
  listener();
}

/** Sends what waits, in order. A refused entry stays, with the reason, until a person discards it; the rest goes on. */
export async function send() {
  if (sending) return;
  sending = true;
  try {
    for (let next = unsent(); next; next = unsent()) if (!await sent(next.entry)) break;
  } finally { sending = false; }
}

const unsent = () => read().find(w => !w.refused);

/** False: what comes behind it would fare alike, so it waits too. */
async function sent(entry) {
  try {
    await post('/api/logbook', entry);
    signedOut = false;
    write(read().filter(w => w.entry.id !== entry.id));
  } catch (problem) {
    signedOut = problem.status === 401;
    if (problem instanceof CutOff || problem.status >= 500 || problem.status === 401 || problem.status === 429) { listener(); return false; }
    write(read().map(w => w.entry.id === entry.id ? { ...w, refused: problem.message } : w));
  }
  listener();
  return true;
}

export function keepSending() {
  addEventListener('online', send);
  // Another page of ours on this device sends from the same queue.
  addEventListener('storage', event => { if (event.key === KEY) listener(); });
  setInterval(() => { if (unsent()) send(); }, AGAIN_MS);
  send();
}
