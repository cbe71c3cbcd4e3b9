// A mark on the strip tells its story: who, what, when, and where to correct it.
import { when } from './clock.js';
import { html } from './svg.js';
import { both } from './units.js';

const KILOGRAMS = { kg: 1, '[lb_av]': .45359237, lb: .45359237 }, PLAIN = { '[lb_av]': 'lb', '[in_i]': 'in' };
/** A unit as people write it. */
export const plainUnit = unit => PLAIN[unit] ?? unit ?? '';

export function storyOf(entry) {
  const who = entry.who ? `${entry.who}, ` : '', at = when(Date.parse(entry.time)), perUnit = KILOGRAMS[entry.unit ?? 'kg'];
  const kilograms = entry.massKg ?? (perUnit && entry.mass !== undefined ? entry.mass * perUnit : null);
  const amount = kilograms !== null && kilograms !== undefined ? both('mass', kilograms, kilograms < 10 ? 1 : 0) : entry.mass !== undefined ? `${entry.mass} ${plainUnit(entry.unit)}` : '';
  const what = {
    gather: `${(entry.count ?? 1) > 1 ? `${entry.count} ` : ''}${entry.size ?? ''} gather${(entry.count ?? 1) > 1 ? 's' : ''} ${entry.size ? '' : amount}`,
    tally: `tally of gathers: ${counted(entry.gathers)}`,
    charge: `charge of ${amount} ${entry.material ?? ''}${entry.yield ? `, ${Math.round(entry.yield * 100)} % glass` : ''}`,
    dip: `dip: ${entry.glassDepth ?? entry.rimToGlass ?? ''} ${plainUnit(entry.unit ?? 'cm')} ${entry.rimToGlass !== undefined ? 'from rim to glass' : 'of glass'}`,
    'ladle-out': `ladled out ${amount}`, 'returned-glass': `put back ${amount}`, mode: `mode set to ${entry.mode}`, note: `note: ${entry.text ?? ''}`, 'pot-changed': 'a new pot, empty',
    correction: 'correction of an earlier entry', 'meter-reading': `meter read: ${entry.reading} ${plainUnit(entry.unit)}`,
  }[entry.entry] ?? entry.entry;
  return `${who}${at}: ${what.replace(/\s+/g, ' ').trim()}`;
}

const counted = gathers => Object.entries(gathers ?? {}).filter(([, n]) => n > 0).map(([size, n]) => `${n} ${size}`).join(', ') || 'none';

/** "Ada, 14:05: count now 3; miscounted". */
export function correctionInWords(c) {
  const changes = Object.entries(c).filter(([key]) => !['id', 'appliance', 'entry', 'time', 'who', 'of', 'text', 'corrections'].includes(key));
  const said = changes.map(([key, v]) => key === 'at' ? `time now ${when(Date.parse(v))}` : key === 'by' ? `by ${v}` : key === 'gathers' ? `now ${counted(v)}` : `${key} now ${v ?? 'taken away'}`);
  return `${c.who ? `${c.who}, ` : ''}${when(Date.parse(c.time))}: ${said.join(', ') || 'struck out'}${c.text ? `; ${c.text}` : ''}`;
}

export function tellStory(place, entry) {
  place.replaceChildren(html('p', {}, storyOf(entry)), html('a', { class: 'button', href: `/pot?entry=${encodeURIComponent(entry.id)}#log` }, 'Correct it'),
    html('button', { type: 'button', onclick: () => { place.hidden = true; } }, 'Close'));
  place.hidden = false;
  place.querySelector('a').focus();
}
