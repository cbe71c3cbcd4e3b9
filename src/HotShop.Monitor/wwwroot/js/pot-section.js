// The real crucible in section. The glass ends in a soft edge as deep as the uncertainty; the heel that is not worked is dotted;
// bubbles mean: charged, not clear yet.
import { glow } from './glow.js';
import { clamp, el, freshId, line, path, polyline, rect, text } from './svg.js';
import { figure } from './units.js';

const FLOOR = 286, TALL = 250, MIDDLE = 146;

export function drawSection(svg, pot, { temperatureCelsius, notClear }) {
  const profile = pot.innerProfile?.length ? pot.innerProfile : [{ heightCm: 0, radiusCm: 20 }, { heightCm: pot.fullDepthCm || 40, radiusCm: 20 }];
  const top = Math.max(pot.fullDepthCm || 0, ...profile.map(p => p.heightCm)), wide = Math.max(...profile.map(p => p.radiusCm));
  const k = Math.min(TALL / top, 104 / wide), y = cm => FLOOR - cm * k, id = freshId(), g = el('g', {});
  const side = profile.map(p => [p.radiusCm * k, y(p.heightCm)]), closed = points => `${polyline([...points.map(([x, v]) => [MIDDLE - x, v]).reverse(), ...points.map(([x, v]) => [MIDDLE + x, v])])}Z`;
  const thick = 14, inside = closed(side), wall = closed([[side[0][0] * .75, FLOOR + thick], [side[0][0] + thick * .5, FLOOR + thick * .8], ...side.slice(1).map(([x, v]) => [x + thick, v])]);
  const level = pot.levelCm ?? 0, low = pot.levelCmLow95 ?? level, high = pot.levelCmHigh95 ?? level, hot = temperatureCelsius === null ? 'var(--pipe)' : glow(temperatureCelsius);
  const heel = heightOf(profile, (pot.workedHeelKg ?? 0) / (pot.capacityKg || 1));

  g.append(el('defs', {},
    el('clipPath', { id: `${id}i` }, path(inside)),
    el('linearGradient', { id: `${id}g`, gradientUnits: 'userSpaceOnUse', x1: 0, x2: 0, y1: y(high), y2: Math.max(y(low), y(high) + 1) }, el('stop', { offset: 0, 'stop-color': hot, 'stop-opacity': 0 }), el('stop', { offset: 1, 'stop-color': hot })),
    el('pattern', { id: `${id}h`, width: 6, height: 6, patternUnits: 'userSpaceOnUse' }, el('circle', { cx: 2, cy: 2, r: 1.1, fill: '#191c21' })),
    el('pattern', { id: `${id}b`, width: 18, height: 17, patternUnits: 'userSpaceOnUse' }, el('circle', { cx: 5, cy: 5, r: 2.6, fill: 'none', stroke: '#191c21' }), el('circle', { cx: 13, cy: 12, r: 1.7, fill: 'none', stroke: '#191c21' }))));
  g.append(path(wall, 'pot-wall'), path(inside, 'hollow'));
  const body = el('g', { 'clip-path': `url(#${id}i)` }, rect(0, y(high), 264, FLOOR - y(high) + 4, null, { fill: `url(#${id}g)` }));
  if (notClear) body.append(rect(0, y(low), 264, FLOOR - y(low), null, { fill: `url(#${id}b)` }));
  if (heel > 0) body.append(rect(0, y(Math.min(heel, level)), 264, FLOOR - y(Math.min(heel, level)), null, { fill: `url(#${id}h)` }));
  g.append(body);
  for (let cm = 0; cm <= top; cm += 10) g.append(line(24, y(cm), 31, y(cm), 'tick', { 'stroke-width': 1 }), text(21, y(cm) + 5, cm, 'dim', 14, 'end'));
  g.append(text(2, y(top) - 8, 'cm', 'dim', 14));

  // Words on the glass keep clear of its bubbles by an edge in the colour of the glass.
  const written = (x, v, words, cls, size) => { const t = text(x, v, words, cls, size, 'middle'); if (cls === 'on-glass') { t.setAttribute('stroke', hot); t.setAttribute('stroke-width', 6); t.setAttribute('paint-order', 'stroke'); t.setAttribute('stroke-linejoin', 'round'); } return t; };
  const f = figure('length', level), half = (high - low) / 2;
  const above = y(high) - y(top) > 64;
  g.append(written(MIDDLE, above ? y(high) - 26 : y(high) + 40, `${f.number} ${f.unit} ± ${figure('length', half).number}`, above ? 'b' : 'on-glass', 17),
    written(MIDDLE, above ? y(high) - 8 : y(high) + 58, f.other, above ? 'dim' : 'on-glass', 14));
  if (heel > 3 && level > heel + 2) g.append(written(MIDDLE, y(heel) - 5, 'heel, not worked', 'on-glass', 14));
  svg.setAttribute('viewBox', `0 ${y(top) - 24} 266 ${FLOOR + thick - y(top) + 26}`);
  svg.replaceChildren(svg.querySelector('title'), g);
}

/** Height in cm up to which the pot holds this share of its volume, from its real profile (cone frustums). */
export function heightOf(profile, share) {
  const slices = profile.slice(1).map((b, i) => { const a = profile[i], h = b.heightCm - a.heightCm; return { a, b, h, v: h * (a.radiusCm ** 2 + a.radiusCm * b.radiusCm + b.radiusCm ** 2) }; });
  let rest = clamp(share, 0, 1) * slices.reduce((s, x) => s + x.v, 0);
  for (const s of slices) {
    if (rest > s.v) { rest -= s.v; continue; }
    return s.a.heightCm + s.h * (s.v ? rest / s.v : 0);
  }
  return profile.at(-1).heightCm;
}
