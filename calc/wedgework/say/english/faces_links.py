"""What is said of links in which a whole input lives."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "faces.link-broken": "This link is broken: it cannot be read.",
    "faces.link-broken.way-out": "Ask for it again; an address that was cut or changed on its way does not open.",
    "faces.link-long": "This link is longer than {most} characters and is not opened.",
    "faces.link-long.way-out": "Ask for the design as a file.",
    "faces.link-newer": "This link was made by a newer Wedgework; this copy is {version}.",
    "faces.link-newer.way-out": "Update this copy, then open the link again.",
    "faces.link-calculator": "This link belongs to a calculator that this copy does not have.",
    "faces.link-calculator.way-out": "Ask which copy of Wedgework it was made with.",
    "faces.link-fields": "The link has fields that this calculator does not have, and they do not count: {names}.",
    "faces.link-fields.way-out": "Check the fields before you rely on the answer.",
    "faces.link-much": "There is too much in the fields for a link of {most} characters.",
    "faces.link-much.way-out": "Shorten the names.",
    "faces.link-much-class": "There is too much in this class for a link of {most} characters.",
    "faces.link-much-class.way-out": "Save it as a file, or take something out.",
    # --- what a link is ---
    "faces.about-size": "{width} wide and {height} high: {stitches}, {rows}.",
    "faces.about-field": "{label}: {text}",
    "faces.about-nothing": "empty",
    "faces.about-more": ("and {n} more field", "and {n} more fields"),
    # --- codes ---
    "faces.code-long": "The address has {found} characters; a code that can be scanned from a wall holds at most {most}.",
    "faces.code-long.way-out": "Shorter are: a layout that ships instead of a drawing, fewer shapes, no notes, short names. Or send the link, or a"
    " file.",
    "faces.code-foreign": "This is no address of a page with a link of ours behind it.",
    "faces.code-foreign.way-out": "Make the code on the page whose link it shall be.",
    # --- classes ---
    "faces.class-open": "Open: {page}",
    "faces.class-untitled": "A class without a title",
    "faces.class-no-link": "There is no link in this text.",
    "faces.class-no-link.way-out": "Paste what Copy link gave: an address with #w1 and a point in it.",
    "faces.class-full": "A class has at most {most} entries.",
    "faces.class-full.way-out": "Take one out, or begin another class.",
    "faces.class-contents": "What is opened",
}
