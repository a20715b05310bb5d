// A picture file read on this device: it is laid over the sheet, its colours are counted in a worker, and the core draws the
// shapes. The file never leaves the device.

import { element, say } from "./say.js";

const MOST_PIXELS = 1024; // of a side that is looked at
const LONGEST = 60_000; // ms

export function pictureForm(board, begin) {
  const file = element("input", { type: "file", accept: "image/png,image/jpeg", "aria-label": say("app.board-start-picture-file") });
  const number = (name, value, least, most) => {
    const input = element("input", { type: "number", inputmode: "numeric", name, value, min: least, max: most, step: 1 });
    return [element("label", {}, say(`app.board-picture-${name}`), input), input];
  };
  const [coloursLine, colours] = number("colours", 4, 2, 12);
  const [leastLine, least] = number("least", 20, 0, 1000);
  const [straightLine, straighten] = number("straighten", 1, 0, 3);
  const go = element("button", { type: "button", class: "lb-strong" }, say("app.board-start-picture-do"));
  const told = element("p", { class: "lb-note", role: "status" });
  const whole = (input) => String(Math.max(Number(input.min), Math.min(Number(input.max), Math.round(Number(input.value) || 0))));
  go.addEventListener("click", async () => {
    const [chosen] = file.files;
    told.textContent = chosen ? say("app.board-picture-reading") : say("app.board-picture-none");
    if (!chosen) return;
    go.disabled = true;
    try {
      const { needles, rows } = board.doc.sheet;
      const found = await counted(chosen, needles, Math.ceil(rows / board.rules.turn_rows), Number(whole(colours)));
      told.textContent = "";
      await begin({ ask: "board-cells", colours: found.colours.join(" "), cells: found.cells, least: whole(least), straighten: whole(straighten) });
    } catch (fault) {
      console.info(`The picture was not read: ${fault}`);
      told.textContent = say("app.board-picture-unread");
    } finally {
      go.disabled = false;
    }
  });
  return element("div", { class: "lb-picture" }, file, coloursLine, leastLine, straightLine, go, told);
}

async function counted(file, across, up, colours) {
  const bitmap = await createImageBitmap(file);
  const shrink = Math.min(1, MOST_PIXELS / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [Math.max(1, Math.round(bitmap.width * shrink)), Math.max(1, Math.round(bitmap.height * shrink))];
  const canvas = element("canvas", { width, height });
  const brush = canvas.getContext("2d", { willReadFrequently: true });
  brush.fillStyle = "#ffffff"; // what is clear in a picture is taken for paper
  brush.fillRect(0, 0, width, height);
  brush.imageSmoothingEnabled = shrink < 1;
  brush.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  const { data } = brush.getImageData(0, 0, width, height);
  return inWorker({ width, height, pixels: data, across, up, colours });
}

function inWorker(question) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./board-colours.js", import.meta.url), { type: "module" });
    const late = setTimeout(() => done(reject, new Error("it took too long")), LONGEST);
    const done = (how, what) => {
      clearTimeout(late);
      worker.terminate();
      how(what);
    };
    worker.onmessage = ({ data }) => done(resolve, data);
    worker.onerror = (event) => done(reject, event.message);
    worker.postMessage(question, [question.pixels.buffer]);
  });
}
