// The offline worker, first part: the store of this version. In front of it the build writes KEPT: a version; of every file address,
// sha-256, bytes to load, and whether it has a compressed twin that is loaded in its place; and of each file ending in .gz the sha-256 of
// what is in it. The parts of this folder are one script in the end.
//
// It stores all files or none: it begins to serve when its store is whole. What is in a store already stays, and the next try
// goes on from there. Every file is checked against its hash; what came compressed is kept ready for use.
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
// What a store says of itself; no file of the pages has these names.
const LIST = "app/list.json"; // KEPT, and since when all of it is there
const MARK = "app/mark.json"; // the pages write it (marks.js), and a new version takes it over
const AT_ONCE = 4;
const held = new Map(); // stores by their names, so that they stay open
const others = async () => (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== STORE);
const readIn = async (cache, address) => (await cache.match(urlOf(address)))?.json();
const writeIn = (cache, address, value) => cache.put(urlOf(address), new Response(JSON.stringify(value)));

/** Opened afresh each time: what was opened before does not notice that a store was thrown away. */
async function opened(name = STORE) {
  const cache = await caches.open(name);
  held.set(name, cache);
  return cache;
}

/** Let go as well: what is still open stays on the device. */
async function thrownAway(name) {
  held.delete(name);
  await caches.delete(name);
}

/** Which of these files are in a store. */
async function thereIn(cache, files) {
  const there = new Set((await cache.keys()).map((request) => request.url));
  return new Set(files.map(([address]) => urlOf(address)).filter((url) => there.has(url)));
}

async function storeAll(tries = 2) {
  const cache = await opened();
  const there = await thereIn(cache, KEPT.files);
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
  const all = (await thereIn(cache, KEPT.files)).size;
  if (all < KEPT.files.length) {
    if (tries > 1) return storeAll(tries - 1);
    await tell(all, "not-loaded");
    throw new Error("what was stored is not there any more");
  }
  if (missing.length > 0 || !(await readIn(cache, LIST))) await writeIn(cache, LIST, { ...KEPT, since: Date.now() });
  return undefined;
}

async function put(address, response) {
  const cache = await opened();
  await cache.delete(urlOf(address)); // the ghost, see above
  await cache.put(urlOf(address), response);
}

/** Where the files of other versions lie, by the hash that they had when they were stored: what has not changed is not loaded again. */
async function formerFiles() {
  const found = new Map();
  for (const name of await others()) {
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
    const whole = kept.headers.has(INFLATED);
    const bytes = await kept.arrayBuffer();
    if ((await sha256(bytes)) === (whole ? KEPT.inside[address] : hash)) {
      if (whole) headers[INFLATED] = "yes";
      return new Response(bytes, { headers });
    }
  }
  const unpacked = twin ? await fromTwin(hash) : null;
  if (unpacked) return new Response(unpacked, { headers });
  const response = await loaded(address, { integrity: intact(hash, KEPT.inside[address]), cache: "no-cache" });
  if (!address.endsWith(".gz")) return new Response(await response.blob(), { headers });
  headers[INFLATED] = "yes";
  return new Response(await inflated(await response.arrayBuffer()), { headers });
}

/** The hash of a file as `integrity` takes it: some servers unpack what ends in .gz and say so, and then it is that of its inside. */
function intact(hash, inside) {
  return [hash, ...(inside ? [inside] : [])].map((one) => `sha256-${base64(one)}`).join(" ");
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
    return (await sha256(bytes)) === hash ? bytes : null;
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

/** In hexadecimal, as the list has it. */
async function sha256(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** As `integrity` takes it. */
function base64(hash) {
  return btoa(String.fromCharCode(...hash.match(/../g).map((pair) => parseInt(pair, 16))));
}
