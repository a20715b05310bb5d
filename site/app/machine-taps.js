// Fingers and feet: which key means what, and what counts once.

export const TAP_MS = 250;
export const KEY_MS = 200;

const FORWARD = new Set([" ", "Enter", "ArrowRight", "ArrowDown", "PageDown"]);
const BACK = new Set(["ArrowLeft", "ArrowUp", "PageUp"]);

/** A function that says whether a touch counts: not within `ms` of the last one that did. `clock` gives milliseconds. */
export function guard(ms, clock = () => performance.now()) {
  let last = -Infinity;
  return () => {
    const now = clock();
    if (now - last < ms) return false;
    last = now;
    return true;
  };
}

/** "forward", "back", or null for a key that is not ours: with a modifier, in a field, in a dialog, on a link. */
export function keyMeans(event) {
  if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing || document.querySelector("dialog[open]")) return null;
  const at = event.target instanceof Element && event.target === document.activeElement ? event.target : document.body;
  if (at.closest("input, select, textarea, [contenteditable], dialog, .md-header")) return null;
  const presses = event.key === " " || event.key === "Enter";
  // A button that has the focus is pressed by these two itself; when the key is held down it is not pressed again.
  if (presses && at.closest("a, summary, label")) return null;
  if (presses && at.closest("button")) return event.repeat ? "held" : null;
  return FORWARD.has(event.key) ? "forward" : BACK.has(event.key) ? "back" : null;
}

/** Calls `act("forward" | "back")` for every tap and key that counts. */
export function listen(root, act, clock) {
  const taps = guard(TAP_MS, clock);
  const keys = guard(KEY_MS, clock);
  let touched = false;
  let openedByTouch = false;
  addEventListener("pointerdown", () => (touched = true), true);
  addEventListener("keydown", () => (touched = false), true);
  root.addEventListener("click", (event) => {
    const button = event.target.closest("[data-action]");
    // What a finger touched must not be what the next key presses: a pedal's space would go back again.
    if (touched && event.target.closest("button, [data-item]") && !event.target.closest("dialog")) document.activeElement?.blur();
    if (event.target.closest("[data-opens]")) openedByTouch = touched;
    if (button && taps()) act(button.dataset.action);
  });
  // A window gives the focus back to the button that opened it, which a pedal would then press.
  root.addEventListener("close", () => openedByTouch && document.activeElement?.blur(), true);
  addEventListener("keydown", (event) => {
    if (event.key === "Tab") openedByTouch = false;
    // The end of a window may be told later than the next key comes.
    const left = event.target.closest?.("dialog:not([open])") || (openedByTouch && event.target.matches?.("[data-opens]"));
    if (left && !root.querySelector("dialog[open]")) event.target.blur();
    const action = keyMeans(event);
    if (action === null) return;
    event.preventDefault();
    if (action !== "held" && !event.repeat && keys()) act(action);
  });
}
