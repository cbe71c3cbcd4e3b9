// The floor: is everything as it should be? If not, what, since when, who has it. The same state fills the wall and the phone.
import { get } from './api.js';
import { now, weekday, time } from './clock.js';
import { openAppliance } from './appliance-sheet.js';
import { loadCost } from './cost.js';
import { hearReading, loadPast, pastOf } from './history.js';
import { lane, gather } from './lane.js';
import { readPot } from './pot-facts.js';
import { drawRoom, piece } from './room.js';
import { gasOf, glassOf, moneyOf, sentenceOf, temperatureOf } from './saying.js';
import { fires, house, keepCurrent, loadShop, loadStudio, openAlarms, shop } from './shop.js';
import { tellStory } from './story.js';
import { drawStrip, laneOf } from './strip.js';
import { html, el, line, scale } from './svg.js';
import { isCustomaryFirst } from './units.js';
import { drawClosedThread, drawThread } from './thread.js';
import { fillTroubles, troubleMark } from './trouble.js';

const id = name => document.getElementById(name);
const wall = matchMedia('(min-width: 760px)');
const pots = new Map();
let entries = [], built = '', columns = new Map(), marked = false;

async function start() {
  try {
    await loadStudio();
    await loadShop();
  } catch (problem) { return showProblem(problem); }
  id('loading').hidden = true;
  id('floor').hidden = false;
  drawAll();
  follow();
  await slowThings();
  drawAll();
  setInterval(() => { writeNumbers(); if (marked) { marked = false; drawPictures(); } }, 1000);
  new ResizeObserver(() => { built = ''; drawAll(); }).observe(id('floor'));
  wall.addEventListener('change', drawAll);
}

/** From here on the live stream is heard, so that nothing between the first answers and it is missed. */
function follow() {
  keepCurrent({
    onChange: (kind, item) => {
      if (kind === 'reading') hearReading(item);
      if (kind === 'log') entries = withoutCorrected([...entries, item]);
      marked = true;
    },
    onAgain: async () => { await slowThings().catch(() => {}); if (!id('floor').hidden) drawAll(); },
  });
}

async function slowThings() {
  const furnaces = fires().filter(a => a.kind === 'furnace');
  await Promise.all([
    loadPast(wall.matches ? 20 : 8, wall.matches ? 300 : 240).catch(() => {}),
    loadCost().catch(() => {}),
    ...furnaces.map(a => readPot(a).then(p => pots.set(a.id, p)).catch(() => {})),
    get(`/api/logbook?from=${new Date(now() - 20 * 3600e3).toISOString()}`).then(list => { entries = withoutCorrected(list); }).catch(() => {}),
  ]);
}

const withoutCorrected = list => { const gone = new Set(list.filter(e => e.entry === 'correction').map(e => e.of)); return list.filter(e => e.entry !== 'correction' && !gone.has(e.id)); };

function showProblem(problem) {
  id('loading').replaceChildren(html('h1', {}, 'The floor cannot be shown'), html('p', { class: 'lede' }, problem.message), html('p', {}, 'The watch itself may well be running: alarms do not depend on this page. It tries again by itself.'));
  setTimeout(() => location.reload(), 10_000);
}

/* The columns are made once for a set of appliances; afterwards only their text changes. */
function build() {
  const key = JSON.stringify([wall.matches, fires().map(a => [a.id, a.name, hasGlass(a)])]);
  if (key === built) return;
  built = key;
  columns = new Map();
  const list = id('appliances'), items = fires().map(appliance => {
    const figures = [column('temperature', appliance.kind === 'annealer' || appliance.kind === 'pick-up-oven' && !isCustomaryFirst() ? 3 : 4, () => openAppliance(id('sheet'), appliance.id))];
    if (hasGlass(appliance)) figures.push(column('glass', 3));
    const li = html('li', { class: `appliance ${appliance.kind}` }, wall.matches ? null : el('svg', { class: 'piece', 'aria-hidden': 'true' }), html('div', { class: 'figures' }, figures.map(f => f.node)), wall.matches ? null : el('svg', { class: 'lane', 'aria-hidden': 'true' }));
    columns.set(appliance.id, { li, figures });
    return li;
  });
  const gas = column('gas', 4), cost = column('money', 4);
  const scaleItem = html('li', { id: 'phone-hours', 'aria-hidden': 'true' });
  const home = html('li', { class: 'house' }, html('div', { class: 'figures' }, cost.node, gas.node));
  columns.set('house', { li: home, figures: [cost, gas] });
  list.replaceChildren(...(wall.matches ? [home, ...items] : [...items, scaleItem, home]));
  fit(list);
}

/** Many appliances on a narrow wall: first the gaps give way, then the figures, which stay at 6 % of the height as long as they can. */
function fit(list) {
  for (const step of ['', 'snug', 'tight', 'tighter']) {
    list.className = step;
    if (list.scrollWidth <= list.clientWidth) return;
  }
}

function column(kind, digits, open) {
  const parts = { name: html('h2'), unit: html('span', { class: 'unit' }), number: html('p', { class: 'number' }), first: html('span'), unitToo: html('span', { class: 'unit-too' }), second: html('p', { class: 'second' }) };
  parts.title = open ? html('button', { type: 'button', class: 'plain', 'aria-haspopup': 'dialog', onclick: open }) : html('span');
  parts.name.append(parts.title, ' ', parts.unit);
  return { parts, node: html('div', { class: `figure ${kind} digits-${digits}` }, parts.name, parts.number, html('p', { class: 'first' }, parts.unitToo, parts.first), parts.second) };
}

function write({ parts, node }, said) {
  node.classList.toggle('nothing', !said);
  if (!said) return;
  const set = (part, words) => { if (part.textContent !== words) part.textContent = words; };
  set(parts.title, said.name); set(parts.unit, said.unit); set(parts.unitToo, said.unit ? `${said.unit} ${said.first.startsWith('±') ? '' : '· '}` : ''); set(parts.number, said.number); set(parts.first, said.first); set(parts.second, said.second);
  node.classList.toggle('old', said.old === true);
  node.classList.toggle('off', said.off === true);
}

/** A furnace is given room for its glass until the service has said that it has no pot. */
const hasGlass = appliance => appliance.kind === 'furnace' && pots.get(appliance.id) !== null;
const ASKING = name => ({ name, unit: '', number: '…', first: '', second: '', old: false, off: true });

function writeNumbers() {
  for (const appliance of fires()) {
    const c = columns.get(appliance.id);
    if (!c) return drawAll();
    write(c.figures[0], temperatureOf(appliance));
    if (c.figures[1]) write(c.figures[1], pots.has(appliance.id) ? glassOf(pots.get(appliance.id)) : ASKING('Glass'));
  }
  const home = columns.get('house');
  if (home) { write(home.figures[0], moneyOf() ?? (shop.lastHour === undefined ? ASKING('Money') : null)); write(home.figures[1], gasOf()); }
  fillTroubles(id('troubles'), pots);
}

function drawAll() {
  build();
  writeNumbers();
  drawPictures();
  writeTable();
}

function drawPictures() {
  if (!fires().length) return;
  if (wall.matches) drawWall(); else drawPhone();
}

function drawWall() {
  const shopBox = id('shop').getBoundingClientRect(), figures = id('appliances').querySelector('.figure:not(.money)')?.getBoundingClientRect();
  if (!figures || shopBox.width < 10) return;
  const roomHeight = figures.top - shopBox.top - 10, places = fires().map(placeOf(shopBox));
  const room = id('room');
  room.style.height = `${roomHeight}px`;
  const points = drawRoom(room, { width: shopBox.width, height: roomHeight, places, pots, houseLeft: 0 });
  const day = id('strip'), box = day.getBoundingClientRect(), alarms = openAlarms();
  const strip = drawStrip(day, { width: box.width, height: box.height, backHours: 20, aheadHours: 12, alarms, entries, pots, onStory: e => tellStory(id('story'), e) });
  thread(alarms[0], points, strip, shopBox, box);
}

const placeOf = shopBox => appliance => {
  const box = columns.get(appliance.id).li.getBoundingClientRect();
  return { appliance, left: box.left - shopBox.left, width: box.width };
};

function thread(alarm, points, strip, shopBox, stripBox) {
  const svg = id('threads'), home = id('floor').getBoundingClientRect();
  svg.replaceChildren();
  svg.setAttribute('viewBox', `0 0 ${home.width} ${home.height}`);
  if (!alarm) return;
  const appliance = fires().find(a => a.appliance === alarm.appliance || a.id === alarm.appliance), words = id('troubles').querySelector('.trouble-mark')?.getBoundingClientRect();
  if (!words) return;
  const since = Date.parse(alarm.since), point = appliance && points.get(appliance.id), place = point?.hot, lanePlace = appliance && strip.places.get(appliance.id);
  const x = Math.max(strip.X(since), strip.left + 14), dx = stripBox.left - home.left, dy = stripBox.top - home.top;
  if (alarm.clearedAt) {
    if (lanePlace && Date.parse(alarm.clearedAt) > strip.from) drawClosedThread(svg, { priority: alarm.priority, from: x + dx, to: Math.max(x, strip.X(Date.parse(alarm.clearedAt))) + dx, top: lanePlace.y + 3 + dy, bottom: lanePlace.y + lanePlace.height - 3 + dy });
    return;
  }
  drawThread(svg, {
    priority: alarm.priority, from: [words.left + words.width / 2 - home.left, words.bottom - home.top],
    place: place ? [place[0] + shopBox.left - home.left, place[1] + shopBox.top - home.top] : null,
    moment: lanePlace ? [x + dx, lanePlace.y + lanePlace.height - 3 + dy] : null,
    ring: point?.ring, channelY: shopBox.top - home.top - 5, stripY: dy - 8, edgeX: home.width,
    gutterX: appliance ? Math.min(columns.get(appliance.id).li.getBoundingClientRect().right - home.left + 9, home.width + 12) : 0,
  });
}

function drawPhone() {
  const nowMs = now(), from = nowMs - 8 * 3600e3, to = nowMs + 4 * 3600e3, alarms = openAlarms();
  for (const appliance of fires()) {
    const { li } = columns.get(appliance.id), picture = li.querySelector('.piece'), drawn = piece(appliance, pots.get(appliance.id)), strip = li.querySelector('.lane');
    picture.setAttribute('viewBox', `${-drawn.width / 2 - 4} ${-drawn.height - 4} ${drawn.width + 8} ${drawn.height + 6}`);
    picture.replaceChildren(drawn.node);
    const width = strip.getBoundingClientRect().width || 320, X = scale(from, to, 0, width), height = 34, top = appliance.kind === 'furnace' ? 7 : 1;
    const made = lane({ ...laneOf(appliance, from, to), X, y: top, height: height - top, fromMs: from, nowMs, small: true }), g = el('g', {}, made.node);
    if (appliance.kind === 'furnace') for (const e of entries) if (['gather', 'tally'].includes(e.entry) && Date.parse(e.time) > from) g.append(gather(X(Date.parse(e.time)), 0, true));
    g.append(line(X(nowMs), 0, X(nowMs), height, 'now'));
    strip.setAttribute('viewBox', `0 0 ${width} ${height}`);
    strip.replaceChildren(g);
    const alarm = alarms.find(a => (a.appliance === appliance.appliance || a.appliance === appliance.id) && a.state !== 'returned-unacknowledged');
    li.className = `appliance ${appliance.kind}${alarm ? ` troubled t${alarm.priority}` : ''}`;
    li.style.order = alarm ? String(alarm.priority) : '9';
    strip.classList.toggle('without', !laneHas(appliance));
    const old = li.querySelector('.lane-mark');
    old?.remove();
    if (alarm && laneHas(appliance)) { const m = troubleMark(alarm.priority, 24); m.classList.add('lane-mark'); m.style.left = `${Math.max(.035, Math.min(1, (Date.parse(alarm.since) - from) / (to - from))) * 100}%`; li.append(m); }
  }
  columns.get('house').li.style.order = '99';
  id('phone-hours').style.order = '98';
  const hours = id('phone-hours'), marks = [from + 1800e3, nowMs - 4 * 3600e3, nowMs, nowMs + 2 * 3600e3];
  hours.replaceChildren(...marks.map((t, i) => html('span', { class: i === 2 ? 'is-now' : '', style: `left:${(t - from) / (to - from) * 100}%` }, i === 2 ? 'now' : time(t))));
}

const laneHas = appliance => pastOf(appliance).hot.length > 0;

function writeTable() {
  const body = id('behind-rows'), row = cells => html('tr', {}, html('th', { scope: 'row' }, cells[0]), cells.slice(1).map(c => html('td', {}, c)));
  const glass = fires().filter(a => pots.get(a.id)).map(a => { const g = glassOf(pots.get(a.id)); return row([`Glass in ${a.name}`, `${g.number} ${g.unit}, ${g.first}`, g.second]); });
  const gas = gasOf(), cost = moneyOf();
  body.replaceChildren(...fires().map(a => row([a.name, sentenceOf(a), pastWords(a)])), ...glass,
    ...(gas ? [row(['Gas', `${gas.number} ${gas.unit}, ${gas.first}`, gas.second])] : []), ...(cost ? [row([cost.name, `${cost.number} ${cost.unit} ${cost.first}`, cost.second])] : []));
  id('behind-caption').textContent = `${house()?.name ?? shop.studio.name}, ${weekday(now())} ${time(now())}`;
}

/** The ribbon of an appliance in words: the lowest and highest of every four hours. */
function pastWords(appliance) {
  const { hot } = pastOf(appliance), words = [];
  for (let k = 20; k > 0; k -= 4) {
    const part = hot.filter(p => p.t > now() - k * 3600e3 && p.t <= now() - (k - 4) * 3600e3).map(p => p.v);
    words.push(`${time(now() - k * 3600e3)}: ${part.length ? `${Math.round(Math.min(...part))} to ${Math.round(Math.max(...part))} °C` : 'no reading'}`);
  }
  return words.join('; ');
}

start();
