// What is done with a link once the core has made it: copied, sent, shown as a code, put into a class. One piece for the fields
// of a calculator, for the layout board and for a class.

import { element, say } from "./say.js";

/** The fragment of an address that is one of ours, with its kind before the point: w a calculator or design, c a class. */
export const OURS = /^#([wc][0-9]{1,4}\..*)$/s;
/** Characters of a fragment that the core reads; what is longer is handed to it one character too long, and refused there. */
export const LONGEST_LINK = 4096;

export const addressOf = (fragment) => `${location.origin}${location.pathname}#${fragment}`;

/** Takes the link out of the address: loading the page again must not bring it back. */
export const forgetLink = () => history.replaceState(null, "", location.pathname + location.search);

/**
 * What can be done with the link, as [[key of its words, what does it], ...]. `made()` resolves to a fragment, or to nothing once it has
 * been said why there is none; `told(...inside)` shows a sentence; `title()` is what the link is called; `help` is said with every link.
 */
export function waysToShare({ made, told, title, help, classes = true }) {
  const withLink = (does) => async () => {
    told();
    const fragment = await made();
    if (fragment) await does(fragment);
  };
  const ways = [
    ["copy-link", withLink((fragment) => copyAddress(addressOf(fragment), told, help))],
    ["show-code", withLink(async (fragment) => (await import("./share-code.js")).showCode(addressOf(fragment), { title: title(), told, help }))],
  ];
  if (navigator.share) ways.push(["send-link", withLink((fragment) => send(addressOf(fragment), title(), told, help))]);
  if (classes) ways.push(["class-put", withLink(async (fragment) => (await import("./class-put.js")).putIntoClass(fragment, told))]);
  return ways;
}

async function copyAddress(address, told, help) {
  try {
    await navigator.clipboard.writeText(address);
    told(say("app.link-copied"), " ", help);
  } catch {
    byHand(address, told, help);
  }
}

function byHand(address, told, help) {
  const field = element("input", { type: "text", readonly: true, class: "ww-link", "aria-label": say("app.copy-link"), value: address });
  told(say("app.link-by-hand"), " ", field, " ", help);
  field.select();
}

/** With what the device has for it. */
async function send(url, title, told, help) {
  try {
    await navigator.share({ title, url });
    told(say("app.link-sent"), " ", help);
  } catch (fault) {
    if (fault?.name === "AbortError") return; // closed by the person
    byHand(url, told, help); // too much time since the tap, or nothing to send it with
  }
}
