// The size of type of a step: as large as the room allows, found with as few layouts of the page as can be.

// Sizes, 0 the largest; machine.css has one for each. The last takes the bed away as well.
const SMALLEST = 7;

/**
 * `root` is the page's part, `cue` the step inside it. `fit(group, likeness)`: steps of the same likeness need the same size,
 * and it is kept; those of one group most often do, so theirs is tried first.
 */
export function typeSizes(root, cue) {
  const notices = root.querySelector(".m-notices");
  const sizes = new Map();
  let size = 0;

  const set = (to) => {
    if (cue.dataset.fit === String(to)) return;
    cue.dataset.fit = to;
    if ((to === SMALLEST) !== "tight" in root.dataset) root.toggleAttribute("data-tight", to === SMALLEST);
  };
  const fits = (at) => {
    set(at);
    return cue.scrollHeight <= cue.clientHeight + 1;
  };

  function fit(group, likeness) {
    const kept = sizes.get(likeness);
    if (kept !== undefined) size = kept;
    else {
      const usual = sizes.get(group);
      size = usual ?? 0;
      while (size < SMALLEST && !fits(size)) size += 1;
      if (usual === undefined) sizes.set(group, size);
      sizes.set(likeness, size);
    }
    set(size);
  }

  const forget = () => sizes.clear();
  let last = "";
  /** The room may have changed; when it did, nothing that was kept holds any more. */
  function resized(group, likeness) {
    // A notice that comes or goes leaves another height to the step.
    const room = `${cue.clientWidth} ${root.clientHeight} ${notices.offsetHeight}`;
    if (room === last && fits(size)) return;
    last = room;
    forget();
    fit(group, likeness);
  }
  return { fit, forget, resized };
}
