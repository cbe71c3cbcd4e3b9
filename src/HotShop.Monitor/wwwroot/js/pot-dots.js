// Gathers left, to be counted with the eye: a solid dot for each that is there for sure, an open one for each that may be.
import { el, html } from './svg.js';

// Beyond this many dots nobody counts: then a dot stands for more, and says so.
const COUNTABLE = 30, STEPS = [1, 2, 5, 10, 20, 50, 100];
const WIDTH = 132;
const SHAPES = { large: { r: 5.2, step: 12.2 }, medium: { r: 4.2, step: 10 }, small: { r: 2.8, step: 7 } };

export function fillDots(place, sizes) {
  const order = ['large', 'medium', 'small'], known = [...sizes].sort((a, b) => b.massKg - a.massKg || order.indexOf(a.size) - order.indexOf(b.size));
  place.replaceChildren(...known.map((s, i) => {
    const low = Math.max(0, Math.floor(s.leftLow)), high = Math.max(low, Math.floor(s.leftHigh));
    const words = `${i ? 'or ' : ''}${low === high ? low : `${low}–${high}`} ${s.size}${i ? '' : ' left'}`;
    const each = STEPS.find(n => high / n <= COUNTABLE) ?? 1000;
    return html('li', {}, html('p', {}, words, small(each, i === 0)), high > 0 ? dots(Math.floor(low / each), Math.ceil(high / each), SHAPES[s.size] ?? SHAPES.medium) : null);
  }));
}

/** What a dot stands for, and once what an open one means. */
function small(each, isFirst) {
  const words = [each > 1 ? `a dot is ${each}` : null, isFirst ? 'open: maybe' : null].filter(Boolean).join(', ');
  return words ? html('small', {}, ` ${words}`) : null;
}

function dots(sure, all, { r, step }) {
  const fits = n => 2 * r + 2 + (n - 1) * step + (n / 5 - 1) * step * .45 <= WIDTH;
  const columns = [15, 10, 5].find(fits) ?? 5, g = el('svg', { 'aria-hidden': 'true' });
  for (let i = 0; i < all; i++) {
    const c = i % columns, x = r + 1 + c * step + Math.floor(c / 5) * step * .45, y = r + 1 + Math.floor(i / columns) * step;
    g.append(el('circle', { cx: x, cy: y, r: i < sure ? r : r - .8, class: i < sure ? 'dot' : 'open-dot' }));
  }
  const width = 2 * r + 2 + (columns - 1) * step + Math.floor((columns - 1) / 5) * step * .45, height = Math.ceil(all / columns) * step + 2;
  g.setAttribute('viewBox', `0 0 ${width} ${height}`);
  g.setAttribute('width', width);
  g.setAttribute('height', height);
  return g;
}
