// Making drawings. Text only ever enters as a text node, so a hostile name stays a name.
const NS = 'http://www.w3.org/2000/svg';

export function el(tag, attributes = {}, ...children) {
  const node = document.createElementNS(NS, tag);
  for (const [name, value] of Object.entries(attributes)) if (value !== null && value !== undefined) node.setAttribute(name, value);
  for (const child of children) if (child !== null && child !== undefined) node.append(child instanceof Node ? child : document.createTextNode(String(child)));
  return node;
}

export const html = (tag, attributes = {}, ...children) => {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (name === 'class') node.className = value;
    else if (name.startsWith('on')) node.addEventListener(name.slice(2), value);
    else node.setAttribute(name, value === true ? '' : value);
  }
  for (const child of children.flat()) if (child !== null && child !== undefined && child !== false) node.append(child instanceof Node ? child : document.createTextNode(String(child)));
  return node;
};

const round = n => Math.round(n * 10) / 10;
export const at = (x, y) => `${round(x)},${round(y)}`;
export const path = (d, cls, more) => el('path', { d, class: cls, ...more });
export const rect = (x, y, width, height, cls, more) =>
  el('rect', { x: round(x), y: round(y), width: Math.max(0, round(width)), height: Math.max(0, round(height)), class: cls, ...more });
export const line = (x1, y1, x2, y2, cls, more) => el('line', { x1: round(x1), y1: round(y1), x2: round(x2), y2: round(y2), class: cls, ...more });
export const text = (x, y, words, cls, size, anchor) => el('text', { x: round(x), y: round(y), class: cls, 'font-size': size, 'text-anchor': anchor }, words);
export const polyline = points => points.map(([x, y], i) => (i ? 'L' : 'M') + at(x, y)).join('');
export const scale = (a, b, from, to) => v => from + (v - a) / (b - a) * (to - from);
export const clamp = (v, low, high) => Math.min(high, Math.max(low, v));

let ids = 0;
export const freshId = () => `d${++ids}`;

/** The hatch that everywhere means "no reading". Returns the definition and the fill that uses it. */
export function hatch(spacing = 9) {
  const id = freshId();
  const node = el('defs', {}, el('pattern', { id, width: spacing, height: spacing, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    line(0, 0, 0, spacing, 'hatch-line')));
  return { node, fill: `url(#${id})` };
}

/** Priority as shape, digit and colour: diamond 1, triangle 2, circle 3. */
export function mark(priority, x, y, r) {
  const shape = priority === 1 ? path(`M0,${-r * 1.15}L${r * 1.15},0L0,${r * 1.15}L${-r * 1.15},0Z`, 'shape')
    : priority === 2 ? path(`M0,${-r * 1.1}L${r * 1.15},${r * .85}H${-r * 1.15}Z`, 'shape')
      : el('circle', { r, class: 'shape' });
  const digit = text(0, priority === 2 ? r * .62 : r * .38, priority, null, r * 1.05, 'middle');
  return el('g', { class: `mark mark-${priority}`, transform: `translate(${at(x, y)})` }, shape, digit);
}
