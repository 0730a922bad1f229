// The pages without a server: a service worker that keeps one set of files whose names the build wrote in here. What the
// server says (/api, /live, health, metrics) never passes through it, so that nothing kept is ever taken for live.

const version = '__VERSION__';
const shell = __SHELL__;
const own = 'plantwatch-' + version;
const servers = ['/api', '/live', '/health', '/metrics', '/openapi'];

self.addEventListener('install', event => event.waitUntil(fill()));
self.addEventListener('activate', event => event.waitUntil(tidy().then(() => self.clients.claim())));
// A newer set waits until a page says that nothing is lost by it.
self.addEventListener('message', event => { if (event.data === 'take') void self.skipWaiting(); });

self.addEventListener('fetch', event => {
  const { request } = event, url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (servers.some(s => url.pathname === s || url.pathname.startsWith(s + '/'))) return;
  if (request.mode === 'navigate') {
    // The page and its parts are of one set, so the kept page is given even when the server is there.
    event.respondWith(url.pathname === '/' ? kept('/', request) : fetch(request).catch(() => kept('/', request)));
  } else if (shell.includes(url.pathname) || url.pathname.startsWith('/assets/')) {
    event.respondWith(kept(url.pathname, request));
  }
});

async function fill() {
  const cache = await caches.open(own);
  for (const path of shell) {
    // A name with the hash of its content is the same file in an earlier set.
    const before = path.startsWith('/assets/') ? await caches.match(path) : undefined;
    await cache.put(path, before ?? await fetched(path));
  }
}

async function fetched(path) {
  const response = await fetch(path, { cache: 'no-cache' });
  if (!response.ok || response.redirected) throw new Error(`${path}: ${response.status}`);
  return response;
}

// The set before stays: another tab may still be drawing from it.
async function tidy() {
  const sets = (await caches.keys()).filter(name => name.startsWith('plantwatch-') && name !== own);
  for (const name of sets.slice(0, -1)) await caches.delete(name);
}

async function kept(path, request) {
  const cache = await caches.open(own);
  return await cache.match(path) ?? await caches.match(path) ?? fetch(request);
}
