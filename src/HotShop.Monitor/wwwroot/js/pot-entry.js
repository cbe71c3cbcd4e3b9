// One entry: who, what, when; to correct it or to strike it out, with a reason. The entry itself stays in the book.
import { now, when } from './clock.js';
import { choice, counter } from './pot-fields.js';
import { html } from './svg.js';
import { correctionInWords, plainUnit as plain, storyOf } from './story.js';

const AMOUNTS = ['charge', 'ladle-out', 'returned-glass'];
const EARLIER = [[-15, '15 min earlier'], [-60, '1 h earlier'], [-24 * 60, 'a day earlier'], [15, '15 min later']];

/** [title, ...content] of the sheet. send(fields, words) logs the correction; without fields but a reason it strikes the entry out. */
export function entrySheet(entry, { sizes, people, send }) {
  const changes = {}, reason = html('input', { id: 'reason', maxlength: 200, autocomplete: 'off' }), at = html('p', {});
  let atMs = Date.parse(entry.time);
  const showTime = () => { at.textContent = `It was at ${when(atMs)}`; };
  showTime();
  const shift = minutes => { const next = atMs + minutes * 60e3; if (next > now()) return; atMs = next; changes.at = new Date(atMs).toISOString(); showTime(); };
  const parts = fieldsOf(entry, { sizes, set: (key, value) => { changes[key] = value; } });
  const text = () => reason.value.trim() ? { text: reason.value.trim() } : {};
  return ['Correct', html('p', {}, storyOf(entry)), ...(entry.corrections ?? []).map(c => html('p', { class: 'note' }, correctionInWords(c))),
    ...parts, at, html('div', { class: 'days' }, EARLIER.map(([minutes, words]) => html('button', { type: 'button', class: 'chip', onclick: () => shift(minutes) }, words))),
    ...(people.length ? [html('h3', {}, 'Whose was it'), whose(people, entry.who, who => { changes.by = who; })] : []),
    html('div', { class: 'typed wide' }, html('label', { for: 'reason' }, 'Why (may stay empty)'), reason),
    html('div', { class: 'pair' }, html('button', { type: 'button', id: 'correct', class: 'main', onclick: () => Object.keys(changes).length && send({ ...changes, ...text() }, 'Corrected') }, 'Correct it'),
      html('button', { type: 'button', id: 'strike', onclick: () => send(text(), 'Struck out') }, 'Strike it out'))];
}

function whose(people, who, onPick) {
  const chips = people.map(name => html('button', { type: 'button', class: 'chip', 'aria-pressed': String(name === who), onclick: event => {
    for (const chip of chips) chip.setAttribute('aria-pressed', String(chip === event.currentTarget));
    onPick(name);
  } }, name));
  return html('div', { class: 'days' }, chips);
}

function fieldsOf(entry, { sizes, set }) {
  if (entry.entry === 'gather') {
    const count = counter('gathers', entry.count ?? 1, n => set('count', n), 1).node;
    return entry.size ? [choice('size', sizes.map(s => [s, s]), entry.size, s => set('size', s)), count] : [number('Mass of one, kg', entry.massKg, n => set('massKg', n)), count];
  }
  if (entry.entry === 'tally') {
    const gathers = { ...entry.gathers };
    return Object.entries(gathers).map(([size, n]) => counter(size, n, value => { gathers[size] = value; set('gathers', { ...gathers }); }).node);
  }
  if (entry.entry === 'dip') { const key = entry.rimToGlass !== undefined ? 'rimToGlass' : 'glassDepth'; return [number(`${key === 'glassDepth' ? 'Glass on the rod' : 'Rim to glass'}, ${plain(entry.unit)}`, entry[key], n => set(key, n))]; }
  if (entry.entry === 'note') return [words('Note', entry.text, t => set('note', t))];
  if (AMOUNTS.includes(entry.entry)) { const key = entry.massKg !== undefined ? 'massKg' : 'mass'; return [number(`Mass, ${key === 'massKg' ? 'kg' : plain(entry.unit)}`, entry[key], n => set(key, n))]; }
  return [];
}

function field(label, attributes, value, onValue) {
  const id = `field-${label.replace(/\W/g, '')}`, input = html(attributes.rows ? 'textarea' : 'input', { id, ...attributes });
  input.value = value ?? '';
  input.addEventListener('change', () => { if (input.checkValidity()) onValue(input.value); });
  return html('div', { class: 'typed wide' }, html('label', { for: id }, label), input);
}

const number = (label, value, onValue) => field(label, { type: 'number', inputmode: 'decimal', step: 'any', min: 0, max: 5000, required: true }, value, text => onValue(Number(text)));
const words = (label, value, onValue) => field(label, { rows: 3, required: true }, value, onValue);
