// The model bed's judgement of the drawing, and what would make it easier to knit. Both come when they come: drawing goes on.

import { changed, designOf } from "./board-doc.js";
import { ask, engineState, whenChanged } from "./engine.js";

const PAUSE = 250; // ms after the last edit
const MOST_OFFERS = 4;

export class Judge {
  constructor(board, found) {
    this.board = board;
    this.found = found; // of the last drawing that could be judged
    this.stale = false;
    this.problems = [];
    this.state = "done"; // or "waits", "working", "failed"
    this.offers = [];
    this.weighing = 0; // changes that are still to be weighed
    this.number = 0; // of the drawing
    this.timer = 0;
    whenChanged(() => this.board.tell());
  }

  /** At the start: what the page holds is the judgement of its first drawing, not of one that was kept. */
  begin(kept) {
    if (kept) this.changed();
    else this.judge();
  }

  changed() {
    this.number += 1;
    this.stale = true;
    this.turn("waits");
    this.offers = [];
    this.weighing = 0;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.judge(), PAUSE);
  }

  /** Seen at once by whoever waits for it; the words beside the sheet come a little later. */
  turn(state) {
    this.state = state;
    this.board.root.dataset.judged = state;
  }

  get engine() {
    return engineState();
  }

  async judge() {
    const mine = this.number;
    this.turn("working");
    const { doc } = this.board;
    let told = null;
    try {
      told = await ask("board", { ask: "board-judge", design: JSON.stringify(designOf(doc)) });
    } catch {
      if (mine === this.number) this.turn("failed");
    }
    if (mine !== this.number) return;
    if (told !== null) {
      this.turn("done");
      this.problems = told.problems;
      if (told.judged) {
        this.found = told.judged;
        this.stale = false;
      }
    }
    this.board.tell();
    if (told?.judged) this.weigh(mine, doc, told);
  }

  /** Each change is planned and judged by itself; whatever is edited meanwhile goes first. */
  async weigh(mine, doc, { judged, changes }) {
    this.weighing = changes.length;
    const before = JSON.stringify(judged.effort);
    for (const change of changes) {
      let told = null;
      try {
        told = await ask("board-try", { ask: "board-try", design: JSON.stringify(designOf(changed(doc, change))), before });
      } catch {
        return;
      }
      if (mine !== this.number) return;
      this.weighing -= 1;
      if (told?.better) {
        this.offers.push({ ...change, gain: told.words, minutes: told.minutes });
        this.offers.sort((a, b) => b.minutes - a.minutes);
        this.offers.length = Math.min(this.offers.length, MOST_OFFERS);
      }
      this.board.tell();
    }
  }

  accept(offer) {
    this.board.commit(changed(this.board.doc, offer), "offer", { words: offer.words });
  }
}
