// The pick-up oven: a low box whose shelf carries colour and parts.
import { glow } from './glow.js';
import { el, hatch, path, rect } from './svg.js';

export const OVEN = { width: 150, height: 168 };

export function oven({ temperatureCelsius, isOld = false }) {
  const g = el('g', {});
  g.append(path('M-54,-64L-62,0M54,-64L62,0M-58,-24H58', 'steel'), rect(-75, -168, 150, 104, 'masonry'), rect(-58, -152, 116, 72, 'hollow'));
  if (isOld) { const h = hatch(10); g.append(h.node, rect(-58, -152, 116, 72, null, { fill: h.fill })); }
  else if (temperatureCelsius !== null) g.append(rect(-58, -152, 116, 72, null, { fill: glow(temperatureCelsius) }));
  const ink = isOld || temperatureCelsius === null ? 'var(--ink-1)' : '#d8d5cf';
  for (const [x, w, h] of [[-44, 14, 34], [-24, 22, 20], [4, 12, 42], [22, 24, 14]]) g.append(rect(x, -84 - h, w, h, null, { fill: 'none', stroke: ink, 'stroke-width': 2 }));
  g.append(rect(-58, -84, 116, 4, 'pot-wall'));
  return { node: g, ...OVEN, at: { feed: [0, -168], hot: [0, -116] }, ring: 14 };
}
