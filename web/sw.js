// Keeps these pages on the device, so that they work without a signal.
//
// Everything that a page is made of has the hash of its content in its name, so a page never gets a part of another
// build. A build is kept whole or not at all. Pages are asked for anew whenever there is a connection; all else comes
// from what is kept. A new build waits until no page uses the old one any more, or until the reader says so.

const BUILD = '{{build}}';

/** Each file with the SHA-256 of its content. */
const FILES = {
  // {{files}}
};

/** Other sites of the same host have caches, too. */
const OURS = `clampwright ${registration.scope} `;
const CACHE = OURS + BUILD;

/** How long a page may take to come before the one that is kept is shown. */
const WAIT_MS = 4000;

const HASHED = /-[0-9a-f]{8,20}(_bg)?\.(css|js|svg|wasm)$/;

const hex = (bytes) => [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** A file as it has to be; what is kept of an older build is not asked for again. */
async function get(name, hash) {
  const address = new URL(name, registration.scope);
  const kept = HASHED.test(name) ? await caches.match(address) : undefined;
  const response = kept ?? (await fetch(address, { cache: 'no-cache', credentials: 'same-origin' }));
  if (!response.ok) throw new Error(`${response.status} for ${address}`);
  const body = await response.arrayBuffer();
  if (hex(await crypto.subtle.digest('SHA-256', body)) !== hash) throw new Error(`${address} is of another build`);
  // Made anew: what came by a redirect may not be shown as a page.
  return [address, new Response(body, { headers: { 'Content-Type': response.headers.get('Content-Type') ?? '' } })];
}

/** Whatever is not kept yet. */
async function keep() {
  const cache = await caches.open(CACHE);
  for (const [name, hash] of Object.entries(FILES)) {
    if (!(await cache.match(new URL(name, registration.scope)))) await cache.put(...(await get(name, hash)));
  }
}

async function install() {
  try {
    await keep();
  } catch (fault) {
    await caches.delete(CACHE);
    throw fault;
  }
}

async function forget() {
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
  }
}

/** The page that is kept for an address; hosts may leave out its ending. */
async function keptPage(address) {
  const cache = await caches.open(CACHE);
  const { origin, pathname } = new URL(address);
  for (const name of pathname.endsWith('/') ? [`${pathname}index.html`] : [pathname, `${pathname}.html`]) {
    const found = await cache.match(origin + name);
    if (found) return found;
  }
  return undefined;
}

/** A page, fresh where that is possible. */
async function page(request) {
  const fresh = fetch(request);
  const late = new Promise((then) => setTimeout(then, WAIT_MS));
  try {
    const first = await Promise.race([fresh, late]);
    // A host in trouble is as good as none.
    if (first && first.status < 500) return first;
  } catch {
    // No connection.
  }
  return (await keptPage(request.url)) ?? fresh;
}

async function part(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request)) ?? (await caches.match(request)) ?? fetch(request);
}

addEventListener('install', (event) => event.waitUntil(install()));

addEventListener('activate', (event) => event.waitUntil(forget().then(() => clients.claim())));

addEventListener('message', (event) => {
  const { data, source } = event;
  if (data === 'go') skipWaiting();
  // The browser may have thrown some of it out, or the reader had it taken off.
  if (data === 'keep') {
    event.waitUntil(
      keep().then(
        () => source.postMessage('kept'),
        () => source.postMessage('not kept'),
      ),
    );
  }
});

addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  const scope = new URL(registration.scope);
  if (request.method !== 'GET' || origin !== scope.origin || !pathname.startsWith(scope.pathname)) return;
  const name = pathname.slice(scope.pathname.length);
  if (request.mode === 'navigate') event.respondWith(page(request));
  else if (name in FILES) event.respondWith(part(request));
});
