// The ten seconds in which one tap takes the last entry back.
import { now, span, when } from './clock.js';
import { waiting } from './entry-queue.js';
import { el } from './svg.js';

const UNDO_MS = 10_000;
const id = name => document.getElementById(name);
let taken = null, timer = 0;

export const lastTaken = () => taken;

export function startUndo(entry, words) {
  taken = entry;
  const until = performance.now() + UNDO_MS;
  id('undo').disabled = false;
  clearInterval(timer);
  const count = () => {
    const left = until - performance.now();
    if (left <= 0) return endUndo(words);
    id('taken').textContent = words;
    id('taken-more').textContent = `logged ${when(Date.parse(entry.time))}${waiting().some(w => w.entry.id === entry.id) ? ', kept here until the line is back' : ''}`;
    id('undo-left').textContent = `${Math.ceil(left / 1000)} s`;
    ring(left / UNDO_MS);
  };
  count();
  timer = setInterval(count, 250);
}

export function endUndo(words) {
  clearInterval(timer);
  id('undo').disabled = true;
  id('undo-left').textContent = '';
  id('undo-ring').replaceChildren();
  id('taken').textContent = words;
  if (taken) id('taken-more').textContent = `${span(now() - Date.parse(taken.time))} ago; correct it in the log below if it was wrong`;
  taken = null;
}

function ring(share) {
  const turn = share * 2 * Math.PI, x = 17 + 13 * Math.sin(turn), y = 17 - 13 * Math.cos(turn);
  id('undo-ring').replaceChildren(el('circle', { cx: 17, cy: 17, r: 13, fill: 'none', stroke: 'var(--line)', 'stroke-width': 3 }),
    el('path', { d: share > .999 ? 'M17,4A13,13 0 1 1 16.9,4' : `M17,4A13,13 0 ${share > .5 ? 1 : 0} 1 ${x.toFixed(1)},${y.toFixed(1)}`, fill: 'none', stroke: 'var(--ink-1)', 'stroke-width': 4 }));
}
