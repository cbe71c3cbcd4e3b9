// The annealer: a chamber that is its own chart. The plan is a hairline, what was measured lies on it, and where the
// two part a lens shows by how much: 25 °C (45 °F) up and down from the plan, an hour and a half either way.
import { glow } from './glow.js';
import { clamp, el, freshId, line, path, polyline, rect, scale } from './svg.js';

export const ANNEALER = { width: 168, height: 226 };
const LENS = { radius: 27, celsius: 25, milliseconds: 1.5 * 3600e3 };

/** plan and measured: [{t, v}]; deviationCelsius: measured minus plan now, or null. */
export function annealer({ temperatureCelsius, isOld = false, plan = [], measured = [], nowMs, deviationCelsius = null, tall = 1 }) {
  const g = el('g', {}), h = 196 * tall + 30, w = ANNEALER.width, x0 = -w / 2 + 18, x1 = w / 2 - 18, y0 = -h + 18, y1 = -42;
  g.append(path('M-66,-30V0M66,-30V0', 'steel'), rect(-w / 2, -h, w, h - 28, 'masonry'), rect(x0, y0, x1 - x0, y1 - y0, 'hollow'));
  if (temperatureCelsius !== null && !isOld) g.append(rect(x0, y0, x1 - x0, y1 - y0, null, { fill: glow(temperatureCelsius) }));
  // The chamber is dark at annealing temperatures in both themes, so the chart in it is drawn in light ink.
  const ink = isOld || temperatureCelsius === null ? 'var(--ink-1)' : '#f4f2ee', thin = isOld || temperatureCelsius === null ? 'var(--ink-2)' : '#c9c6c0';
  let hot = [0, (y0 + y1) / 2], ring = 14;
  const all = [...plan, ...measured];
  if (all.length > 1) {
    const from = Math.min(...all.map(p => p.t)), to = Math.max(...all.map(p => p.t), nowMs), top = Math.max(...all.map(p => p.v), 100);
    const X = scale(from, to, x0 + 8, x1 - 8), Y = scale(0, top * 1.08, y1 - 8, y0 + 10);
    const draw = (points, stroke, width) => points.length > 1 && g.append(path(polyline(points.map(p => [X(p.t), Y(p.v)])), null, { fill: 'none', stroke, 'stroke-width': width, 'stroke-linejoin': 'round' }));
    draw(plan, thin, 1.5);
    draw(measured, ink, 3.5);
    const last = measured.at(-1);
    if (last) { hot = [X(last.t), Y(last.v)]; g.append(el('circle', { cx: hot[0], cy: hot[1], r: 5.5, fill: ink })); }
    if (last && deviationCelsius !== null && Math.abs(deviationCelsius) >= 3) {
      ring = LENS.radius;
      hot = [clamp(hot[0], x0 + ring + 3, x1 - ring - 3), clamp(hot[1], y0 + ring + 3, y1 - ring - 3)];
      g.append(lens(hot, plan, measured, ink, thin));
    }
  }
  g.append(rect(x1 + 6, (y0 + y1) / 2 - 16, 5, 32, 'pot-wall'));
  return { node: g, width: w, height: h, at: { feed: [0, -h], hot }, ring };
}

function lens([x, y], plan, measured, ink, thin) {
  const id = freshId(), nowMs = measured.at(-1).t, r = LENS.radius;
  const planAt = t => { const i = plan.findIndex(p => p.t >= t); if (i <= 0) return plan[Math.max(0, i)]?.v ?? 0; const a = plan[i - 1], b = plan[i]; return a.v + (b.v - a.v) * (t - a.t) / (b.t - a.t || 1); };
  const base = planAt(nowMs), X = t => x + (t - nowMs) / LENS.milliseconds * r, Y = v => y - (v - base) / LENS.celsius * r;
  const near = measured.filter(p => Math.abs(p.t - nowMs) < LENS.milliseconds * 1.2);
  const steps = [-1.1, -.5, 0, .5, 1.1].map(k => nowMs + k * LENS.milliseconds);
  return el('g', {}, el('defs', {}, el('clipPath', { id }, el('circle', { cx: x, cy: y, r }))),
    el('circle', { cx: x, cy: y, r, fill: '#000', opacity: .9 }),
    el('g', { 'clip-path': `url(#${id})` },
      path(polyline(steps.map(t => [X(t), Y(planAt(t))])), null, { fill: 'none', stroke: thin, 'stroke-width': 1.5 }),
      near.length > 1 ? path(polyline(near.map(p => [X(p.t), Y(p.v)])), null, { fill: 'none', stroke: ink, 'stroke-width': 3.5 }) : null,
      line(x, Y(base), x, Y(near.at(-1)?.v ?? base), null, { stroke: ink, 'stroke-width': 1.5, 'stroke-dasharray': '3 3' })),
    el('circle', { cx: x, cy: y, r, fill: 'none', stroke: ink, 'stroke-width': 2 }));
}
