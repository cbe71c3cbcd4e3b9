// The second tap. Each sheet offers the likely answers as buttons; a field takes the others.
import { addToBench, bench, leaveBench, pressChip } from './pot-bench.js';
import { whoLogs } from './entry-queue.js';
import { choice, offer, typed, unitOf } from './pot-fields.js';
import { html } from './svg.js';

const MATERIALS = ['cullet', 'batch', 'frit'], PER_CM = 2.54, KG_PER_LB = .45359237;
const keep = (key, value) => localStorage.setItem(`hotshop.${key}`, value), kept = (key, usual) => localStorage.getItem(`hotshop.${key}`) ?? usual;
const tidy = n => Math.round(n * 100) / 100;

/** Shows [title, ...content] in the dialog. */
export function openSheet(sheet, [title, ...content]) {
  sheet.replaceChildren(html('div', { class: 'sheet-head' }, html('h2', { id: 'sheet-title' }, title), html('button', { type: 'button', onclick: () => sheet.close() }, 'Back')), ...content);
  if (!sheet.open) sheet.showModal();
  sheet.scrollTop = 0;
}

export function chargeSheet(pot, done) {
  let material = kept('material', 'cullet');
  const [shown, ucum] = unitOf('mass'), usual = Number(kept(`charge-${shown}`, '0')), most = (pot?.capacityKg ?? 500) / (shown === 'lb' ? KG_PER_LB : 1), yields = pot?.glassYields ?? {};
  const amounts = [...new Set([usual, ...(shown === 'lb' ? [10, 20, 30, 40, 50, 60, 80, 100] : [5, 10, 15, 20, 25, 30, 40, 50])])].filter(n => n > 0 && n <= most).slice(0, 9);
  const note = html('p', { class: 'note', role: 'status' }), share = html('input', { type: 'number', inputmode: 'decimal', id: 'yield', min: 50, max: 100, step: 'any' });
  const usualYield = () => Number(kept(`yield-${material}`, String(100 * (yields[material] ?? 1))));
  const tell = () => { share.value = tidy(usualYield()); note.textContent = `${share.value} % of ${material} stays as glass.`; };
  share.addEventListener('change', () => { if (share.checkValidity() && share.value) { keep(`yield-${material}`, share.value); tell(); } });
  const take = (mass, unit, words) => {
    keep('material', material);
    if (words === shown) keep(`charge-${shown}`, String(mass));
    const own = tidy(usualYield()) / 100;
    // Only a yield that differs from what the service takes anyway is worth an own field.
    done({ entry: 'charge', material, mass, unit, ...(Math.abs(own - (yields[material] ?? 1)) > .001 ? { yield: own } : {}) }, `Charge of ${mass} ${words}, ${material}`);
  };
  tell();
  return ['Charge', choice('material', MATERIALS.map(m => [m, m]), material, m => { material = m; tell(); }),
    html('div', { class: 'offers' }, amounts.map(n => offer(`${n} ${shown}`, `${shown === 'kg' ? `${Math.round(n / KG_PER_LB)} lb` : `${Math.round(n * KG_PER_LB)} kg`}${n === usual ? ' · as last time' : ''}`, () => take(n, ucum, shown)))),
    typed('Another mass', 'mass', take), html('details', { class: 'behind' }, html('summary', {}, 'What stays as glass'), html('div', { class: 'typed wide' }, html('label', { for: 'yield' }, 'Glass from what is charged, %; the bag may state it'), share)), note];
}

export function dipSheet(pot, done) {
  let how = kept('dip', 'glassDepth');
  const list = html('div', { class: 'offers' }), words = () => how === 'glassDepth' ? 'of glass' : 'from rim to glass';
  const take = (n, ucum, shown) => { keep('dip', how); done({ entry: 'dip', [how]: n, unit: ucum }, `Dip: ${n} ${shown} ${words()}`); };
  const fill = () => {
    const [shown, ucum] = unitOf('length'), step = shown === 'in' ? .5 : 1, cm = how === 'glassDepth' ? pot?.levelCm ?? 20 : pot?.freeboardCm ?? 15;
    const guess = Math.round((shown === 'in' ? cm / PER_CM : cm) / step) * step, first = Math.max(0, guess - 4 * step);
    list.replaceChildren(...Array.from({ length: 9 }, (_, i) => first + i * step).map(n => offer(`${n} ${shown}`, `${shown === 'cm' ? `${(n / PER_CM).toFixed(1)} in` : `${(n * PER_CM).toFixed(1)} cm`}${n === guess ? ' · as estimated' : ''}`, () => take(n, ucum, shown))));
  };
  fill();
  const field = typed('Another depth', 'length', take);
  field.querySelector('.unit').addEventListener('click', fill);
  return ['Dip', choice('measured', [['glassDepth', 'glass on the rod'], ['rimToGlass', 'rim to glass']], how, h => { how = h; fill(); }), list, field];
}

export function moreSheet({ pot, done, changed }) {
  const note = html('textarea', { id: 'note', rows: 3, required: true }), noteForm = html('form', { class: 'typed wide' }, html('label', { for: 'note' }, 'Note'), note, html('button', { type: 'submit' }, 'Log the note'));
  noteForm.addEventListener('submit', event => { event.preventDefault(); done({ entry: 'note', text: note.value.trim() }, 'Note'); });
  const mass = (label, entry, words) => typed(label, 'mass', (n, unit, shown) => done({ entry, mass: n, unit }, `${words} ${n} ${shown}`));
  return ['More', mass('Ladled out', 'ladle-out', 'Ladled out'), mass('Glass put back', 'returned-glass', 'Put back'), noteForm, whoPart(pot, changed), newPot(done)];
}

function whoPart(pot, changed) {
  const list = html('div', { class: 'days' }), input = html('input', { id: 'who', autocomplete: 'name', maxlength: 60 });
  const show = () => {
    list.replaceChildren(...bench(pot?.people).map(name => html('button', { type: 'button', class: 'chip', 'aria-pressed': String(name === whoLogs()), onclick: () => { pressChip(name); show(); } }, name)),
      whoLogs() ? html('button', { type: 'button', class: 'chip plain', onclick: () => { leaveBench(whoLogs()); show(); } }, `Take ${whoLogs()} off`) : '');
    changed();
  };
  const form = html('form', { class: 'typed' }, html('label', { for: 'who' }, 'Somebody else at the bench'), input, html('button', { type: 'submit' }, 'Add'));
  form.addEventListener('submit', event => { event.preventDefault(); addToBench(input.value); input.value = ''; show(); });
  show();
  return html('section', {}, html('h3', {}, 'Who logs on this device'), list, form);
}

/** Two taps apart, as it empties the pot. */
function newPot(done) {
  const sure = html('button', { type: 'button', hidden: true, onclick: () => done({ entry: 'pot-changed' }, 'New pot, empty') }, 'Yes: an empty pot stands in the furnace');
  return html('section', {}, html('h3', {}, 'A new pot'), html('p', { class: 'note' }, 'The count begins at nothing; log its first charges after this. Where its size differs, change it in hotshop.json as well.'),
    html('button', { type: 'button', onclick: () => { sure.hidden = false; sure.focus(); } }, 'A new pot is in'), sure);
}
