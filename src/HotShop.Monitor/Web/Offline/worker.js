// Opens the pages of SHELL without the service. The service is always asked first; what it does not answer comes from this version's copy.
// Answers of /api are never touched: a number that was kept must not look like a live one. VERSION and SHELL stand above, written by the service.
const CACHE = `hotshop-${VERSION}`, PATIENCE_MS = 4000;

self.addEventListener('install', event => event.waitUntil(fill().then(() => self.skipWaiting())));
self.addEventListener('activate', event => event.waitUntil(clearOld().then(() => self.clients.claim())));

async function fill() {
  const cache = await caches.open(CACHE);
  await Promise.all([...SHELL.pages, ...SHELL.assets].map(async path => {
    const answer = await fetch(path, { cache: 'no-cache', credentials: 'same-origin' });
    // Led away to the sign-in page: nothing to keep; the next visit tries again.
    if (!answer.ok || answer.redirected) throw new Error(`${path}: ${answer.status}`);
    await cache.put(path, SHELL.pages.includes(path) ? await withoutNumbers(answer) : answer);
  }));
}

/** A page brings its first numbers along in a data block: what is kept of it holds none. */
async function withoutNumbers(answer) {
  const text = (await answer.text()).replace(/(<script[^>]*id="first-state">)[^<]*/, '$1null');
  return new Response(text, { headers: answer.headers });
}

async function clearOld() {
  const names = await caches.keys();
  await Promise.all(names.filter(name => name.startsWith('hotshop-') && name !== CACHE).map(name => caches.delete(name)));
}

self.addEventListener('fetch', event => {
  const { request } = event, url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (request.mode === 'navigate') event.respondWith(page(request, url));
  else if (SHELL.assets.includes(url.pathname)) event.respondWith(asset(request, url));
});

async function page(request, url) {
  try {
    const answer = await within(fetch(request));
    if (answer.status < 500) return answer;
  } catch { /* not reached, or not in time */ }
  const known = SHELL.pages.find(p => url.pathname === p || url.pathname.startsWith(`${p}/`)), kept = await caches.match(known ?? SHELL.pages[0], { cacheName: CACHE });
  if (known && kept) return kept;
  return kept ? Response.redirect(SHELL.pages[0], 302) : Response.error();
}

async function asset(request, url) {
  try {
    const answer = await within(fetch(request));
    if (answer.ok || answer.status === 304) return answer;
  } catch { /* as above */ }
  return await caches.match(url.pathname, { cacheName: CACHE }) ?? fetch(request);
}

function within(promise) {
  return Promise.race([promise, new Promise((_, refuse) => setTimeout(() => refuse(new Error('too slow')), PATIENCE_MS))]);
}
