// Calls to the service. A refusal becomes a sentence; being cut off becomes a kind of its own.
export class CutOff extends Error {}
export class Refused extends Error {
  constructor(status, message) { super(message); this.status = status; }
}

let signedOut = () => location.assign(`/signin?returnUrl=${encodeURIComponent(location.pathname + location.search)}`);
/** A page that keeps working without being signed in says here what it does instead of leading away. */
export const whenSignedOut = act => { signedOut = act; };

async function call(address, options) {
  let response;
  try { response = await fetch(address, { credentials: 'same-origin', ...options }); }
  catch { throw new CutOff('The service cannot be reached from here.'); }
  if (response.status === 401) {
    signedOut();
    throw new Refused(401, 'Sign in first.');
  }
  const type = response.headers.get('content-type') ?? '';
  const body = type.includes('json') ? await response.json() : null;
  if (!response.ok) throw new Refused(response.status, body?.detail ?? body?.title ?? `The service answered ${response.status}.`);
  return body;
}

export const get = address => call(address, { cache: 'no-store' });
export const post = (address, body) =>
  call(address, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body ?? {}) });

/** Points of one channel, thinned by the service to one every stepSeconds: [{t, v, low, high}], in time order. */
export async function readings(channel, fromMs, toMs, stepSeconds) {
  const query = new URLSearchParams({ channel, from: new Date(fromMs).toISOString(), to: new Date(toMs).toISOString(), step: String(stepSeconds) });
  const { points } = await get(`/api/readings?${query}`);
  return points.map(p => ({ t: Date.parse(p.time), v: p.mean ?? p.value, low: p.min ?? p.mean ?? p.value, high: p.max ?? p.mean ?? p.value }))
    .filter(p => Number.isFinite(p.v));
}

/** An id made here, so that the same entry sent twice stays one. randomUUID is missing on plain http, getRandomValues is not. */
export function freshEntryId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = bytes[6] & 0x0f | 0x40;
  bytes[8] = bytes[8] & 0x3f | 0x80;
  const hex = [...bytes].map(b => b.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
