// The form of a card: everything a channel needs, filled in with what is most likely.
import { shop } from './shop.js';
import { html, freshId } from './svg.js';
import { quantityWords } from './units.js';

const option = (value, words, chosen) => html('option', { value, selected: value === chosen }, words);
const WRITTEN = { Cel: '°C', '[degF]': '°F', K: 'K', 'm3/h': 'm³/h', '[cft_i]/h': 'ft³/h', '[cft_i]/min': 'ft³/min', m3: 'm³', '[cft_i]': 'ft³', '{pulse}': 'pulses', 'kW.h': 'kWh', 'W.h': 'Wh', 'MW.h': 'MWh', '[ppm]': 'ppm', '[psi]': 'psi', mV: 'mV of a bare couple' };

/** @param send gets the channel as the service takes it. */
export function channelForm(topic, guess, units, send) {
  const values = topic.candidates.filter(c => !c.isTime), times = topic.candidates.filter(c => c.isTime && c.valuePointer !== null), first = guess ?? values[0];
  const place = select(values.map((c, i) => option(String(i), c.valuePointer === null ? `${c.text}, the message itself` : `${c.text} at ${c.valuePointer || 'its root'}`, String(values.indexOf(first)))));
  const appliance = select([option('', 'choose one', first.appliance ?? ''), ...shop.appliances.map(a => option(a.appliance, a.name, first.appliance))]);
  const quantity = select([option('', 'choose one', first.quantity ?? ''), ...Object.keys(units).map(q => option(q, quantityWords(q), first.quantity))]);
  const unit = select([]), pulse = input('number', { step: 'any', min: '0' }), nameplate = input('number', { step: 'any', min: '0' });
  const name = input('text', { value: first.channel ?? '', pattern: '[a-z0-9][a-z0-9\\-]{0,63}', required: true, autocapitalize: 'off', spellcheck: 'false' });
  const at = select([option('', 'when it arrives'), ...times.map(t => option(t.valuePointer, `${t.text} at ${t.valuePointer}`, topic.timePointer))]);
  const every = input('number', { value: topic.intervalSeconds ?? 10, step: 'any', min: '0.1', max: '86400', required: true });
  const reports = select([option('periodic', 'at steady intervals', topic.reportsOnChange ? 'on-change' : 'periodic'), option('on-change', 'only when something changes', topic.reportsOnChange ? 'on-change' : 'periodic')]);
  appliance.required = quantity.required = true;
  const fields = {
    place: field('Which value?', place), appliance: field('Of which appliance?', appliance), quantity: field('What does it measure?', quantity), unit: field('In which unit does it come?', unit),
    pulse: field('Cubic metres for each pulse', pulse), nameplate: field('Power in kW while it is on, from the nameplate (may be left out)', nameplate),
    name: field('Name: lower-case letters, digits and hyphens', name), at: field('When was it measured?', at), reports: field('It speaks', reports), every: field('Seconds between readings', every),
  };

  function fit(wanted) {
    const known = units[quantity.value] ?? [], candidate = values[Number(place.value)];
    unit.replaceChildren(...known.map(u => option(u, WRITTEN[u] ?? u, wanted ?? candidate?.unit ?? known[0])));
    fields.unit.hidden = known.length === 0;
    fields.pulse.hidden = unit.value !== '{pulse}';
    fields.nameplate.hidden = !['relay', 'valve'].includes(quantity.value);
    fields.at.hidden = times.length === 0 || candidate?.valuePointer === null;
    fields.place.hidden = values.length < 2;
  }
  place.addEventListener('change', () => {
    const c = values[Number(place.value)];
    if (c.quantity) quantity.value = c.quantity;
    if (c.appliance) appliance.value = c.appliance;
    if (c.channel) name.value = c.channel;
    fit(c.unit);
  });
  quantity.addEventListener('change', () => fit());
  unit.addEventListener('change', () => fit(unit.value));
  fit(first.unit);

  const number = (from, key) => !fields[from].hidden && fields[from].querySelector('input').value ? { [key]: Number(fields[from].querySelector('input').value) } : {};
  return html('form', { class: 'wiring', onsubmit: event => {
    event.preventDefault();
    const candidate = values[Number(place.value)];
    send({
      appliance: appliance.value,
      channel: {
        id: name.value, quantity: quantity.value, topic: topic.topic, valuePointer: candidate.valuePointer, reports: reports.value, intervalSeconds: Number(every.value),
        ...(unit.value && !fields.unit.hidden ? { unit: unit.value } : {}), ...(at.value && !fields.at.hidden ? { timePointer: at.value } : {}),
        ...number('pulse', 'cubicMetresPerPulse'), ...number('nameplate', 'nameplateKilowatts'),
      },
    });
  } }, ...Object.values(fields), html('button', {}, 'Add this channel'));
}

const select = options => html('select', {}, ...options);
const input = (type, attributes) => html('input', { type, ...attributes });

function field(words, control) {
  const id = freshId();
  control.id = id;
  return html('div', {}, html('label', { for: id }, words), control);
}
