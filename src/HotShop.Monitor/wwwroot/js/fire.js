// What the flue of an appliance tells of its fire, as the service words it. Only asked for where an analyser sits in the flue.
import { get } from './api.js';
import { html } from './svg.js';

/** An empty place that fills once the service has answered; nothing for appliances without an analyser. */
export function firePlace(appliance) {
  if (!appliance.channels.some(c => c.quantity === 'oxygen') || !['furnace', 'glory-hole'].includes(appliance.kind)) return '';
  const words = html('p', { role: 'status' }, 'Asking …'), note = html('p', { class: 'note' });
  get(`/api/combustion?appliance=${encodeURIComponent(appliance.appliance)}`).then(
    answer => { words.textContent = answer.appliances[0].words; note.textContent = answer.caution; },
    refused => { words.textContent = refused.message; });
  return html('section', { 'aria-label': 'Its fire' }, html('h3', {}, 'Its fire'), words, note);
}
