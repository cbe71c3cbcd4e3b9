// The log keeps taking entries when the line is down. Each has an id made here and is sent until the service has it;
// the same id is the same entry, so sending twice or from two phones merges by itself.
import { CutOff, freshEntryId, post } from './api.js';

const KEY = 'hotshop.entries', KEEP = 200;
let sending = false, listener = () => {};

const read = () => { try { return JSON.parse(localStorage.getItem(KEY) ?? '[]'); } catch { return []; } };
const write = list => localStorage.setItem(KEY, JSON.stringify(list.slice(-KEEP)));

export const waiting = () => read();
export const onQueueChange = hear => { listener = hear; };
export const whoLogs = () => localStorage.getItem('hotshop.who') ?? '';
export const nameWhoLogs = who => localStorage.setItem('hotshop.who', who.trim());

/** Takes the entry at once and sends it as soon as possible. Returns it with its id. */
export function log(entry) {
  const whole = { id: freshEntryId(), ...entry, ...(whoLogs() ? { who: whoLogs() } : {}) };
  write([...read(), { entry: whole }]);
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
    for (const { entry, refused } of read()) {
      if (refused) continue;
      try {
        await post('/api/logbook', entry);
        write(read().filter(w => w.entry.id !== entry.id));
      } catch (problem) {
        if (problem instanceof CutOff || problem.status >= 500 || problem.status === 401 || problem.status === 429) break;
        write(read().map(w => w.entry.id === entry.id ? { ...w, refused: problem.message } : w));
      }
      listener();
    }
  } finally { sending = false; }
}

export function keepSending() {
  addEventListener('online', send);
  setInterval(() => { if (read().some(w => !w.refused)) send(); }, 5000);
  send();
}
