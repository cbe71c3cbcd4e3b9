// The log of a pot as it holds: what the service has, what still waits here, and corrections worked into both.
import { html } from './svg.js';
import { storyOf } from './story.js';

const SHOWN = 40, NOT_CHANGES = ['id', 'appliance', 'entry', 'time', 'who', 'of', 'text', 'corrections'];

/** Entries after corrections, those that wait on this device among them. */
export function holding(entries, waiting) {
  const queued = waiting.map(w => w.entry), seen = new Set(entries.map(e => e.id));
  const byId = new Map([...entries, ...queued.filter(e => !seen.has(e.id))].filter(e => e.entry !== 'correction').map(e => [e.id, e]));
  const changesOf = correction => Object.entries(correction).filter(([key]) => !NOT_CHANGES.includes(key)), corrections = queued.filter(e => e.entry === 'correction');
  const struck = new Set(corrections.filter(c => !changesOf(c).length).map(c => c.of));
  // The service has worked in its own; those that still wait come on top, in their order.
  for (const correction of corrections.filter(c => byId.has(c.of) && !struck.has(c.id))) {
    const changes = changesOf(correction), of = byId.get(correction.of);
    if (!changes.length) { byId.delete(correction.of); continue; }
    const next = { ...of, corrections: [...of.corrections ?? [], correction] };
    for (const [key, value] of changes) if (key === 'at') next.time = value; else if (key === 'by') next.who = value; else if (value === null) delete next[key]; else next[key] = value;
    byId.set(correction.of, next);
  }
  return [...byId.values()].sort((a, b) => Date.parse(a.time) - Date.parse(b.time));
}

/** place: the list; open(entry): its sheet; discard(id): gives up a refused one. */
export function showLog(place, list, waiting, { wanted, open, discard }) {
  const queue = new Map(waiting.map(w => [w.entry.id, w])), pending = new Set(waiting.filter(w => w.entry.entry === 'correction' && !w.refused).map(w => w.entry.of));
  const refusedCorrections = waiting.filter(w => w.refused && w.entry.entry === 'correction');
  const rows = [...list].sort((a, b) => Number(queue.has(b.id)) - Number(queue.has(a.id)) || Date.parse(b.time) - Date.parse(a.time)).slice(0, SHOWN);
  place.replaceChildren(...refusedCorrections.map(w => refusedRow(w, 'correction', discard)), ...rows.map(e => {
    const kept = queue.get(e.id);
    if (kept?.refused) return refusedRow(kept, storyOf(e), discard);
    const state = kept ? 'kept here, not sent yet' : pending.has(e.id) ? 'correction kept here, not sent yet' : e.corrections?.length ? correctedWords(e.corrections) : null;
    return html('li', { id: `entry-${e.id}`, class: e.id === wanted ? 'wanted' : null }, html('span', {}, storyOf(e), state ? html('small', {}, state) : null),
      html('button', { type: 'button', 'aria-label': `Correct: ${storyOf(e)}`, onclick: () => open(e) }, 'Correct'));
  }));
}

const refusedRow = (kept, words, discard) => html('li', { class: 'refused', id: `entry-${kept.entry.id}` }, html('span', {}, words, html('small', {}, `refused: ${kept.refused}`)),
  html('button', { type: 'button', 'aria-label': `Discard: ${words}`, onclick: () => discard(kept.entry.id) }, 'Discard'));

/** "corrected by Ada: miscounted". */
export function correctedWords(corrections) {
  const last = corrections.at(-1);
  return `corrected${last.who ? ` by ${last.who}` : ''}${last.text ? `: ${last.text}` : ''}`;
}
