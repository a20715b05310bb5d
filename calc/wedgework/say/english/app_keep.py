"""What the page of saving says, and the reminder at the machine."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "app.keep-counts": "On this device: {pieces} plans at the machine, {yarns} yarns on the shelf, the fields of {fields} pages, {designs}"
    " drawings, {classes} classes.",
    "app.keep-nothing": "Nothing is kept on this device yet: no piece at the machine, no yarn on the shelf, no fields, no drawing, no class.",
    "app.keep-last": "Last saved to a file: {date}.",
    "app.keep-never": "Nothing of it was saved to a file yet.",
    "app.keep-lost": "This browser has thrown away: {titles}. Only the titles are left.",
    "app.keep-save": "Save all to a file",
    "app.keep-open": "Open a file",
    "app.keep-working": "Working.",
    "app.keep-no-engine": "The calculation cannot start here now, so no file can be written or read. Load the page again.",
    "app.keep-saved": "Saved as {name}. Put it somewhere else than on this device.",
    "app.keep-left-out": "Not in it: {titles}. An earlier version stored them without their plan, or the browser has thrown them away.",
    "app.keep-long": "This file is too large for a project file.",
    "app.keep-in-file": "In the file: {title}",
    "app.keep-no-title": "no title",
    "app.keep-kind-piece": "at the machine",
    "app.keep-kind-yarn": "on the shelf",
    "app.keep-kind-class": "among the classes",
    "app.keep-class-entries": "entries: {n}",
    "app.keep-kind-fields": "in the fields of that page",
    "app.keep-new": "not on this device yet",
    "app.keep-same": "the same as here",
    "app.keep-otherwise": "otherwise than here",
    "app.keep-both": "Here: {here}. In the file: {there}. Tick it to take the file's.",
    "app.keep-place": "{done} of {all} moves and rows done",
    "app.keep-place-other": "goes on with another plan",
    "app.keep-take": "Put what is ticked on this device",
    "app.keep-take-help": "What is not ticked stays as it is.",
    "app.keep-all-same": "All of it is here already.",
    "app.keep-empty": "There is nothing in it that is kept here.",
    "app.keep-taken": "{n} of them are on this device now.",
    "app.keep-not-kept": "This device does not keep it: its storage is full or switched off.",
    "app.keep-also": "Also in the file",
    "app.keep-use-design": "Open on the layout board",
    "app.keep-use-swatch": "Put into the page of the gauge",
    "app.keep-use-machine": "Put into the planner",
    "app.keep-safe": "This browser has agreed to keep what is stored until you clear it yourself. A lost or broken device is another matter: save a file.",
    "app.keep-risk": "This browser may throw away what is kept here when the device runs short of room, or when you clear its data. Save a file"
    " after every long evening, and put the pages on the home screen or install them: then they are kept longer.",
    "app.keep-risk-week": "On this device the browser removes what a page has kept after seven days without a visit. Pages on the home"
    " screen are not touched: open the share menu, add this page to the home screen, and open it from there. What is kept there is"
    " apart from what is kept here: take it along in a file.",
    # --- at the machine ---
    "machine.backup": "{rows} rows of this piece are kept on this device alone.",
    "machine.backup-go": "Save a copy",
    "machine.backup-later": "Later",
    "machine.saving": "Saving",
    "machine.saving-go": "Save everything to a file, or open one",
}
