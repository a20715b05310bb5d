// The offline worker, second part: which version is in use. A new one is stored beside it and waits until a person wants it. The browser
// begins the new version's worker by itself as soon as no page is open any more, which on a tablet is often, and perhaps in the middle
// of a piece: that worker then serves the version in use out of its store, whole as it is.
//
// Each store says of itself whether it is in use (true), or was and is out of use (false): pages of it may still be open and load
// what they need, so it goes when no page is open. What was never in use says nothing.

const IN_USE = "app/in-use.json";
let found; // a promise of the version in use
let retired = []; // stores out of use, with pages perhaps

/** The version in use: its list, the name of its store, and of each address its file's sha-256 and that of its inside, if it has one. */
function inUse() {
  found ??= findInUse();
  found.catch(() => (found = undefined));
  return found;
}

async function findInUse() {
  let used = { ...KEPT, name: STORE };
  retired = [];
  for (const name of await others()) {
    const cache = await opened(name);
    const said = await readIn(cache, IN_USE);
    if (said === false) retired.push(name);
    if (!said) continue;
    const list = await readIn(cache, LIST);
    // One that has lost something would be pages of two versions with the next.
    if (list && (await thereIn(cache, list.files)).size === list.files.length) used = { ...list, name };
  }
  return { ...used, hashes: new Map(used.files.map(([address, hash]) => [urlOf(address), [hash, used.inside[address]]])) };
}

/** This version from now on. Where there is no room even to say so, the other one says at least that it is not in use. */
async function useThis() {
  const { name } = await inUse();
  if (name !== STORE) await takeMark(name);
  await writeIn(await opened(), IN_USE, true).catch(() => {});
  const former = await opened(name);
  if (name !== STORE) await writeIn(former, IN_USE, false).catch(() => former.delete(urlOf(IN_USE)));
  found = undefined;
  await inUse();
}

/** The pages' mark says what lay on this device, whatever the version; without it they would miss what is there. */
async function takeMark(name) {
  const mark = await readIn(await opened(name), MARK);
  if (mark) await writeIn(await opened(), MARK, mark).catch(() => {});
}

/** The worker begins. What neither is in use nor may have a page open goes: stores of before they said whether they are in use, too. */
async function begin() {
  const { name: used } = await inUse();
  if (used === STORE) await useThis();
  const pages = await openPages();
  for (const name of await others()) {
    const page = pages.length > 0 && retired.includes(name);
    if (name === used || page) continue;
    if (used === STORE && !(await readIn(await opened(), MARK))) await takeMark(name);
    await thrownAway(name);
  }
  found = undefined;
  await self.clients.claim();
}

const openPages = async () => (await self.clients.matchAll({ includeUncontrolled: true, type: "window" })).filter((page) => page.url.startsWith(SCOPE));

/** To be called when a page is about to come. */
async function sweep() {
  if (retired.length === 0 || (await openPages()).length > 0) return;
  for (const name of retired.splice(0)) await thrownAway(name);
}
