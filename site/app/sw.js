// The offline worker. In front of it the build writes KEPT: a version; of every file address, sha-256, bytes to load, and whether it
// has a compressed twin that is loaded in its place; and of each file ending in .gz the sha-256 of what is in it.
//
// It stores all files or none: it begins to serve when its store is whole. What is in a store already stays, and the next try
// goes on from there. Every file is checked against its hash; what came compressed is kept ready for use. A new version is
// stored beside the old one, which serves on until a person wants the new one, or until no page is open any more. What a browser
// has thrown away since comes from the host, and only as it was.
//
// One engine (WebKit, in a window that leaves nothing on the disk) forgets what a store holds as soon as nobody has it open,
// and keeps a ghost of each file: not there for reading, yet in the way of storing it again. So this worker and every page
// hold the store open, and a file that is missing is deleted before it is put.

const SCOPE = self.registration.scope;
const OURS = `wedgework ${SCOPE} `; // several copies on one host do not touch each other
const STORE = OURS + KEPT.version;
const urlOf = (address) => new URL(address, SCOPE).href;
const HASH = "x-sha256";
const INFLATED = "x-inflated";
const SINCE = "app/stored-since.json"; // no file has this name
const MARK = "app/mark.json"; // nor this one: the pages write it (marks.js), and a new version takes it over
const AT_ONCE = 4;
const HASHES = new Map(KEPT.files.map(([address, hash]) => [urlOf(address), hash]));
// Versions do not mix. Where the store has lost a file and the host has another version by now, the next pages come from the host with
// all that they load; in a page of this version the file does not come, which the page says.
let astray = false;
const strangers = new Set(); // pages and workers of the other version
let held; // the store, so that it stays open
const openStore = async () => (held = await caches.open(STORE));

self.addEventListener("install", (event) => event.waitUntil(storeAll()));

self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

self.addEventListener("message", (event) => {
  const [port] = event.ports;
  if (event.data === "use") self.skipWaiting();
  if (event.data === "whole?") event.waitUntil(stored().then((there) => port.postMessage(progress(there.size))));
  if (event.data === "mend") event.waitUntil(mend().then((whole) => port.postMessage(JSON.stringify({ whole }))));
  if (event.data === "list") event.waitUntil(list().then((told) => port.postMessage(JSON.stringify(told))));
});

let mending;

/** What was lost since, because the browser or a person made room, is loaded again; true when all is there. */
function mend() {
  mending ??= storeAll().then(
    () => true,
    () => false,
  );
  return mending.finally(() => (mending = undefined));
}

/** Every file of this version: address, sha-256, bytes to load, whether it is there; and since when all was. */
async function list() {
  const there = await stored();
  const cache = await openStore();
  const since = await (await cache.match(urlOf(SINCE)))?.json();
  const files = KEPT.files.map(([address, hash, bytes]) => [address, hash, bytes, there.has(urlOf(address))]);
  return { version: KEPT.version, made_by: KEPT.made_by, store: STORE, since: since ?? null, files };
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(SCOPE)) event.respondWith(serve(event));
});

const progress = (done) => JSON.stringify({ done, all: KEPT.files.length, version: KEPT.version, made_by: KEPT.made_by, scope: SCOPE, store: STORE });

async function stored() {
  const cache = await openStore();
  const there = new Set((await cache.keys()).map((request) => request.url));
  return new Set(KEPT.files.map(([address]) => urlOf(address)).filter((url) => there.has(url)));
}

async function storeAll(tries = 2) {
  const there = await stored();
  const former = await formerFiles();
  const missing = KEPT.files.filter(([address]) => !there.has(urlOf(address)));
  let done = KEPT.files.length - missing.length;
  await tell(done);
  const row = missing.values();
  const work = async () => {
    for (const file of row) {
      await put(file[0], await fetched(file, former));
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
  // Looked at afresh: one engine was seen to lose what an earlier try had stored while this one went on.
  const all = (await stored()).size;
  if (all < KEPT.files.length) {
    if (tries > 1) return storeAll(tries - 1);
    await tell(all, "not-loaded");
    throw new Error("what was stored is not there any more");
  }
  if (missing.length > 0) await put(SINCE, new Response(JSON.stringify(Date.now())));
  return undefined;
}

async function put(address, response) {
  const cache = await openStore();
  await cache.delete(urlOf(address)); // the ghost, see above
  await cache.put(urlOf(address), response);
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

/** A response of our own: one that was fetched may remember a detour, and then it could not answer a visit. */
async function fetched([address, hash, , twin], former) {
  const old = former.get(hash);
  const kept = old && (await old.cache.match(old.request));
  const headers = { "Content-Type": typeOf(address), [HASH]: hash };
  if (kept) {
    if (kept.headers.has(INFLATED)) headers[INFLATED] = "yes";
    return new Response(await kept.blob(), { headers });
  }
  const unpacked = twin ? await fromTwin(hash) : null;
  if (unpacked) return new Response(unpacked, { headers });
  const response = await loaded(address, { integrity: intact(urlOf(address)), cache: "no-cache" });
  if (!address.endsWith(".gz")) return new Response(await response.blob(), { headers });
  headers[INFLATED] = "yes";
  return new Response(await inflated(await response.arrayBuffer()), { headers });
}

/** The hash of a file as `integrity` takes it: some servers unpack what ends in .gz and say so, and then it is that of its inside. */
function intact(url) {
  const inside = KEPT.inside[url.slice(SCOPE.length)];
  return [HASHES.get(url), ...(inside ? [inside] : [])].map((hash) => `sha256-${base64(hash)}`).join(" ");
}

async function loaded(address, how) {
  const response = await fetch(urlOf(address), how);
  if (!response.ok) {
    await response.arrayBuffer(); // what is left unread keeps its place in the line: after three of them nothing is loaded any more
    throw new Error(`${address}: ${response.status}`);
  }
  return response;
}

/** What the compressed twin holds, if it is there and what it should be; null leaves it to the file itself. */
async function fromTwin(hash) {
  try {
    const response = await loaded(`kept/${hash.slice(0, 20)}.gz`, { cache: "no-cache" });
    const bytes = await inflated(await response.arrayBuffer());
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return btoa(String.fromCharCode(...digest)) === base64(hash) ? bytes : null;
  } catch {
    return null;
  }
}

/** What is not compressed any more is taken as it is. */
async function inflated(buffer) {
  const [first, second] = new Uint8Array(buffer, 0, 2);
  if (first !== 0x1f || second !== 0x8b) return buffer;
  return new Response(new Blob([buffer]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
}

const TYPES = {
  css: "text/css; charset=utf-8",
  html: "text/html; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  json: "application/json",
  mjs: "text/javascript; charset=utf-8",
  png: "image/png",
  svg: "image/svg+xml",
  txt: "text/plain; charset=utf-8",
  wasm: "application/wasm",
  "wasm.gz": "application/wasm", // kept inflated
  webmanifest: "application/manifest+json",
  xml: "application/xml",
};

function typeOf(address) {
  if (address === "" || address.endsWith("/")) return TYPES.html;
  const ending = /\.(wasm\.gz|[^.]+)$/.exec(address)?.[1];
  return TYPES[ending] ?? "application/octet-stream";
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
    if (!name.startsWith(OURS) || name === STORE) continue;
    const mark = await (await caches.open(name)).match(urlOf(MARK));
    if (mark) await put(MARK, mark);
    await caches.delete(name);
  }
  await self.clients.claim();
}

async function serve({ request, clientId, resultingClientId }) {
  const asked = new URL(request.url);
  const address = (asked.origin + asked.pathname).replace(/\/index\.html$/, "/");
  const cache = await openStore();
  const visit = request.mode === "navigate";
  if (visit ? astray : strangers.has(clientId)) {
    const theirs = await fetch(request).catch(() => null);
    if (theirs?.ok) {
      if (resultingClientId) strangers.add(resultingClientId); // a page, or a worker of one
      return theirs;
    }
  }
  const kept = await cache.match(address);
  if (kept) return kept;
  if (visit && (await cache.match(`${address}/`))) return Response.redirect(`${address}/${asked.search}`);
  try {
    if (!HASHES.has(address)) return await fetch(request);
    const right = await fetch(address, { integrity: intact(address), cache: "no-cache" }).catch(() => null);
    if (right?.ok) return right;
    const theirs = await fetch(request);
    if (theirs.ok) astray = true;
    if (!visit) return Response.error();
    strangers.add(resultingClientId);
    return theirs;
  } catch (fault) {
    const missing = visit && (await cache.match(urlOf("404.html")));
    if (missing) return new Response(await missing.blob(), { status: 404, headers: missing.headers });
    throw fault;
  }
}
