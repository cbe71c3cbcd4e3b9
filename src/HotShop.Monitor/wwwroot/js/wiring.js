// Topics that nobody has claimed: a card asks what each is, proposes the likeliest answer, and one tap adds the channel.
// Topic and payload are whatever somebody sent: they only ever become text.
import { get, post } from './api.js';
import { span, when } from './clock.js';
import { shop } from './shop.js';
import { html } from './svg.js';
import { figure, quantityWords } from './units.js';
import { channelForm } from './wiring-form.js';

const FIRST = 5, AGAIN_MS = 5000;
const id = name => document.getElementById(name);
const cards = new Map();
let state = null, showAll = false;

/** Topics that have a card. */
export const isShown = topic => cards.has(topic);

/** Begins to show them; only the owner is told. */
export async function showUnknown() {
  id('unknown-more').addEventListener('click', () => { showAll = true; show(); });
  if (!await again()) return;
  setInterval(again, AGAIN_MS);
}

async function again() {
  try { state = await get('/api/setup/unknown-topics'); }
  catch (problem) { return problem.status !== 403; }
  show();
  return true;
}

function show() {
  // What is most likely somebody's sensor stands first; bundles that a channel already reads stand last.
  const rank = t => (t.inUse.length ? 4 : 0) + (best(t) ? 0 : t.candidates.length ? 1 : 2);
  const topics = [...state.topics].sort((a, b) => rank(a) - rank(b) || b.count - a.count), shown = showAll ? topics : topics.slice(0, FIRST);
  id('unknown').hidden = topics.length === 0;
  id('unknown-more').hidden = shown.length === topics.length;
  id('unknown-more').textContent = `Show all ${topics.length}`;
  for (const [topic, card] of cards) if (!shown.some(t => t.topic === topic) && !card.isBusy()) { card.node.remove(); cards.delete(topic); }
  for (const topic of shown) {
    const key = JSON.stringify([topic.inUse, topic.candidates.map(c => [c.valuePointer, c.quantity, c.appliance])]), known = cards.get(topic.topic);
    // A card in which somebody types stays as it is until they are done.
    if (known && (known.key === key || known.isBusy())) { known.update(topic); continue; }
    const made = card(topic, key);
    if (known) known.node.replaceWith(made.node); else id('unknown-list').append(made.node);
    cards.set(topic.topic, made);
  }
  showAdded();
}

const best = topic => topic.candidates.find(c => c.quantity && c.appliance && c.readValue !== null);
const nameOf = appliance => shop.appliances.find(a => a.appliance === appliance)?.name ?? appliance;

function heading(topic) {
  const values = topic.candidates.filter(c => !c.isTime);
  if (topic.inUse.length) return `Also on ${topic.topic}: what else is wanted?`;
  if (values.length === 1) return `${values[0].text} on ${topic.topic}: what is this?`;
  return `${values.length ? `${values.length} values` : 'Something unreadable'} on ${topic.topic}: what is this?`;
}

function habit(topic) {
  const rhythm = topic.reportsOnChange ? 'at no fixed times' : topic.intervalSeconds ? `about every ${span(topic.intervalSeconds * 1000)}` : null;
  return [`heard ${topic.count === 1 ? 'once' : `${topic.count} times`} since ${when(Date.parse(topic.since))}`, `last at ${when(Date.parse(topic.lastAt))}`, rhythm, topic.sender && `from ${topic.sender}`,
    topic.isLastValue && 'a last value kept by the broker: it may be old'].filter(Boolean).join(', ');
}

function card(topic, key) {
  const guess = best(topic), title = html('h3', {}), meta = html('p', { class: 'meta' }), sample = html('code', {}), said = html('div', { class: 'status', role: 'status' }), why = html('p', {});
  const form = topic.candidates.some(c => !c.isTime) ? channelForm(topic, guess, state.units, send) : null;
  if (form) form.hidden = true;
  const other = form && html('button', { type: 'button', 'aria-expanded': 'false', onclick: () => open(form.hidden) }, guess ? 'It is something else' : 'Say what it is');
  const node = html('li', {}, title, meta, html('p', { class: 'sample' }, sample),
    topic.turnedAway && html('p', { class: 'notice' }, `Turned away: ${topic.turnedAway}. Once a channel of its own appliance listens here, it may speak.`),
    guess && why,
    !form && html('p', {}, 'Nothing in it can be read as a value. A device can send a plain number, or JSON with numbers in it.'),
    state.canAdd ? html('div', { class: 'acts' }, guess && html('button', { type: 'button', class: 'main', onclick: () => send(likeliest(topic, guess)) }, `Add as ${quantityWords(guess.quantity)} of ${nameOf(guess.appliance)}`), other)
      : html('p', { class: 'meta' }, 'In your own studio one tap adds it; the demo’s is fixed.'),
    form, said);
  const update = now => { title.textContent = heading(now); meta.textContent = habit(now); sample.textContent = now.sample; why.textContent = best(now) ? likely(now, best(now)) : ''; };
  update(topic);

  function open(isOpen) {
    form.hidden = !isOpen;
    other.setAttribute('aria-expanded', String(isOpen));
    if (isOpen) form.querySelector('select').focus();
  }

  async function send(request) {
    said.replaceChildren(html('p', {}, 'One moment …'));
    try {
      const { channel } = await post('/api/setup/channels', request);
      await begunAgain(said, `${channel} is added.`, channels => channels.some(c => c.channel.id.endsWith(channel)));
    } catch (problem) { said.replaceChildren(html('p', {}, problem.message)); }
  }

  return { node, key, update, isBusy: () => (form && !form.hidden) || said.childElementCount > 0 };
}

const likely = (topic, guess) => `Most likely the ${quantityWords(guess.quantity)} of ${nameOf(guess.appliance)}: ${figure(guess.quantity, guess.readValue).text}, because ${guess.why}.${guess.valuePointer !== null && topic.timePointer ? ` Its time stands at ${topic.timePointer}.` : ''}`;
const likeliest = (topic, guess) => ({
  appliance: guess.appliance,
  channel: { id: guess.channel, quantity: guess.quantity, unit: guess.unit, topic: topic.topic, valuePointer: guess.valuePointer, ...(guess.valuePointer !== null && topic.timePointer ? { timePointer: topic.timePointer } : {}), ...rhythm(topic) },
});
const rhythm = topic => ({ ...(topic.intervalSeconds ? { intervalSeconds: topic.intervalSeconds } : {}), reports: topic.reportsOnChange ? 'on-change' : 'periodic' });

/** The service ends and begins again; the page waits for it, then shows what is there. */
async function begunAgain(place, words, isThere) {
  place.replaceChildren(html('p', {}, `${words} The service begins again with it; nothing that devices send meanwhile is lost where they use QoS 1.`));
  for (let tries = 0; tries < 60; tries++) {
    await new Promise(done => setTimeout(done, 500));
    if (isThere(await get('/api/setup/channels').catch(() => []))) return location.reload();
  }
  place.replaceChildren(html('p', {}, `${words} But the service has not come back within half a minute: look at its log.`));
}

function showAdded() {
  id('added').hidden = state.added.length === 0;
  id('added-list').replaceChildren(...state.added.map(a => html('li', {}, html('p', {}, `${a.appliance}/${a.channel}`, html('small', {}, ` ${quantityWords(a.quantity)}${a.addedAt ? `, added ${when(Date.parse(a.addedAt))}` : ''}`), html('br'),
    html('code', {}, `${a.topic}${a.valuePointer ? ` at ${a.valuePointer}` : ''}`), a.notInForce && html('small', {}, ` Not in force: ${a.notInForce}.`)),
  html('button', { type: 'button', 'aria-label': `Take out ${a.appliance}/${a.channel}`, onclick: () => takeOut(a) }, 'Take out'))));
}

async function takeOut(added) {
  const answer = await fetch(`/api/setup/channels/${encodeURIComponent(added.appliance)}/${encodeURIComponent(added.channel)}`, { method: 'DELETE' }).catch(() => null);
  if (!answer?.ok) return id('added-said').replaceChildren(html('p', {}, (await answer?.json().catch(() => null))?.detail ?? 'The service cannot be reached from here.'));
  await begunAgain(id('added-said'), `${added.appliance}/${added.channel} is taken out; its readings stay.`, channels => channels.length > 0 && !channels.some(c => c.channel.id.endsWith(`${added.appliance}/${added.channel}`)));
}
