// What the frame of a page does beside showing itself: colours, drawer, the title above a scrolled page, where one is in the
// contents, keys, and search once somebody reaches for it (search.js). The theme's own script did all this and much more;
// on a weak tablet it held every page for a fifth of a second. Its styles and its names in the page are used as they are.

const root = document.documentElement;
const HEADER = 49; // px, the height of the bar that stays
const EVERYTHING = 1_000_000; // px, more than any page is high
const AT_THE_SIDE = "(min-width: 76.25em)"; // where the theme shows the navigation beside the page
const VEILED = ".ww-part, .core-format, .pattern > section"; // see parts.css
const SEARCH = new Set(["f", "s", "/"]);
const NEIGHBOUR = { p: "prev", ",": "prev", n: "next", ".": "next" };

/** Brings the frame to life. */
export function liveFrame() {
  root.classList.replace("no-js", "js");
  colours();
  title();
  contents();
  codes();
  search();
  addEventListener("keydown", key);
  addEventListener("hashchange", arrive);
  document.addEventListener("change", said);
  document.addEventListener("mouseover", ellipsis, { passive: true });
  onPaper();
  if (location.hash) arrive();
  if (document.readyState === "complete") calm(unveil);
  else addEventListener("load", () => calm(unveil), { once: true });
  toggle("drawer").addEventListener("change", () => setTimeout(here, 0));
  if (matchMedia(AT_THE_SIDE).matches) calm(here);
}

/** When nothing else is to be done, in a task of its own. */
function calm(act) {
  if (typeof requestIdleCallback === "function") requestIdleCallback(act);
  else setTimeout(act, 50);
}

/** What the styles leave out while it is out of sight, brought out one by one: nothing then moves when one scrolls there. */
function unveil() {
  const veiled = [...document.querySelectorAll(VEILED)].values();
  const next = () => {
    const { value, done } = veiled.next();
    if (done) return;
    value.style.contentVisibility = "visible";
    calm(next);
  };
  next();
}

// -- Colours. Without a choice they are those of the system, and change with it; the head of the page sets them first.

function colours() {
  const inputs = [...document.querySelectorAll("[data-md-component=palette] input")];
  if (inputs.length === 0) return;
  const light = matchMedia(inputs[0].dataset.mdColorMedia);
  const theme = document.createElement("meta");
  theme.name = "theme-color";
  let at = 0;
  const show = (index) => {
    at = index;
    inputs.forEach((input, i) => {
      input.checked = i === index;
      input.nextElementSibling.hidden = i !== index;
    });
    calm(() => {
      theme.content = getComputedStyle(document.querySelector(".md-header")).backgroundColor;
      if (!theme.isConnected) document.head.append(theme);
    });
  };
  const wear = (index) => {
    const { body } = document;
    body.dataset.mdColorSwitching = "";
    Object.assign(body.dataset, colourOf(inputs[index]));
    setTimeout(() => delete body.dataset.mdColorSwitching);
    show(index);
  };
  const own = () => Math.max(0, inputs.findIndex((input) => matchMedia(input.dataset.mdColorMedia).matches));
  const kept = globalThis.__md_get("__palette")?.index;
  show(Math.min(kept ?? own(), inputs.length - 1));
  inputs.forEach((input, index) => input.addEventListener("change", () => {
    const { mdColorMedia: media, mdColorScheme: scheme, mdColorPrimary: primary, mdColorAccent: accent } = colourOf(input);
    globalThis.__md_set("__palette", { index, color: { media, scheme, primary, accent } });
    wear(index);
  }));
  light.addEventListener("change", () => globalThis.__md_get("__palette") || wear(own()));
  inputs[0].form.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    const next = inputs[(at + 1) % inputs.length];
    next.click();
    next.focus();
  });
}

const colourOf = ({ dataset: { mdColorMedia, mdColorScheme, mdColorPrimary, mdColorAccent } }) => ({ mdColorMedia, mdColorScheme, mdColorPrimary, mdColorAccent });

// -- What follows the scrolling. Nothing here listens to it: the browser says when a heading passes a line.

/** Calls `tell(element, passed)` when an element goes above a line, or comes back below it. */
function passing(elements, line, tell) {
  const watch = new IntersectionObserver((seen) => {
    for (const { target, isIntersecting } of seen) tell(target, isIntersecting);
  }, { rootMargin: `${EVERYTHING}px 0px ${line} 0px` });
  for (const one of elements) watch.observe(one);
}

/** The bar shows the name of the page once its heading is gone. */
function title() {
  const bar = document.querySelector(".md-header__title");
  const heading = document.querySelector(".md-content h1");
  if (!bar || !heading) return;
  const watch = new IntersectionObserver(([{ isIntersecting }]) => bar.classList.toggle("md-header__title--active", !isIntersecting), {
    rootMargin: `-${HEADER}px 0px ${EVERYTHING}px 0px`,
  });
  watch.observe(heading);
}

/** The part that one reads is marked in the contents at the side, and kept in sight there. */
function contents() {
  const links = new Map();
  for (const link of document.querySelectorAll("[data-md-component=toc] .md-nav__link")) {
    const heading = document.getElementById(decodeURIComponent(link.hash.slice(1)));
    if (heading) links.set(heading, link);
  }
  const passed = new Set();
  let marked;
  passing(links.keys(), "-80%", (heading, above) => {
    if (above) passed.add(heading);
    else passed.delete(heading);
    links.get(heading).classList.toggle("md-nav__link--passed", above);
    const last = [...links.keys()].findLast((one) => passed.has(one));
    if (links.get(last) === marked) return;
    marked?.classList.remove("md-nav__link--active");
    marked = links.get(last);
    marked?.classList.add("md-nav__link--active");
    if (marked) intoSight(marked);
  });
}

function intoSight(link) {
  const box = link.closest(".md-sidebar__scrollwrap");
  if (box && link.offsetHeight && box.scrollHeight > box.clientHeight) box.scrollTop = link.offsetTop - box.offsetTop - box.clientHeight / 2;
}

/** The page's own place in a long navigation. */
function here() {
  document.querySelectorAll(".md-sidebar--primary .md-nav__link--active[href]").forEach(intoSight);
}

/** Code that is wider than its box is scrolled by the keyboard, too. */
function codes() {
  const watch = new ResizeObserver((sizes) => {
    for (const { target } of sizes) {
      if (target.scrollWidth > target.clientWidth) target.tabIndex = 0;
      else target.removeAttribute("tabindex");
    }
  });
  for (const code of document.querySelectorAll("pre > code")) watch.observe(code);
}

/** The whole of a name that is cut short, for who points at it. */
function ellipsis({ target }) {
  const cut = target.closest?.(".md-ellipsis");
  if (cut && cut.offsetWidth < cut.scrollWidth) (cut.closest("a") ?? cut).title = cut.innerText;
}

// -- Drawer, folds, keys

const toggle = (name) => document.querySelector(`[data-md-toggle=${name}]`);

/** After a step within the page nothing covers it, and what it leads to is unfolded. */
function arrive() {
  toggle("drawer").checked = false;
  if (toggle("search").checked) toggle("search").click();
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const fold = target?.closest("details:not([open])");
  if (!fold) return;
  fold.open = true;
  fold.scrollIntoView();
}

/** A part of the navigation says whether it is open. */
function said({ target }) {
  if (!target.matches?.(".md-nav__toggle")) return;
  document.querySelector(`[aria-labelledby="${CSS.escape(target.id)}_label"]`)?.setAttribute("aria-expanded", String(target.checked));
}

function key(event) {
  if (event.metaKey || event.ctrlKey || event.isComposing || event.defaultPrevented || toggle("search").checked) return;
  const active = document.activeElement;
  const typing = active?.matches("input:not([type=radio]), select, textarea") || active?.isContentEditable;
  if (typing) return;
  if (SEARCH.has(event.key)) {
    event.preventDefault();
    const query = document.forms.search?.query;
    query?.focus();
    query?.select();
  } else if (event.key in NEIGHBOUR) {
    const there = document.querySelector(`link[rel=${NEIGHBOUR[event.key]}]`);
    if (there) location.assign(there.href);
  } else if (event.key === "Enter" && active instanceof HTMLLabelElement) {
    active.click();
  }
}

/** What is folded is printed. The newest browsers do so by the styles alone. */
function onPaper() {
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll(".md-content details:not([open])")];
    for (const fold of opened) fold.open = true;
  });
  addEventListener("afterprint", () => {
    for (const fold of opened) fold.open = false;
    opened = [];
  });
}

// -- Search: loaded when somebody reaches for it.

function search() {
  const query = document.forms.search?.query;
  if (!query) return;
  let live;
  const reach = () => (live ??= import("./search.js").then(({ liveSearch }) => liveSearch(query)));
  query.addEventListener("focus", reach);
  query.addEventListener("pointerenter", reach);
  toggle("search").addEventListener("change", reach);
  // The field is not to be seen at first on a small screen; only what a finger did may bring up the keyboard.
  document.querySelector("header label[for=__search]")?.addEventListener("click", () => query.focus());
  const asked = new URLSearchParams(location.search).get("q");
  if (asked !== null) {
    query.value = asked;
    query.focus();
    reach();
  }
}
