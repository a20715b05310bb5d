// How the engine started here the last time, kept for the page that tells about this copy. Losing it does no harm.

// Copies on one host do not touch each other.
const KEY = `wedgework.start ${new URL("../", import.meta.url).pathname}`;

/** `way` is "quick" or "plain", of which `fault` says why the quick one was left; or "none", and why it did not start at all. */
export function noteStart(way, fault = "") {
  try {
    localStorage.setItem(KEY, JSON.stringify({ way, fault: String(fault).slice(0, 500), at: Date.now() }));
  } catch {
    // nothing is kept here
  }
}

/** The last start: {way, fault, at}; null where none is known. */
export function lastStart() {
  try {
    return JSON.parse(localStorage.getItem(KEY));
  } catch {
    return null;
  }
}
