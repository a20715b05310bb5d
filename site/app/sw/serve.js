// The offline worker, last part: what it does when the browser or a page calls. Every page and every file comes out of the store of the
// version in use. What a browser has thrown away since comes from the host, and only as it was.

// Versions do not mix. Where the store has lost a file and the host has another version by now, the next pages come from the host with
// all that they load; in a page of this version the file does not come, which the page says.
let astray = false;
const GONE = new Set([404, 410]); // what a host says of a file that it does not have; another word may pass
const strangers = new Set(); // pages and workers of the other version

self.addEventListener("install", (event) => event.waitUntil(storeAll()));

self.addEventListener("activate", (event) => event.waitUntil(begin()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(SCOPE)) event.respondWith(serve(event));
});

const WORDS = {
  "whole?": async () => {
    const used = await inUse();
    return progress((await thereIn(await opened(used.name), used.files)).size, used);
  },
  // Every file of the version in use: address, sha-256, bytes to load, whether it is there, sha-256 of its inside; and since when all was.
  list: async () => {
    const used = await inUse();
    const cache = await opened(used.name);
    const there = await thereIn(cache, used.files);
    const { since = null } = (await readIn(cache, LIST)) ?? {};
    const files = used.files.map(([address, hash, bytes]) => [address, hash, bytes, there.has(urlOf(address)), used.inside[address]]);
    return { ...progress(there.size, used), since, files };
  },
  mend: async () => ({ whole: await mend() }),
  use: async () => {
    await useThis();
    await self.skipWaiting();
    return {};
  },
};

self.addEventListener("message", (event) => {
  const [port] = event.ports;
  const answer = WORDS[event.data]?.();
  if (answer) event.waitUntil(answer.then((told) => port?.postMessage(JSON.stringify(told))));
});

let mending;

/** What was lost since, because the browser or a person made room, is loaded again, or this version is used; true when all is there. */
function mend() {
  mending ??= inUse()
    .then(({ name }) => (name === STORE ? storeAll() : undefined))
    .then(useThis)
    .then(
      () => true,
      () => false,
    );
  return mending.finally(() => (mending = undefined));
}

/** `newer` is the version that waits for a person to want it, though its worker serves already. */
function progress(done, { files, version, made_by, name }) {
  return { done, all: files.length, version, made_by, scope: SCOPE, store: name, newer: name === STORE ? null : KEPT.version };
}

async function tell(done, why = "") {
  const message = JSON.stringify({ ...progress(done, { ...KEPT, name: STORE }), why });
  for (const page of await openPages()) page.postMessage(message);
}

async function serve(event) {
  const { request, clientId, resultingClientId } = event;
  const asked = new URL(request.url);
  const address = (asked.origin + asked.pathname).replace(/\/index\.html$/, "/");
  const used = await inUse();
  const cache = await opened(used.name);
  const visit = request.mode === "navigate";
  if (visit) event.waitUntil(sweep());
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
    if (!used.hashes.has(address)) return (await fromAnother(address)) ?? (await fetch(request));
    const right = await fetch(address, { integrity: intact(...used.hashes.get(address)), cache: "no-cache" }).catch(() => null);
    if (right?.ok) return right;
    if (used.name !== STORE) {
      await useThis();
      return visit ? await serve(event) : Response.error();
    }
    const theirs = await fetch(request);
    if (theirs.ok || GONE.has(theirs.status)) astray = true;
    if (!visit) return Response.error();
    strangers.add(resultingClientId);
    return theirs;
  } catch (fault) {
    const missing = visit && (await cache.match(urlOf("404.html")));
    if (missing) return new Response(await missing.blob(), { status: 404, headers: missing.headers });
    throw fault;
  }
}

/** What the version in use does not have: for a page that is new in this one, or is still open from the one before. */
async function fromAnother(address) {
  for (const name of [STORE, ...retired]) {
    const kept = await (await opened(name)).match(address);
    if (kept) return kept;
  }
  return undefined;
}
