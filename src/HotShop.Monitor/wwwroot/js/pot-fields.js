// Parts that the sheets share: a likely answer as a button, a number typed in with its unit, one of a few, and a counter.
import { html } from './svg.js';
import { isCustomaryFirst } from './units.js';

const KEEP = 'hotshop.unit-of-';
/** What people type, and what one of it is in the unit in front. Pound and inch are exact. */
const UNITS = { mass: [['kg', 'kg'], ['lb', '[lb_av]']], length: [['cm', 'cm'], ['in', '[in_i]']] };
let fields = 0;

export const offer = (words, small, act) => html('button', { type: 'button', onclick: act }, html('span', {}, words, small ? html('small', {}, small) : null));

/** The unit last typed with on this device; the studio's own before that: [shown, UCUM]. */
export function unitOf(dimension) {
  const known = UNITS[dimension], kept = localStorage.getItem(KEEP + dimension);
  return known.find(([shown]) => shown === kept) ?? known[isCustomaryFirst() ? 1 : 0];
}

/** A number with a unit that can be changed: calls done(number, ucum, shown). */
export function typed(label, dimension, done) {
  const id = `typed-${++fields}`, input = html('input', { type: 'number', inputmode: 'decimal', step: 'any', min: dimension === 'length' ? 0 : .01, max: 5000, required: true, id });
  const unit = html('button', { type: 'button', class: 'unit' }), name = html('label', { for: id });
  const show = () => { const [shown] = unitOf(dimension); unit.textContent = shown; unit.setAttribute('aria-label', `Unit: ${shown}; change it`); name.textContent = `${label}, ${shown}`; };
  unit.addEventListener('click', () => { const [shown] = unitOf(dimension), next = UNITS[dimension].find(([s]) => s !== shown); localStorage.setItem(KEEP + dimension, next[0]); show(); });
  show();
  const form = html('form', { class: 'typed with-unit' }, name, input, unit, html('button', { type: 'submit' }, 'Log it'));
  form.addEventListener('submit', event => { event.preventDefault(); const [shown, ucum] = unitOf(dimension); done(Number(input.value), ucum, shown); });
  return form;
}

/** One of a few, as wide touchable radio buttons. */
export function choice(name, options, chosen, onPick) {
  return html('fieldset', { class: 'choice' }, html('legend', { class: 'unseen' }, name), options.map(([value, words]) => {
    const input = html('input', { type: 'radio', name, value, id: `${name}-${value}`, checked: value === chosen });
    input.addEventListener('change', () => onPick(value));
    return html('label', { for: input.id }, input, html('span', {}, words));
  }));
}

/** A count between two thumbs: {node, get value, set value}. */
export function counter(words, start, onChange = () => {}, least = 0) {
  let value = start;
  const shown = html('output', { 'aria-live': 'polite', 'aria-label': words }), change = by => { value = Math.min(1000, Math.max(least, value + by)); show(); onChange(value); };
  const show = () => { shown.textContent = String(value); };
  show();
  const node = html('div', { class: 'counter' }, html('span', { class: 'counted' }, words), html('button', { type: 'button', 'aria-label': `One ${words} less`, onclick: () => change(-1) }, '−'), shown,
    html('button', { type: 'button', 'aria-label': `One ${words} more`, onclick: () => change(1) }, '+'), html('button', { type: 'button', 'aria-label': `Five ${words} more`, onclick: () => change(5) }, '+5'));
  return { node, get value() { return value; }, set value(v) { value = v; show(); onChange(v); } };
}
