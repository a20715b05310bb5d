// Sentences by key, with words put in. They come from the core's say room; the build writes sentences.js.

import { LANGUAGE } from "./places.js";
import english from "./sentences.js";

let sentences = english;

/** Those of another language; a page that speaks it loads them in its head, before any other script of ours runs. */
export function useSentences(others) {
  sentences = others;
}

/** The sentence under `key`; `{name}` in it becomes `values.name`. An unknown key is a mistake in these scripts. */
export function say(key, values = {}) {
  const sentence = sentences[key];
  if (typeof sentence !== "string") throw new Error(`no sentence ${key}`);
  return filledIn(sentence, values);
}

const plurals = new Intl.PluralRules(LANGUAGE);

/** The one of two sentences under `key` that fits the number `n`, which is `{n}` in it. */
export function sayN(key, n, values = {}) {
  const [one, others] = sentences[key];
  return filledIn(plurals.select(n) === "one" ? one : others, { ...values, n });
}

const filledIn = (sentence, values) => sentence.replace(/\{(\w+)\}/g, (_, name) => String(values[name]));

/** A number with so many digits after the decimal mark of the page's language. */
export function number(value, digits = 0) {
  return value.toLocaleString(LANGUAGE, { minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false });
}

/** A number with as many digits after the mark as it needs, at most two: 12, 12.5. */
export function short(value) {
  return value.toLocaleString(LANGUAGE, { maximumFractionDigits: 2, useGrouping: false });
}

/** A moment, in milliseconds, as date and time in the page's language, whatever the browser's is. */
export function moment(at) {
  return new Date(at).toLocaleString(LANGUAGE === "en" ? [] : LANGUAGE, { dateStyle: "medium", timeStyle: "short" });
}

/** A day as the page's language writes it; in English, where writers disagree, year-month-day. */
export function day(at) {
  return LANGUAGE === "en" ? new Date(at).toISOString().slice(0, 10) : new Date(at).toLocaleDateString(LANGUAGE, { dateStyle: "medium" });
}

/** An element with attributes and text or elements inside; text stays text, whatever is in it. */
export function element(tag, attributes = {}, ...inside) {
  return filled(document.createElement(tag), attributes, inside);
}

/** A button that says `key`; `kinds` are further classes. */
export function button(key, act, ...kinds) {
  const made = element("button", { type: "button", class: ["ww-button", ...kinds].join(" ") }, say(key));
  made.addEventListener("click", act);
  return made;
}

export function svg(tag, attributes = {}, ...inside) {
  return filled(document.createElementNS("http://www.w3.org/2000/svg", tag), attributes, inside);
}

function filled(made, attributes, inside) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) made.setAttribute(name, value);
  }
  made.append(...inside);
  return made;
}
