// Wherever a yarn is asked for, it can be taken from the shelf: a choice above its fields fills them. Nothing of it is seen
// while the shelf is empty.

import { element, say } from "./say.js";
import { shelfYarns, yarnLine } from "./shelf.js";

/** The choices of one form. */
export async function shelfInForm(live) {
  const yarns = await shelfYarns();
  if (yarns.length === 0) return;
  await live.whole;
  for (const group of live.form.querySelectorAll("fieldset[data-group]")) {
    const fill = filler(live, group.dataset.group);
    if (fill) group.querySelector("legend").after(picker(yarns, group.dataset.group, fill));
  }
  if (live.control("leftovers")) takeAll(live, yarns);
}

function picker(yarns, key, fill) {
  const id = `shelf-pick-${key}`;
  const none = element("option", { value: "" }, say("app.shelf-pick-none"));
  // Belongs to no form: a choice among yarns is no input of the calculator.
  const select = element("select", { id, form: "shelf-of-no-form" }, none, ...yarns.map((yarn, i) => element("option", { value: String(i) }, `${yarn.name} (${yarnLine(yarn)})`)));
  for (const kind of ["input", "change"]) select.addEventListener(kind, (event) => event.stopPropagation());
  select.addEventListener("change", () => {
    if (select.value !== "") fill(yarns[Number(select.value)]);
    select.value = "";
  });
  return element("div", { class: "ww-field ww-field-shelf" }, element("label", { for: id }, say("app.shelf-pick")), select);
}

/** What a yarn fills in the fields of a group; nothing where no yarn is asked for. */
function filler(live, key) {
  const put = (texts) => live.fill(Object.fromEntries(Object.entries(texts).filter(([, text]) => text !== undefined)));
  const [kind, number] = [key.replace(/-\d+$/, ""), /\d+$/.exec(key)?.[0]];
  const needs = (yarn) => {
    if (!live.control(`need_${number}_ball_g`)) return {};
    return { [`need_${number}_ball_g`]: yarn.ball_g, [`need_${number}_ball_m`]: metresOf(yarn), [`need_${number}_on_hand_g`]: yarn.on_hand_g };
  };
  const balls = (yarn) => (live.control(`yarn_${number}_ball_g`) && metresOf(yarn) ? { [`yarn_${number}_ball_g`]: yarn.ball_g, [`yarn_${number}_ball_m`]: metresOf(yarn) } : {});
  const named = (yarn) => (live.control(`yarn_${number}_name`) ? { [`yarn_${number}_name`]: yarn.name, [`yarn_${number}_colour`]: yarn.colour, ...balls(yarn) } : {});
  if (number && ((kind === "yarn" && live.control(`yarn_${number}_name`)) || kind === "need")) return (yarn) => put({ ...named(yarn), ...needs(yarn) });
  if (live.slug === "stripes" && key === "yarn") return (yarn) => yarn.stripe && put({ repeat: yarn.stripe });
  if (live.slug === "yarn-count" && key === "count") {
    return (yarn) => put(yarn.known === "count" ? { value: yarn.count, system: yarn.system, plies: "1" } : { value: yarn.rate, system: "metres_per_gram", plies: "1" });
  }
  return null;
}

/** Where only a count was typed there is no length on a ball to fill in. */
const metresOf = (yarn) => (yarn.known === "count" ? undefined : yarn.ball_m);

function takeAll(live, yarns) {
  const lines = yarns
    .filter((yarn) => yarn.on_hand_g && yarn.rate)
    .map((yarn) => [`${yarn.colour} ${yarn.name}`, yarn.on_hand_g, `${yarn.rate} m/g`, yarn.kind].filter(Boolean).join(", "));
  if (lines.length === 0) return;
  const button = element("button", { type: "button", class: "ww-button ww-button--quiet", title: say("app.shelf-take-all-help") }, say("app.shelf-take-all"));
  button.addEventListener("click", () => live.fill({ leftovers: lines.join("\n") }));
  live.control("leftovers").after(button);
}
