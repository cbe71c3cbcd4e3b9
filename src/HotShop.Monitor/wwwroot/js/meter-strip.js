// The readings on a strip of time: how much passed a day between each two, as wide as the time between them; open to the right until the next reading.
import { date, now } from './clock.js';
import { el, line, path, rect, text } from './svg.js';
import { perUnit, plain } from './meter-words.js';

// As wide as it will be drawn, so that its words keep their size on a phone.
const WIDTH = innerWidth < 560 ? 320 : 640, HEIGHT = 96, TOP = 16, BASE = 74;

/** null where there are no two readings. */
export function rateStrip(meter) {
  const readings = [...meter.readings].reverse().map(r => ({ t: Date.parse(r.time), end: r.reading * perUnit(meter, r.unit), start: (r.newMeterReading ?? r.reading) * perUnit(meter, r.unit) }));
  if (readings.length < 2) return null;
  const steps = readings.slice(1).map((r, i) => ({ from: readings[i].t, to: r.t, gain: r.end - readings[i].start })).filter(s => s.to > s.from && s.gain >= 0)
    .map(s => ({ ...s, perDay: s.gain / ((s.to - s.from) / 86400e3) }));
  if (!steps.length) return null;
  const first = readings[0].t, last = now(), most = Math.max(...steps.map(s => s.perDay)) || 1, unit = meter.energy === 'gas' ? 'm³' : 'kWh';
  const x = t => (t - first) / Math.max(1, last - first) * (WIDTH - 2) + 1, y = v => BASE - v / most * (BASE - TOP);
  const words = `${unit} a day between readings: ${steps.map(s => `${plain(s.perDay)} until ${date(s.to)}`).join(', ')}`;
  return el('svg', { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, class: 'rate', role: 'img', 'aria-label': words },
    ...steps.map(s => rect(x(s.from), y(s.perDay), x(s.to) - x(s.from), BASE - y(s.perDay), 'step')),
    x(last) - x(readings.at(-1).t) > 2 ? path(`M${x(readings.at(-1).t)},${y(steps.at(-1).perDay)}H${x(last)}V${BASE}`, 'open') : null,
    line(0, BASE, WIDTH, BASE, 'tick'), ...readings.map(r => line(x(r.t), BASE - 4, x(r.t), BASE + 6, 'tick')),
    text(2, HEIGHT - 4, date(first)), text(WIDTH - 2, HEIGHT - 4, 'now', null, null, 'end'), text(2, 12, `at most ${plain(most)} ${unit} a day`));
}
