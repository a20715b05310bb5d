// Click, vibration and voice: each off until it is asked for, each with a sentence where the device has none.

import { LANGUAGE } from "./places.js";
import { say } from "./say.js";
import { keepNote, readNote } from "./store.js";

const SHAKE_MS = 40;
const VOICES_MS = 1500; // a browser may need a moment to list its voices

/** `seen()` gives what stands on the screen. Gives back {stepped}, to be called after every step. */
export function aids(root, seen) {
  const on = { sound: false, shake: false, speak: false };
  let sound = null;
  let voice = null;

  readNote("aids").then((kept) => {
    for (const key of Object.keys(on)) if (kept?.[key]) turn(key, true);
  });
  for (const button of root.querySelectorAll("[data-aid]")) {
    button.addEventListener("click", async () => {
      const key = button.dataset.aid;
      await turn(key, !on[key]);
      await keepNote("aids", { ...on });
      if (on[key]) act[key]();
    });
  }

  async function turn(key, wanted) {
    const had = !wanted || (await able[key]());
    on[key] = wanted && had;
    root.querySelector(`[data-aid=${key}]`).setAttribute("aria-pressed", String(on[key]));
    root.querySelector(`[data-aid-said=${key}]`).textContent = had ? "" : say(`machine.${key}-none`);
    if (!wanted && key === "speak") globalThis.speechSynthesis?.cancel();
  }

  const able = {
    sound: () => {
      const Sound = globalThis.AudioContext ?? globalThis.webkitAudioContext;
      if (!Sound) return false;
      sound ??= new Sound();
      return true;
    },
    shake: () => typeof navigator.vibrate === "function",
    speak: async () => {
      voice ??= await offlineVoice();
      return voice !== null;
    },
  };

  const act = {
    sound: () => {
      if (sound.state === "suspended") sound.resume();
      const tone = sound.createOscillator();
      const volume = sound.createGain();
      const at = sound.currentTime;
      tone.frequency.value = 880;
      volume.gain.setValueAtTime(0.25, at);
      volume.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
      tone.connect(volume).connect(sound.destination);
      tone.start(at);
      tone.stop(at + 0.07);
    },
    shake: () => navigator.vibrate(SHAKE_MS),
    speak: () => {
      const { cue, now, knit } = seen();
      const words = [...(now.length ? now.map((one) => `${one.where} ${one.what}.`) : cue.before.slice(0, 1)), knit].join(" ");
      const said = new SpeechSynthesisUtterance(words.replace(/\b(HP|UWP|WP|NWP|HST|OAST|AST|RST)\b/g, (sign) => [...sign].join(" ")));
      said.voice = voice;
      said.lang = voice.lang;
      speechSynthesis.cancel();
      speechSynthesis.speak(said);
    },
  };

  return {
    stepped() {
      for (const [key, does] of Object.entries(act)) {
        if (!on[key]) continue;
        try {
          does();
        } catch {
          turn(key, false); // an aid that fails is switched off; the step was taken
          root.querySelector(`[data-aid-said=${key}]`).textContent = say(`machine.${key}-none`);
        }
      }
    },
  };
}

/** A voice for the page's language of the device itself; others send the words to a server. Null where there is none. */
async function offlineVoice() {
  if (!("speechSynthesis" in globalThis)) return null;
  const find = () => speechSynthesis.getVoices().find((one) => one.localService && one.lang.toLowerCase().startsWith(LANGUAGE)) ?? null;
  if (!find()) {
    await new Promise((heard) => {
      speechSynthesis.addEventListener?.("voiceschanged", heard, { once: true });
      setTimeout(heard, VOICES_MS);
    });
  }
  return find();
}
