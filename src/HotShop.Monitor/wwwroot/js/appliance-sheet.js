// One appliance, asked about on the floor: every channel with its age, and its mode, set with one tap.
import { now, stamp, when } from './clock.js';
import { keepSending, log } from './entry-queue.js';
import { firePlace } from './fire.js';
import { age, lastAt } from './saying.js';
import { findAppliance, isOld, loadOf } from './shop.js';
import { html } from './svg.js';
import { both, modeWords, quantityWords } from './units.js';

const MODES = ['off', 'heat-up', 'holding', 'charging', 'working', 'cool-down', 'out-of-service'];
keepSending();

export function openAppliance(sheet, applianceId) {
  const appliance = findAppliance(applianceId), modes = MODES.filter(m => m !== 'charging' || appliance.kind === 'furnace');
  const said = html('p', { role: 'status', class: 'sub' }, `${modeWords(appliance.mode)}${appliance.modeSince ? ` since ${when(Date.parse(appliance.modeSince))}` : ''}${appliance.modeWho ? `, set by ${appliance.modeWho}` : ''}`);
  const buttons = modes.map(mode => html('button', {
    type: 'button', 'aria-pressed': String(mode === appliance.mode), onclick: event => {
      log({ appliance: appliance.appliance, entry: 'mode', mode, time: stamp() });
      Object.assign(appliance, { mode, modeSince: new Date(now()).toISOString() });
      for (const b of buttons) b.setAttribute('aria-pressed', String(b === event.currentTarget));
      said.textContent = `${modeWords(mode)} from now on; alarms follow what it is meant to be doing`;
    },
  }, modeWords(mode)));
  sheet.replaceChildren(
    html('div', { class: 'sheet-head' }, html('div', {}, html('h2', { id: 'sheet-title' }, appliance.name), said), html('button', { type: 'button', onclick: () => sheet.close() }, 'Back')),
    html('h3', {}, 'It is meant to be'), html('div', { class: 'modes' }, buttons),
    html('p', { class: 'note' }, 'This tells the watcher what to expect. It switches nothing.'),
    ...curveAndGlass(loadOf(appliance)),
    html('h3', {}, 'Its sensors'), html('dl', { class: 'channels' }, appliance.channels.flatMap(c => [html('dt', {}, `${c.channel}, ${quantityWords(c.quantity)}`), html('dd', {}, both(c.quantity, c.value), html('small', {}, ` ${isOld(c) ? lastAt(c) : age(c)}`))])),
    firePlace(appliance),
    appliance.kind === 'furnace' ? html('a', { class: 'button', href: `/pot/${encodeURIComponent(appliance.appliance)}` }, 'Its pot and log') : '');
  sheet.showModal();
}

/** What the curve means for the glass in the pot; whether it suits the thickest part is for a person to judge. */
const curveAndGlass = load => load?.glass?.length ? [html('h3', {}, 'Its curve and the glass'), ...load.glass.map(g => html('p', { class: 'note' }, g.words))] : [];
