// Search in the words of all pages, without a server: the theme's worker finds, this shows. It is loaded when somebody
// reaches for the field. The list of words is read and put in order in the worker (search-worker.js).

import { element } from "./say.js";

const FIRST = 10; // pages that are shown at once; more when the end of the list comes near
const MORE = 6;
const SETTLED = 60; // ms after a key

/** Brings the search to life; `query` is its field. What is in it already is looked for. */
export function liveSearch(query) {
  const config = JSON.parse(document.getElementById("__config").textContent);
  const base = new URL(config.base, location);
  const words = config.translations;
  const box = query.closest("[data-md-component=search]");
  const switched = document.querySelector("[data-md-toggle=search]");
  const result = box.querySelector("[data-md-component=search-result]");
  const [said, list] = [result.firstElementChild, result.lastElementChild];
  const worker = new Worker(new URL("./search-worker.js", import.meta.url), { name: new URL(config.search, location).href });
  worker.postMessage({ index: new URL("search/search_index.json", base).href });
  let ready = false;
  let asked;
  let rest = [];

  const ask = () => {
    if (!ready || asked === query.value) return;
    asked = query.value;
    worker.postMessage({ type: 2, data: asked });
  };
  let clock = 0;
  query.addEventListener("input", () => {
    clearTimeout(clock);
    clock = setTimeout(ask, SETTLED);
  });

  worker.addEventListener("message", ({ data: { type, data } }) => {
    if (type === 1) {
      ready = true;
      said.textContent = words["search.result.placeholder"];
      ask();
    } else if (type === 3) {
      show(data.items);
    }
  });
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    box.hidden = true; // as if there were none; nothing else on the page hangs on it
  });

  function show(items) {
    if (items.length === 0) said.textContent = words[query.value ? "search.result.none" : "search.result.placeholder"];
    else if (items.length === 1) said.textContent = words["search.result.one"];
    else said.textContent = words["search.result.other"].replace("#", items.length);
    list.replaceChildren();
    rest = items;
    more(FIRST);
  }

  function more(count) {
    list.append(...rest.splice(0, count).map((pages) => item(pages, base, words)));
  }
  list.closest(".md-search__scrollwrap").addEventListener("scroll", ({ target }) => {
    if (rest.length > 0 && target.scrollTop + target.clientHeight > target.scrollHeight - 200) more(MORE);
  }, { passive: true });

  const open = (to) => {
    if (switched.checked !== to) switched.checked = to;
    list.setAttribute("role", to ? "list" : "presentation");
    list.hidden = !to;
    if (!to && new URLSearchParams(location.search).has("q")) history.replaceState({}, "", location.pathname + location.hash);
  };
  const close = () => {
    open(false);
    query.blur();
  };
  switched.addEventListener("change", () => open(switched.checked));
  // A little later, for a label that was touched changes the switch after it gave the focus.
  query.addEventListener("focus", () => setTimeout(() => document.activeElement === query && open(true), 1));
  query.form.addEventListener("submit", (event) => event.preventDefault());
  query.form.addEventListener("reset", () => {
    query.focus();
    setTimeout(ask);
  });
  box.addEventListener("click", ({ target }) => target.closest("a") && open(false));

  addEventListener("keydown", (event) => {
    const active = document.activeElement;
    if ((!switched.checked && active !== query) || event.metaKey || event.ctrlKey || event.isComposing) return;
    if (event.key === "Escape" || event.key === "Tab") {
      close();
    } else if (event.key === "Enter" && active === query) {
      event.preventDefault();
      best(list)?.click();
    } else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      event.preventDefault();
      const stops = [query, ...list.querySelectorAll(":not(details) > [href], summary, details[open] [href]")];
      const at = Math.max(0, stops.indexOf(active)) + (event.key === "ArrowUp" ? -1 : 1);
      stops.at(at % stops.length).focus();
    } else if (active !== query && event.key.length === 1) {
      query.focus();
    }
  });

  if (document.activeElement === query || switched.checked) open(true);
}

/** The link of the highest score. */
function best(list) {
  const score = (link) => Number(link.firstElementChild.dataset.mdScore);
  return [...list.querySelectorAll("[href]")].reduce((high, link) => (high && score(high) >= score(link) ? high : link), null);
}

/** One page with what was found in it: the page first, its best parts below, the others folded. */
function item(found, base, words) {
  const highest = found[0].score;
  const whole = Math.max(0, found.findIndex(({ location: there }) => !there.includes("#")));
  const parts = found.toSpliced(whole, 1);
  const split = parts.findIndex(({ score }) => score < highest);
  const good = split < 0 ? parts : parts.slice(0, split);
  const others = split < 0 ? [] : parts.slice(split);
  const made = element("li", { class: "md-search-result__item" }, link(found[whole], base, words, true, whole === 0 && good.length === 0));
  made.append(...good.map((one) => link(one, base, words, false, true)));
  if (others.length > 0) {
    const summary = words[others.length === 1 ? "search.result.more.one" : "search.result.more.other"].replace("#", others.length);
    made.append(element("details", { class: "md-search-result__more" }, element("summary", { tabindex: "-1" }, element("div", {}, summary)), ...others.map((one) => link(one, base, words, false, true))));
  }
  return made;
}

/** `text` and `title` are the build's own words with what was found marked. */
function link({ location: there, score, title, text, terms }, base, words, whole, teaser) {
  const article = element("article", { class: "md-search-result__article md-typeset", "data-md-score": score.toFixed(2) });
  if (whole) article.append(element("div", { class: "md-search-result__icon md-icon" }));
  const heading = element(whole ? "h1" : "h2");
  heading.innerHTML = title;
  article.append(heading);
  if (teaser && text) {
    const words = element("div");
    words.innerHTML = text;
    article.append(...words.childNodes);
  }
  const missing = Object.keys(terms).filter((term) => !terms[term]);
  if (teaser && missing.length > 0) {
    const gone = missing.flatMap((term) => [" ", element("del", {}, term)]);
    article.append(element("p", { class: "md-search-result__terms" }, `${words["search.result.term.missing"]}:`, ...gone));
  }
  return element("a", { href: new URL(there, base).href, class: "md-search-result__link", tabindex: "-1" }, article);
}
