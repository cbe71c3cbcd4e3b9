// The second tap. Each sheet offers the likely answers as buttons; a field takes the others.
import { html } from './svg.js';
import { figure } from './units.js';
import { nameWhoLogs, whoLogs } from './entry-queue.js';

const MATERIALS = ['cullet', 'batch', 'frit'], COUNTS = [2, 3, 4, 5, 6, 8, 10, 12];
const remember = (key, value) => localStorage.setItem(`hotshop.${key}`, value), recall = (key, usual) => localStorage.getItem(`hotshop.${key}`) ?? usual;

/** sheet: the dialog; take(entry, words): logs it. */
export function openSheet(sheet, kind, { pot, sizes, take }) {
  const done = (entry, words) => { sheet.close(); take(entry, words); };
  const [title, ...content] = { charge: () => chargeSheet(pot, done), dip: () => dipSheet(pot, done), tally: () => tallySheet(sizes, done), more: () => moreSheet(done) }[kind]();
  sheet.replaceChildren(html('div', { class: 'sheet-head' }, html('h2', { id: 'sheet-title' }, title), html('button', { type: 'button', onclick: () => sheet.close() }, 'Back')), ...content);
  sheet.showModal();
}

const offer = (words, small, act) => html('button', { type: 'button', onclick: act }, html('span', {}, words, small ? html('small', {}, small) : null));

/** A number typed in by hand: {form}; calls done(number) when it is one within the range. */
function typed(label, unit, low, high, done) {
  const input = html('input', { type: 'number', inputmode: 'decimal', step: 'any', min: low, max: high, required: true, id: `typed-${label.replace(/\W/g, '')}` });
  const form = html('form', { class: 'typed' }, html('label', { for: input.id }, `${label}, ${unit}`), input, html('button', { type: 'submit' }, 'Log it'));
  form.addEventListener('submit', event => { event.preventDefault(); done(Number(input.value)); });
  return form;
}

/** One of a few, as wide touchable radio buttons. */
function choice(name, options, chosen, onPick) {
  return html('fieldset', { class: 'choice' }, html('legend', { class: 'unseen' }, name), options.map(([value, words]) => {
    const input = html('input', { type: 'radio', name, value, id: `${name}-${value}`, checked: value === chosen });
    input.addEventListener('change', () => onPick(value));
    return html('label', { for: input.id }, input, html('span', {}, words));
  }));
}

function chargeSheet(pot, done) {
  let material = recall('material', 'cullet');
  const usual = Number(recall('charge', '0')), amounts = [...new Set([usual, 5, 10, 15, 20, 25, 30, 40, 50])].filter(kg => kg > 0 && kg <= (pot?.capacityKg ?? 500)).slice(0, 9);
  const take = kg => {
    remember('material', material); remember('charge', String(kg));
    done({ entry: 'charge', material, mass: kg, unit: 'kg' }, `Charge of ${figure('mass', kg).text}, ${material}`);
  };
  return ['Charge', choice('material', MATERIALS.map(m => [m, m]), material, m => { material = m; }),
    html('div', { class: 'offers' }, amounts.map(kg => offer(`${kg} kg`, `${figure('mass', kg).text.split(', ')[1]}${kg === usual ? ' · as last time' : ''}`, () => take(kg)))), typed('Another mass', 'kg', .1, 2000, take)];
}

function dipSheet(pot, done) {
  let how = recall('dip', 'glassDepth');
  const list = html('div', { class: 'offers' });
  const take = cm => { remember('dip', how); done({ entry: 'dip', [how]: cm, unit: 'cm' }, `Dip: ${figure('length', cm).text} ${how === 'glassDepth' ? 'of glass' : 'from rim to glass'}`); };
  const fill = () => {
    const guess = Math.round(how === 'glassDepth' ? pot?.levelCm ?? 20 : pot?.freeboardCm ?? 15), first = Math.max(0, guess - 4);
    list.replaceChildren(...Array.from({ length: 9 }, (_, i) => first + i).map(cm => offer(`${cm} cm`, `${(cm / 2.54).toFixed(1)} in${cm === guess ? ' · as estimated' : ''}`, () => take(cm))));
  };
  fill();
  return ['Dip', choice('measured', [['glassDepth', 'glass on the rod'], ['rimToGlass', 'rim to glass']], how, h => { how = h; fill(); }), list, typed('Another depth', 'cm', 0, 200, take)];
}

function tallySheet(sizes, done) {
  const rows = sizes.map(size => html('div', { class: 'tally' }, html('h3', {}, size), html('div', { class: 'offers small' },
    COUNTS.map(n => html('button', { type: 'button', 'aria-label': `${n} ${size} gathers`, onclick: () => done({ entry: 'gather', size, count: n }, `${n} ${size} gathers`) }, String(n))))));
  return ['Tally: gathers made and not yet logged', ...rows];
}

function moreSheet(done) {
  const note = html('textarea', { id: 'note', rows: 3, required: true }), who = html('input', { id: 'who', value: whoLogs(), autocomplete: 'name' });
  const noteForm = html('form', { class: 'typed wide' }, html('label', { for: 'note' }, 'Note'), note, html('button', { type: 'submit' }, 'Log the note'));
  noteForm.addEventListener('submit', event => { event.preventDefault(); done({ entry: 'note', text: note.value.trim() }, 'Note'); });
  who.addEventListener('change', () => nameWhoLogs(who.value));
  return ['More', typed('Ladled out', 'kg', .1, 2000, kg => done({ entry: 'ladle-out', mass: kg, unit: 'kg' }, `Ladled out ${figure('mass', kg).text}`)),
    typed('Glass put back', 'kg', .1, 2000, kg => done({ entry: 'returned-glass', mass: kg, unit: 'kg' }, `Put back ${figure('mass', kg).text}`)), noteForm,
    html('div', { class: 'typed wide' }, html('label', { for: 'who' }, 'Who logs on this device'), who)];
}
