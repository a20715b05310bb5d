// What stands in the fields, kept in this tab while the page loads again for a new version or another page is opened with it.

const KEY = "wedgework.typed ";
const FROM = "wedgework.from ";

const named = (form) => [...form.elements].filter((control) => control.name);

/** Keeps what is in every form of the page. */
export function keepTyped() {
  const forms = [...document.querySelectorAll("form[data-calculator]")];
  const typed = forms.map((form) => [form.dataset.calculator, Object.fromEntries(named(form).map(({ name, value }) => [name, value]))]);
  if (forms.length > 0) handTyped(location.pathname, Object.fromEntries(typed));
}

/** Keeps texts for the page at `path`, by calculator and field, and where they come from; false where nothing can be kept. */
export function handTyped(path, typed, from = "") {
  try {
    if (sessionStorage.onlyHere) return false; // see the page's head
    sessionStorage.setItem(KEY + path, JSON.stringify(typed));
    if (from) sessionStorage.setItem(FROM + path, from);
    return true;
  } catch {
    return false; // nothing is kept here
  }
}

/** What was kept for this page, by calculator and field; once. */
export function takeTyped() {
  return parsed(taken(KEY)) ?? {};
}

/** The title of the page that what was kept came from, or nothing; once. */
export function takenFrom() {
  return taken(FROM) ?? "";
}

function taken(key) {
  try {
    const kept = sessionStorage.getItem(key + location.pathname);
    sessionStorage.removeItem(key + location.pathname);
    return kept;
  } catch {
    return null;
  }
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
