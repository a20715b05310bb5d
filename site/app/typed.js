// What stands in the fields, kept in this tab while the page loads again for a new version.

const KEY = `wedgework.typed ${location.pathname}`;

const named = (form) => [...form.elements].filter((control) => control.name);

/** Keeps what is in every form of the page. */
export function keepTyped() {
  const forms = [...document.querySelectorAll("form[data-calculator]")];
  const typed = forms.map((form) => [form.dataset.calculator, Object.fromEntries(named(form).map(({ name, value }) => [name, value]))]);
  try {
    if (forms.length > 0) sessionStorage.setItem(KEY, JSON.stringify(Object.fromEntries(typed)));
  } catch {
    // nothing is kept here
  }
}

/** What was kept for this page, by calculator and field; once. */
export function takeTyped() {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEY)) ?? {};
    sessionStorage.removeItem(KEY);
    return kept;
  } catch {
    return {};
  }
}
