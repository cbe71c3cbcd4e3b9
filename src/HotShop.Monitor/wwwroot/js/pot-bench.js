// Who is at the bench: a chip for each, kept on this device. The pressed one signs what is logged; pressed again, nobody does.
import { nameWhoLogs, whoLogs } from './entry-queue.js';
import { html } from './svg.js';

const KEY = 'hotshop.bench', MOST = 6;
const own = () => { try { return JSON.parse(localStorage.getItem(KEY) ?? '[]'); } catch { return []; } };
const same = (a, b) => a.toLowerCase() === b.toLowerCase();

/** Names added here first, then those that logged lately. */
export function bench(people = []) {
  const names = [];
  for (const name of [...own(), whoLogs(), ...people]) if (name && !names.some(n => same(n, name))) names.push(name);
  return names.slice(0, MOST);
}

export function addToBench(name) {
  if (!name.trim()) return;
  localStorage.setItem(KEY, JSON.stringify([name.trim(), ...own().filter(n => !same(n, name.trim()))].slice(0, MOST)));
  nameWhoLogs(name);
}

export function leaveBench(name) {
  localStorage.setItem(KEY, JSON.stringify(own().filter(n => !same(n, name))));
  if (same(whoLogs(), name)) nameWhoLogs('');
}

export function showBench(place, people) {
  const names = bench(people);
  place.replaceChildren(...names.map(name => html('button', { type: 'button', class: 'chip', 'aria-pressed': String(same(name, whoLogs())), 'data-who': name }, name)),
    names.length ? '' : html('button', { type: 'button', class: 'chip', 'data-sheet': 'more' }, 'Who logs?'));
}

export function pressChip(name) { nameWhoLogs(same(name, whoLogs()) ? '' : name); }
