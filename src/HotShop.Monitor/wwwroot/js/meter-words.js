// What a reading means, in words, before it is sent. Pure: numbers in, sentences out.
export const UNITS = { gas: [['m3', 'm³', 1], ['[cft_i]', 'ft³', 0.028316846592], ['CCF', 'CCF', 2.8316846592]], electricity: [['kW.h', 'kWh', 1], ['MW.h', 'MWh', 1000]] };

const unitOf = (meter, code) => Object.values(UNITS).flat().find(([known]) => known === code) ?? UNITS[meter.energy][0];
export const unitWords = (meter, code) => unitOf(meter, code)[1];
export const perUnit = (meter, code) => unitOf(meter, code)[2];

export const plain = (value, digits = value >= 100 ? 0 : 1) => value.toLocaleString('en-GB', { maximumFractionDigits: digits, minimumFractionDigits: 0 });

/** "3 days", "5 hours": how long between two readings. */
export function between(milliseconds) {
  const hours = milliseconds / 3600e3;
  return hours < 36 ? `${Math.max(1, Math.round(hours))} h` : `${Math.round(hours / 24)} days`;
}

/**
 * {words, doubt}: what a typed number would mean after the last reading; doubt: it is asked about before it is sent, and may be sent all the same
 * unless the register would run backwards, which only an exchange or a full turn of the register explains.
 */
export function meaning(meter, number, unit, nowMs, isExchange) {
  const last = meter.readings[0];
  if (!last) return { words: 'The first reading: what passes is counted from here on.', doubt: false };
  const start = (last.newMeterReading ?? last.reading) * perUnit(meter, last.unit), typed = number * perUnit(meter, unit);
  const turn = meter.counterDigits ? 10 ** meter.counterDigits * perUnit(meter, unit) : null;
  const gain = typed >= start ? typed - start : turn && start >= .9 * turn && typed <= .1 * turn ? typed + turn - start : null;
  const canonical = meter.energy === 'gas' ? 'm³' : 'kWh', age = nowMs - Date.parse(last.time), usual = meter.usualPerDay === null ? null : meter.usualPerDay * age / 86400e3;
  if (gain === null) return isExchange
    ? { words: 'The old meter’s last reading cannot be less than the one before it.', doubt: true, backwards: true }
    : { words: `${plain(start - typed, 1)} ${canonical} less than the last reading: is a digit missing? If the meter was exchanged, tick that below.`, doubt: true, backwards: true };
  const passed = `${plain(gain)} ${canonical} in ${between(age)}`;
  if (usual === null || usual < .5) return { words: `${passed}.`, doubt: false };
  if (gain < .3 * usual) return { words: `${passed}, usual ${plain(usual)}: is a digit missing?`, doubt: true };
  if (gain > 3 * usual) return { words: `${passed}, usual ${plain(usual)}: is a digit too many, or was much more burnt?`, doubt: true };
  return { words: `${passed}; usual ${plain(usual)}.`, doubt: false };
}
