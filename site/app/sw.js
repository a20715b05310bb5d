// The offline worker. In front of it the build writes KEPT: a version, and address, sha-256 and bytes of every file.
//
// It stores all files or none: a store that is not whole is never served from, but what is in it already stays, and the
// next try goes on from there. Every file is checked against its hash. A new version is stored beside the old one,
// which serves on until a person wants the new one.

const SCOPE = self.registration.scope;
const OURS = `wedgework ${SCOPE} `; // several copies on one host do not touch each other
const STORE = OURS + KEPT.version;
const HASH = "x-sha256";
const AT_ONCE = 4;
const urlOf = (address) => new URL(address, SCOPE).href;

self.addEventListener("install", (event) => event.waitUntil(storeAll()));

self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

self.addEventListener("message", (event) => {
  if (event.data === "use") self.skipWaiting();
  if (event.data === "whole?") event.waitUntil(stored().then((there) => event.ports[0].postMessage(progress(there.size))));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(SCOPE)) event.respondWith(serve(request));
});

const progress = (done) => JSON.stringify({ done, all: KEPT.files.length, version: KEPT.version, made_by: KEPT.made_by });

async function stored() {
  const cache = await caches.open(STORE);
  const there = new Set((await cache.keys()).map((request) => request.url));
  return new Set(KEPT.files.map(([address]) => urlOf(address)).filter((url) => there.has(url)));
}

async function storeAll() {
  const cache = await caches.open(STORE);
  const there = await stored();
  const former = await formerFiles();
  const missing = KEPT.files.filter(([address]) => !there.has(urlOf(address)));
  let done = KEPT.files.length - missing.length;
  await tell(done);
  const row = missing.values();
  const work = async () => {
    for (const [address, hash] of row) {
      await cache.put(urlOf(address), await fetched(urlOf(address), hash, former));
      done += 1;
      await tell(done);
    }
  };
  const results = await Promise.allSettled(Array.from({ length: AT_ONCE }, work));
  const failed = results.find((result) => result.status === "rejected");
  if (failed) {
    const why = failed.reason?.name === "QuotaExceededError" ? "no-room" : "not-loaded";
    await tell(done, why);
    throw failed.reason;
  }
}

/** Where the files of other versions lie, by their hash: what has not changed is not loaded again. */
async function formerFiles() {
  const found = new Map();
  for (const name of await caches.keys()) {
    if (!name.startsWith(OURS) || name === STORE) continue;
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const hash = (await cache.match(request))?.headers.get(HASH);
      if (hash) found.set(hash, { cache, request });
    }
  }
  return found;
}

async function fetched(url, hash, former) {
  const old = former.get(hash);
  const response =
    (old && (await old.cache.match(old.request))) ?? (await fetch(url, { integrity: `sha256-${base64(hash)}`, cache: "no-cache" }));
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  // A response of our own: the other one may remember a detour, and then it could not answer a visit.
  const headers = { "Content-Type": response.headers.get("Content-Type") ?? "application/octet-stream", [HASH]: hash };
  return new Response(await response.blob(), { headers });
}

function base64(hash) {
  return btoa(String.fromCharCode(...hash.match(/../g).map((pair) => parseInt(pair, 16))));
}

async function tell(done, why = "") {
  const message = JSON.stringify({ ...JSON.parse(progress(done)), why });
  for (const page of await self.clients.matchAll({ includeUncontrolled: true, type: "window" })) {
    if (page.url.startsWith(SCOPE)) page.postMessage(message);
  }
}

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && name !== STORE) await caches.delete(name);
  }
  await self.clients.claim();
}

async function serve(request) {
  const asked = new URL(request.url);
  const address = (asked.origin + asked.pathname).replace(/\/index\.html$/, "/");
  const cache = await caches.open(STORE);
  const kept = await cache.match(address);
  if (kept) return kept;
  const visit = request.mode === "navigate";
  if (visit && (await cache.match(`${address}/`))) return Response.redirect(`${address}/${asked.search}`);
  try {
    return await fetch(request);
  } catch (fault) {
    const missing = visit && (await cache.match(urlOf("404.html")));
    if (missing) return new Response(await missing.blob(), { status: 404, headers: missing.headers });
    throw fault;
  }
}
