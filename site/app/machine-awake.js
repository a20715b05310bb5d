// The screen stays on only when it was asked to; the device takes that back whenever the page is hidden.

import { say } from "./say.js";

export function awakeButton(button, said) {
  let wanted = false;
  let lock = null;
  const tell = (key) => (said.textContent = key ? say(key) : "");

  async function take() {
    try {
      lock = await navigator.wakeLock.request("screen");
      tell("machine.awake-on");
    } catch {
      lock = null;
      tell("machine.awake-refused");
    }
  }

  button.addEventListener("click", async () => {
    if (!("wakeLock" in navigator)) {
      tell("machine.awake-none");
      return;
    }
    wanted = !wanted;
    if (wanted) await take();
    else {
      await lock?.release();
      lock = null;
      tell("");
    }
    wanted &&= lock !== null;
    button.setAttribute("aria-pressed", String(wanted));
  });
  document.addEventListener("visibilitychange", () => {
    if (wanted && document.visibilityState === "visible") take();
  });
}
