// The furnace cut open: masonry, crown, burner, and the real pot with its glass. Origin: middle of its foot; y runs up to negative.
import { glow } from './glow.js';
import { el, freshId, line, path, polyline, rect, clamp } from './svg.js';

export const FURNACE = { width: 216, height: 262 };

/**
 * temperatureCelsius null: not known, the inside stays dark. glass: {share, low, high} of the full depth, or null.
 * profile: [{heightCm, radiusCm}] of the inside of the pot; fireShare 0..1: how hard the burner burns now.
 */
export function furnace({ temperatureCelsius, glass, profile, fullDepthCm, fireShare = 0, isOld = false }) {
  const g = el('g', {}), hot = temperatureCelsius === null ? null : glow(temperatureCelsius), id = freshId();
  const { outer, inner, rim, pot } = shape(profile, fullDepthCm);

  g.append(rect(-104, -16, 208, 16, 'masonry'), rect(-100, -172, 10, 156, 'masonry'), rect(90, -172, 10, 156, 'masonry'), path(outer, 'masonry'));
  g.append(path(inner, 'hollow'));
  if (hot && !isOld) {
    // The chamber is as hot as its crown; it is drawn weaker than the glass so that the level can be read.
    g.append(el('defs', {}, el('linearGradient', { id: `${id}c`, x1: 0, x2: 0, y1: 0, y2: 1 },
      el('stop', { offset: 0, 'stop-color': hot, 'stop-opacity': .34 }), el('stop', { offset: .55, 'stop-color': hot, 'stop-opacity': .62 }), el('stop', { offset: 1, 'stop-color': hot, 'stop-opacity': .28 }))));
    g.append(path(inner, null, { fill: `url(#${id}c)` }));
  }
  // Burner port on the right, with a tongue of fire as long as the burner burns hard; gathering port on the left.
  g.append(path('M66,-150L112,-158V-138L66,-134Z', 'masonry'), rect(108, -166, 9, 36, null, { fill: 'var(--edge)' }));
  if (fireShare > .02 && hot) g.append(path(`M66,-146C${48 - 40 * fireShare},-152 ${30 - 46 * fireShare},-146 ${14 - 50 * fireShare},-132C${34 - 40 * fireShare},-134 52,-134 66,-137Z`, null, { fill: glow(1380), opacity: .75 }));
  g.append(rect(-90, -150, 26, 26, 'hollow'), rect(-98, -156, 8, 38, null, { fill: 'var(--edge)' }));
  if (hot && !isOld) g.append(rect(-90, -150, 26, 26, null, { fill: hot, opacity: .5 }));

  g.append(rect(-40, -30, 80, 9, 'pot-wall'), path(pot.wall, 'pot-wall'), path(pot.inside, 'hollow'), hot && !isOld ? path(pot.inside, null, { fill: hot, opacity: .3 }) : '');
  if (glass) {
    const y = share => -38 - clamp(share, 0, 1) * rim, fill = hot ?? 'var(--edge)';
    g.append(el('defs', {},
      el('clipPath', { id: `${id}p` }, path(pot.inside)),
      el('linearGradient', { id: `${id}g`, gradientUnits: 'userSpaceOnUse', x1: 0, x2: 0, y1: y(glass.high), y2: Math.max(y(glass.low), y(glass.high) + .5) },
        el('stop', { offset: 0, 'stop-color': fill, 'stop-opacity': 0 }), el('stop', { offset: 1, 'stop-color': fill }))));
    g.append(el('g', { 'clip-path': `url(#${id}p)` }, rect(-90, y(glass.high), 180, 220, null, { fill: `url(#${id}g)` })));
  }
  // The couple through the crown: where the number comes from.
  g.append(line(0, -262, 0, -196, null, { stroke: 'var(--ink-2)', 'stroke-width': 4 }), rect(-7, -262, 14, 8, null, { fill: 'var(--ink-2)' }));
  return { node: g, ...FURNACE, at: { feed: [113, -148], hot: [0, -196] }, ring: 14 };
}

function shape(profile, fullDepthCm) {
  const rim = 108, points = (profile?.length ? profile : [{ heightCm: 0, radiusCm: .62 }, { heightCm: .12, radiusCm: .8 }, { heightCm: 1, radiusCm: 1 }]);
  const top = Math.max(fullDepthCm ?? 0, ...points.map(p => p.heightCm)), wide = Math.max(...points.map(p => p.radiusCm));
  const half = 46, side = points.map(p => [p.radiusCm / wide * half, -38 - p.heightCm / top * rim]);
  const closed = pts => `${polyline([...pts.map(([x, y]) => [-x, y]).reverse(), ...pts])}Z`;
  const wall = side.map(([x, y], i) => [x + 9, i ? y : y + 9]);
  return {
    rim,
    outer: 'M-90,-16V-176C-90,-222 -52,-246 0,-246S90,-222 90,-176V-16H66V-24H-66V-16Z',
    inner: 'M-64,-24V-168C-64,-202 -38,-220 0,-220S64,-202 64,-168V-24Z',
    pot: { inside: closed(side), wall: closed([[Math.max(12, side[0][0]), -29], ...wall]) },
  };
}
