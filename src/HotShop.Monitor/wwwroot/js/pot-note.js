// What the pot page says of itself when it is cut off: how old its numbers are, and what waits on this device.
import { clockSpeed, now, span, when } from './clock.js';
import { isSignedOut, waiting } from './entry-queue.js';
import { canOpenOffline } from './offline.js';
import { html } from './svg.js';

const OLD_MS = 5 * 60e3;
let said = '';

/** asOfMs: when the service was last asked with success; null before. isCutOff: it does not answer now. */
export function showNote(place, { asOfMs, isCutOff, openedWithout }) {
  const all = waiting(), unsent = all.filter(w => !w.refused).length, refused = all.length - unsent, words = [];
  if (openedWithout && !isSignedOut()) words.push('No connection to the service.');
  if (asOfMs !== null && (isCutOff || now() - asOfMs > OLD_MS * Math.max(1, clockSpeed()))) words.push(`The glass is as of ${when(asOfMs)}, ${span(now() - asOfMs)} ago.`);
  const isOut = isSignedOut() && unsent > 0;
  if (isOut) words.push(`${entries(unsent)} on this device: you are signed out. Sign in, and they are sent.`);
  else if (unsent && isCutOff) words.push(`${entries(unsent)} on this device and ${unsent === 1 ? 'is' : 'are'} sent when the service answers.`);
  if (refused) words.push(`${refused} ${refused === 1 ? 'was' : 'were'} refused; the log below says why.`);
  if (isCutOff && !canOpenOffline()) words.push('Keep this page open: it cannot be opened anew without the service (that takes https).');
  const next = words.join(' ');
  if (next === said) return;
  said = next;
  place.hidden = !next;
  place.replaceChildren(html('p', {}, next), isOut ? html('a', { class: 'button', href: `/signin?returnUrl=${encodeURIComponent(location.pathname)}` }, 'Sign in') : '');
}

const entries = n => n === 1 ? 'One entry waits' : `${n} entries wait`;
