// Every number with its unit, in both systems. The studio's choice decides which comes first.
let customaryFirst = false;
export const setUnits = units => { customaryFirst = units === 'us'; };
export const isCustomaryFirst = () => customaryFirst;

const fixed = (v, digits) => v.toFixed(digits).replace('-', '−');
const UNITS = {
  temperature: [['°C', v => v, 0], ['°F', v => v * 9 / 5 + 32, 0]],
  'temperature-difference': [['°C', v => v, 0], ['°F', v => v * 9 / 5, 0]],
  setpoint: [['°C', v => v, 0], ['°F', v => v * 9 / 5 + 32, 0]],
  'gas-flow': [['m³/h', v => v, 1], ['ft³/h', v => v * 35.3147, 0]],
  'gas-volume': [['m³', v => v, 1], ['ft³', v => v * 35.3147, 0]],
  mass: [['kg', v => v, 0], ['lb', v => v / 0.45359237, 0]],
  length: [['cm', v => v, 0], ['in', v => v / 2.54, 1]],
  power: [['kW', v => v, 1]], energy: [['kWh', v => v, 0]], pressure: [['mbar', v => v / 100, 1], ['in w.c.', v => v / 249.089, 1]],
  oxygen: [['% O₂', v => v, 1]], 'carbon-monoxide': [['ppm', v => v, 0]], 'combustible-gas': [['% LEL', v => v, 0]],
};
// States are said in words; what a 1 and a 0 mean depends on what is watched.
const STATES = {
  flame: ['no flame', 'flame'], valve: ['shut', 'open'], 'call-for-heat': ['no heat called for', 'heat called for'], 'lock-out': ['not locked out', 'locked out'],
  'blower-proven': ['blower not proven', 'blower proven'], 'high-limit': ['below the high limit', 'high limit tripped'],
  'gas-pressure-ok': ['gas pressure lost', 'gas pressure there'], mains: ['mains lost', 'mains there'], door: ['shut', 'open'], relay: ['off', 'on'],
};

/** {number, unit, other, text}: the number and unit shown first, the other system's beside it, and both as one text. */
export function figure(quantity, value, digits) {
  if (value === null || value === undefined || Number.isNaN(value)) return { number: '–', unit: '', other: '', text: 'not known' };
  if (STATES[quantity]) { const word = STATES[quantity][value >= .5 ? 1 : 0]; return { number: word, unit: '', other: '', text: word }; }
  const known = UNITS[quantity];
  if (!known) return { number: fixed(value, 1), unit: '', other: '', text: fixed(value, 1) };
  const written = known.map(([unit, of, usual]) => [fixed(of(value), digits ?? usual), unit]);
  if (customaryFirst && written.length > 1) written.reverse();
  const [[number, unit], second] = written, other = second ? second.join(' ') : '';
  return { number, unit, other, text: `${number} ${unit}${other ? `, ${other}` : ''}` };
}

export const both = (quantity, value, digits) => figure(quantity, value, digits).text;

export function money(amount, currency, digits) {
  if (amount === null || amount === undefined) return '–';
  try { return new Intl.NumberFormat('en-GB', { style: 'currency', currency, minimumFractionDigits: digits ?? 0, maximumFractionDigits: digits ?? 0 }).format(amount); }
  catch { return `${amount.toFixed(digits ?? 0)} ${currency}`; }
}

const MODES = {
  off: 'off', 'heat-up': 'heating up', holding: 'holding', charging: 'charging', working: 'working', 'cool-down': 'cooling down', 'out-of-service': 'out of service',
};
export const modeWords = mode => MODES[mode] ?? mode ?? 'mode not known';
const QUALITY = { stale: 'old', missing: 'no reading', stuck: 'does not move', implausible: 'not believable', late: 'came late', 'open-circuit': 'couple open', 'no-terminals': 'cold end not known', good: 'good' };
export const qualityWords = quality => QUALITY[quality] ?? quality;
const NAMES = {
  temperature: 'temperature', setpoint: 'set point', 'gas-flow': 'gas', 'gas-volume': 'gas meter', power: 'power', energy: 'energy meter', pressure: 'pressure', oxygen: 'oxygen in the flue',
  mass: 'mass', 'carbon-monoxide': 'carbon monoxide', 'combustible-gas': 'combustible gas', flame: 'flame', valve: 'gas valve', 'call-for-heat': 'call for heat', 'lock-out': 'burner lock-out',
  'blower-proven': 'blower', 'high-limit': 'high limit', 'gas-pressure-ok': 'gas pressure', mains: 'mains', door: 'door', relay: 'relay',
};
export const quantityWords = quantity => NAMES[quantity] ?? quantity;
