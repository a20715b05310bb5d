"""What the small scripts on the pages say; the build writes these sentences into a module beside them.

A script only puts words of the page or numbers into the curly brackets, never markup.
"""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    # --- the engine ---
    "app.booting": "The live calculation is starting. What you type now counts as soon as it is ready.",
    "app.working": "Working it out.",
    "app.failed": "Live answers cannot start here: {why}. The answer below is for the fields as the page first showed them.",
    "app.failed-later": "Live answers have stopped: {why}. The answer below is the last one that was right.",
    "app.why-old-browser": "this browser is too old for them, or they are switched off in it",
    "app.why-not-loaded": "a part of the calculation could not be loaded; check the connection and load the page again",
    "app.why-too-long": "starting took too long; load the page again",
    "app.why-broken": "the calculation stopped by itself; load the page again",
    "app.restarted": "The calculation stopped at what is in the fields and was started again. Change something to try again.",
    # --- forms ---
    "app.old-answer": "The answer below is the last good one. It does not belong to what is in the fields now.",
    "app.problems": "This cannot be computed yet:",
    "app.defaults": "Put the defaults back",
    "app.at-the-machine": "Open at the machine",
    "app.at-the-machine-help": "Shows this piece step by step and keeps the place on this device.",
    "app.not-kept": "The piece could not be kept on this device: {why}",
    "app.not-kept-private": "its storage is full or switched off.",
    # --- links ---
    "app.copy-link": "Copy link",
    "app.copy-link-help": "Whoever has the link has everything that is in these fields. Nothing of it is stored elsewhere.",
    "app.link-copied": "The link is copied.",
    "app.link-by-hand": "Copying is not allowed here. This is the link:",
    "app.link-opened": "Opened from a link. The fields are the sender's.",
    "app.link-newer": "The link was made by a newer Wedgework, {version}. This copy may work it out otherwise: update it.",
    "app.link-elsewhere": "This link belongs to another page:",
    "app.link-not-opened": "The fields show the defaults.",
    "app.link-other-plan": "The sender saw another order of steps (made with Wedgework {version}). What was begun with that plan,"
    " finish with that plan.",
    # --- offline ---
    "app.offline-storing": "Storing for offline use: {done} of {all}.",
    "app.offline-ready": "Stored: this works without a network.",
    "app.offline-paused": "Not all is stored for offline use yet ({done} of {all}). It goes on at the next visit.",
    "app.offline-not-here": "Offline use is not possible here: it needs a secure address (https) or this machine's own (127.0.0.1).",
    "app.offline-no-worker": "This browser stores nothing for offline use, or it is switched off in it.",
    "app.offline-failed": "It could not be stored for offline use: {why}.",
    "app.offline-no-room": "there is no room left on this device",
    "app.offline-not-loaded": "a file could not be loaded, or is not the one that belongs to this version",
    "app.new-version": "A new version is ready.",
    "app.new-version-use": "Use it now",
    "app.new-version-help": "The page loads again. A place at the machine is kept; what stands in fields is kept by a link that you copied.",
    "app.later": "Later",
    "app.install": "Install on this device",
    "app.install-by-hand": "To keep it like an app: open the browser's share menu and choose to add it to the home screen.",
}
