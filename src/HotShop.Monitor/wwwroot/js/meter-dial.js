// Clocking a dial. The moments of the presses are taken here; what they mean, the service works out and keeps nothing of it.
import { CutOff, get } from './api.js';
import { shop } from './shop.js';
import { html } from './svg.js';
import { figure } from './units.js';

const SIZES = [['0.01', 'm3', '0.01 m³'], ['0.1', 'm3', '0.1 m³'], ['1', 'm3', '1 m³'], ['0.5', '[cft_i]', '½ ft³'], ['1', '[cft_i]', '1 ft³'], ['2', '[cft_i]', '2 ft³'], ['5', '[cft_i]', '5 ft³']];
const id = name => document.getElementById(name);
let presses = [], shown = [], asked = 0;

export function startDial() {
  const size = id('dial-size'), sensor = id('dial-shown');
  size.append(...SIZES.map(([, , words], i) => html('option', { value: String(i) }, words)));
  size.value = localStorage.getItem('hotshop.dial') ?? (shop.studio?.units === 'us' ? '3' : '0');
  sensor.append(html('option', { value: '' }, 'none'), ...shop.appliances.flatMap(a => a.channels.filter(c => c.quantity === 'gas-flow').map(c => html('option', { value: c.id }, `${a.name}, ${c.channel}`))));
  size.addEventListener('change', () => { localStorage.setItem('hotshop.dial', size.value); show(); });
  id('dial-press').addEventListener('click', event => press(event.timeStamp));
  id('dial-again').addEventListener('click', () => { presses = []; shown = []; id('dial-again').disabled = true; say(html('p', { class: 'more' }, 'Press when the hand passes the top.')); });
}

function press(at) {
  presses.push(at / 1000);
  const channel = shop.appliances.flatMap(a => a.channels).find(c => c.id === id('dial-shown').value);
  if (channel?.value > 0) shown.push(channel.value);
  id('dial-again').disabled = false;
  if (presses.length === 1) say(html('p', { class: 'big' }, 'Running …'), html('p', { class: 'more' }, 'Press again each time it passes the top; miss none.'));
  else show();
}

const say = (...parts) => id('dial-result').replaceChildren(...parts);

async function show() {
  if (presses.length < 2) return;
  const [dial, unit] = SIZES[Number(id('dial-size').value)], mine = ++asked;
  const query = new URLSearchParams({ dial, unit, presses: presses.map(p => (p - presses[0]).toFixed(3)).join(',') });
  if (shown.length) query.set('shown', String(shown.reduce((sum, v) => sum + v, 0) / shown.length));
  try {
    const answer = await get(`/api/meters/dial?${query}`);
    if (mine !== asked) return;
    const flow = figure('gas-flow', answer.flowM3PerHour, 2);
    say(html('p', { class: 'big' }, `${answer.powerKw.toFixed(1)} kW, ${flow.number} ${flow.unit}`), html('p', {}, `${answer.powerKwLow95.toFixed(1)} to ${answer.powerKwHigh95.toFixed(1)} kW with the meter’s and the gas’s own errors (95 %)${flow.other ? `; ${flow.other}` : ''}.`),
      answer.meterFactor ? html('p', {}, `The sensor must be multiplied by ${answer.meterFactor.toFixed(3)} (${answer.meterFactorLow95.toFixed(3)} to ${answer.meterFactorHigh95.toFixed(3)}) to agree with the meter.`) : '', html('p', { class: 'more' }, answer.words));
  } catch (problem) {
    if (mine === asked) say(html('p', {}, problem instanceof CutOff ? 'No connection: go on pressing, it is worked out when the service is back.' : problem.message));
  }
}
