// What the page and the engine's worker say to each other: JSON in strings, both ways.
//
//   page to worker    {"begin": true}                   tell when you are ready; the worker starts by itself
//                     {"id": 7, "question": "..."}      the question is a string for the core's one door
//   worker to page    {"state": "living"}               a part has come
//                     {"state": "ready"}
//                     {"state": "failed", "why": "not-loaded", "fault": "..."}     it could not start; see WHYS
//                     {"id": 7, "taken": true}          the question has come; what follows takes as long as it takes
//                     {"id": 7, "answer": "..."}        the core's string, untouched
//                     {"id": 7, "fault": "..."}         the core fell; the worker is of no more use

/** Why the engine may be missing; each has a sentence `app.why-...`. */
export const WHYS = ["old-browser", "not-loaded", "too-long", "broken"];

export const beginning = () => JSON.stringify({ begin: true });
export const asking = (id, question) => JSON.stringify({ id, question });
export const living = () => JSON.stringify({ state: "living" });
export const ready = () => JSON.stringify({ state: "ready" });
export const failed = (why, fault = "") => JSON.stringify({ state: "failed", why, fault });
export const taking = (id) => JSON.stringify({ id, taken: true });
export const answering = (id, answer) => JSON.stringify({ id, answer });
export const falling = (id, fault) => JSON.stringify({ id, fault });

/** The message inside a string; null for what is none of ours. */
export function read(text) {
  if (typeof text !== "string") return null;
  try {
    const message = JSON.parse(text);
    return message !== null && typeof message === "object" ? message : null;
  } catch {
    return null;
  }
}
