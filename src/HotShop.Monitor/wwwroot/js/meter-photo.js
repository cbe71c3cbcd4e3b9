// A picture of the meter's face beside its reading: taken with the phone, sent at once, shown to whoever is signed in.
import { freshEntryId } from './api.js';
import { html } from './svg.js';

const MOST = 6 * 1024 * 1024;

export function photoOf(reading, done) {
  const address = `/api/logbook/${encodeURIComponent(reading.entry)}/photo`;
  if (reading.hasPhoto) return html('a', { href: address, target: '_blank', rel: 'noopener' }, 'Picture');
  const file = html('input', { type: 'file', accept: 'image/jpeg,image/png', capture: 'environment', id: `p-${freshEntryId()}` }), words = html('span', {}, 'Add a picture');
  file.addEventListener('change', async () => {
    const picture = file.files[0];
    if (!picture) return;
    if (picture.size > MOST) { words.textContent = 'Larger than 6 MB: take a smaller one'; return; }
    words.textContent = 'Sending …';
    try {
      const answer = await fetch(address, { method: 'POST', credentials: 'same-origin', headers: { 'content-type': picture.type }, body: picture });
      if (answer.ok) return done();
      words.textContent = (await answer.json().catch(() => null))?.detail ?? `The service answered ${answer.status}`;
    } catch { words.textContent = 'No connection: try again later'; }
  });
  return html('label', { for: file.id }, file, words);
}
