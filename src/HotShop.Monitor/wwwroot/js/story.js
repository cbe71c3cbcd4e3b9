// A mark on the strip tells its story: who, what, when, and where to correct it.
import { when } from './clock.js';
import { html } from './svg.js';
import { both } from './units.js';

export function storyOf(entry) {
  const who = entry.who ? `${entry.who}, ` : '', at = when(Date.parse(entry.time)), kilograms = entry.massKg ?? (entry.unit === 'kg' || !entry.unit ? entry.mass : null);
  const amount = kilograms !== null && kilograms !== undefined ? both('mass', kilograms, kilograms < 10 ? 1 : 0) : entry.mass !== undefined ? `${entry.mass} ${entry.unit ?? ''}` : '';
  const what = {
    gather: `${(entry.count ?? 1) > 1 ? `${entry.count} ` : ''}${entry.size ?? ''} gather${(entry.count ?? 1) > 1 ? 's' : ''} ${entry.size ? '' : amount}`,
    tally: `tally of gathers: ${Object.entries(entry.gathers ?? entry.sizes ?? {}).map(([size, n]) => `${n} ${size}`).join(', ')}`,
    charge: `charge of ${amount} ${entry.material ?? ''}`, dip: `dip: ${entry.glassDepth ?? entry.rimToGlass ?? ''} ${entry.unit ?? 'cm'} ${entry.rimToGlass !== undefined ? 'from rim to glass' : 'of glass'}`,
    'ladle-out': `ladled out ${amount}`, 'returned-glass': `put back ${amount}`, mode: `mode set to ${entry.mode}`, note: `note: ${entry.text ?? ''}`,
    correction: 'correction of an earlier entry', 'meter-reading': `meter read: ${entry.reading} ${entry.unit ?? ''}`,
  }[entry.entry] ?? entry.entry;
  return `${who}${at}: ${what.replace(/\s+/g, ' ').trim()}`;
}

export function tellStory(place, entry) {
  place.replaceChildren(html('p', {}, storyOf(entry)), html('a', { class: 'button', href: `/pot?entry=${encodeURIComponent(entry.id)}#log` }, 'Correct it'),
    html('button', { type: 'button', onclick: () => { place.hidden = true; } }, 'Close'));
  place.hidden = false;
  place.querySelector('a').focus();
}
