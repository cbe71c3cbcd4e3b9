// Typing a reading with a thumb: the number pad, the last reading beside it, and what the new one means before it is sent.
import { now, stamp, when } from './clock.js';
import { log, waiting } from './entry-queue.js';
import { html } from './svg.js';
import { UNITS, meaning, plain, unitWords } from './meter-words.js';

const recall = (meter, usual) => localStorage.getItem(`hotshop.unit.${meter.id}`) ?? usual;

/** Readings of a meter that still wait on this device. */
export const unsentOf = meter => waiting().filter(w => w.entry.entry === 'meter-reading' && w.entry.appliance === meter.appliance && (w.entry.channel ?? meter.channel) === meter.channel);

export function entryForm(meter, done) {
  const last = meter.readings[0], key = meter.id.replace(/\W/g, '-');
  const number = html('input', { id: `n-${key}`, type: 'text', inputmode: 'decimal', autocomplete: 'off', required: true, 'aria-describedby': `m-${key}` });
  const unit = html('select', { id: `u-${key}` }, UNITS[meter.energy].map(([code, words]) => html('option', { value: code }, words)));
  unit.value = recall(meter, last?.unit ?? UNITS[meter.energy][0][0]);
  if (!unit.value) unit.selectedIndex = 0;
  const exchange = html('input', { id: `x-${key}`, type: 'checkbox' }), start = html('input', { id: `s-${key}`, type: 'text', inputmode: 'decimal', value: '0' });
  const startBox = html('div', { class: 'wide', hidden: true }, html('label', { for: start.id }, 'The new meter began at'), start);
  const says = html('p', { id: `m-${key}`, class: 'wide more', role: 'status' }), send = html('button', { type: 'submit', class: 'wide' }, 'Log the reading');
  const form = html('form', { class: 'entry' },
    html('div', {}, html('label', { for: number.id }, last ? `It says now (last ${plain(last.reading, 3)} ${unitWords(meter, last.unit)}, ${when(Date.parse(last.time))})` : 'It says now'), number),
    html('div', {}, html('label', { for: unit.id }, 'Unit'), unit), says,
    html('label', { class: 'wide check', for: exchange.id }, exchange, html('span', {}, 'The meter was exchanged: this is the old one’s last reading')), startBox, send);

  const read = field => { const text = field.value.trim().replace(/\s/g, '').replace(',', '.'); return /^\d+(\.\d+)?$/.test(text) ? Number(text) : null; };
  const show = () => {
    startBox.hidden = !exchange.checked;
    const value = read(number), known = value === null ? null : meaning(meter, value, unit.value, now(), exchange.checked);
    says.textContent = known?.words ?? (number.value ? 'Write the digits, with a point or a comma.' : '');
    says.classList.toggle('doubt', Boolean(known?.doubt));
    send.textContent = known?.doubt && !known.backwards ? 'It is right: log it' : 'Log the reading';
    return known;
  };
  for (const field of [number, unit, exchange, start]) field.addEventListener('input', show);
  form.addEventListener('submit', event => {
    event.preventDefault();
    const known = show(), value = read(number);
    if (value === null || known?.backwards || exchange.checked && read(start) === null) return number.focus();
    localStorage.setItem(`hotshop.unit.${meter.id}`, unit.value);
    const kept = log({ appliance: meter.appliance, entry: 'meter-reading', channel: meter.channel, reading: value, unit: unit.value, time: stamp(),
      ...(exchange.checked ? { exchange: true, newMeterReading: read(start) } : {}) });
    says.textContent = kept ? '' : 'This device has no room left to keep the reading: write it down.';
    if (!kept) return;
    number.value = '';
    exchange.checked = false;
    show();
    done();
  });
  return form;
}
