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
}
