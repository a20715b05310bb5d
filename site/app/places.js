// Where things lie: the site's first page, and the pages in the language of the page that is shown.

export const TOP = new URL("../", import.meta.url);
export const LANGUAGE = document.documentElement.lang || "en";
export const PAGES = LANGUAGE === "en" ? TOP : new URL(`${LANGUAGE}/`, TOP);

/** Where the page of a calculator, or of the layout board, lies. */
export const pageOf = (slug) => new URL({ board: "board/", "panel-plan": "plan/" }[slug] ?? `calculators/${slug}/`, PAGES);
