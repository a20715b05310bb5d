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
  if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return null;
  const at = event.target instanceof Element ? event.target : document.body;
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
  addEventListener("pointerdown", () => (touched = true), true);
  addEventListener("keydown", () => (touched = false), true);
  root.addEventListener("click", (event) => {
    const button = event.target.closest("[data-action]");
    // What a finger touched must not be what the next key presses: a pedal's space would go back again.
    if (touched && event.target.closest("[data-action], [data-item]")) document.activeElement?.blur();
    if (button && taps()) act(button.dataset.action);
  });
  addEventListener("keydown", (event) => {
    const action = keyMeans(event);
    if (action === null) return;
    event.preventDefault();
    if (action !== "held" && !event.repeat && keys()) act(action);
  });
}
