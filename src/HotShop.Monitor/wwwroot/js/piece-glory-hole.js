// The glory hole from the front: drum, ring of fire between its doors, and the yoke the pipe rests on.
import { glow } from './glow.js';
import { el, freshId, line, path, rect } from './svg.js';

export const GLORY_HOLE = { width: 172, height: 236 };

export function gloryHole({ temperatureCelsius, isOld = false, isOff = false, isShut = false }) {
  const g = el('g', {}), id = freshId(), cy = -146;
  g.append(path('M-44,-76L-62,0M44,-76L62,0M-56,-30H56', 'steel'));
  g.append(el('circle', { cx: 0, cy, r: 86, class: 'masonry' }), el('circle', { cx: 0, cy, r: 70, class: 'hair' }), el('circle', { cx: 0, cy, r: 50, class: 'hollow' }));
  if (temperatureCelsius !== null && !isOld) {
    const hot = glow(temperatureCelsius), rim = glow(temperatureCelsius - (isOff ? 0 : 60));
    g.append(el('defs', {}, el('radialGradient', { id }, el('stop', { offset: .3, 'stop-color': hot }), el('stop', { offset: 1, 'stop-color': rim }))));
    g.append(el('circle', { cx: 0, cy, r: 50, fill: `url(#${id})` }));
  }
  // Two door halves slide apart on their rail. Shut when the hole is off; a narrow port stays when its sensor says shut.
  const open = isOff ? 3 : isShut ? 22 : 44;
  for (const side of [-1, 1]) g.append(path(`M${side * open},${cy - 58}A58,58 0 0 ${side > 0 ? 1 : 0} ${side * open},${cy + 58}Z`, 'masonry', { opacity: .96 }));
  g.append(line(-80, cy + 64, 80, cy + 64, 'steel'));
  // The yoke in front.
  g.append(path(`M0,0V-40M-14,-48A14,14 0 0 0 14,-48M-20,0H20`, 'steel'), rect(-4, -42, 8, 6, 'pot-wall'));
  return { node: g, ...GLORY_HOLE, at: { feed: [0, -232], hot: [0, cy] }, ring: 14 };
}
