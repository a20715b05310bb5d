// What Lighthouse says of some addresses, a line of JSON for each: node lighthouse.mjs SITE CATEGORIES ADDRESS...
//
// SITE is the folder with node_modules, CATEGORIES are joined by commas; CHROME_PATH names the browser. Without speed among the
// categories nothing is slowed down, and a page has two seconds to come to life. It asks nobody else: no network is used but
// that of the addresses.

import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const [folder, asked, ...addresses] = process.argv.slice(2);
const need = createRequire(`${folder}/`);
const load = (name) => import(pathToFileURL(need.resolve(name)));
const { default: lighthouse } = await load("lighthouse");
const { launch } = await load("chrome-launcher");

const quiet = ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
const categories = asked.split(",");
const atOnce = { throttlingMethod: "simulate", pauseAfterLoadMs: 2000, pauseAfterFcpMs: 0, networkQuietThresholdMs: 0, cpuQuietThresholdMs: 0, disableFullPageScreenshot: true };
const settings = { logLevel: "silent", output: "json", onlyCategories: categories, ...(categories.includes("performance") ? {} : atOnce) };
const short = (audit) => `${audit.id}: ${audit.title} ${(audit.details?.items ?? []).slice(0, 4).map((item) => JSON.stringify(item).slice(0, 300)).join(" ")}`;

const open = () => launch({ chromeFlags: quiet, logLevel: "silent" });
let browser = await open();

/** Once more in a new browser where its tab fell over, which a busy machine was seen to do: that says nothing of the page. */
async function judged(address) {
  try {
    return await lighthouse(address, { port: browser.port, ...settings });
  } catch (fault) {
    if (fault?.code !== "TARGET_CRASHED") throw fault;
    console.error(`the tab fell over at ${address}`);
    await browser.kill();
    browser = await open();
    return lighthouse(address, { port: browser.port, ...settings });
  }
}

try {
  for (const [number, address] of addresses.entries()) {
    if (number > 0 && categories.includes("performance")) {
      // Between two pages it empties some of the places where a browser stores: the next page would say so, at its top.
      await browser.kill();
      browser = await open();
    }
    const { lhr } = await judged(address);
    const scores = Object.fromEntries(Object.entries(lhr.categories).map(([name, { score }]) => [name, score]));
    const counts = Object.values(lhr.categories).flatMap(({ auditRefs }) => auditRefs.filter(({ weight }) => weight > 0).map(({ id }) => lhr.audits[id]));
    const wrong = counts.filter(({ score }) => score !== null && score < 1).map(short);
    console.log(JSON.stringify({ scores, wrong, failure: lhr.runtimeError ?? null }));
  }
} finally {
  await browser.kill();
}
