"""Sentences of the layout room: sizes and shapes. Those of the named layouts are in `layouts`."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "layout.too-wide": "The piece takes {needles} needles, the bed has {bed}.",
    "layout.too-wide.way-out": "Make it narrower, use a looser gauge, or knit it as panels of at most {bed} needles.",
    "layout.off-the-bed": "Shifted like this the piece lies on {needles}, the bed runs from {first} to {last}.",
    "layout.off-the-bed.way-out": "Shift it less.",
    "layout.too-narrow": "At this gauge the piece is {needles} needles wide; it takes at least 2.",
    "layout.too-low": "At this gauge the piece is {rows} rows high; it takes at least 2.",
    "layout.too-small.way-out": "Check the size and the gauge, and their units.",
    "layout.yarn-twice": "Two yarns have the id {yarn}.",
    "layout.yarn-twice.way-out": "Give every yarn an id of its own.",
    "layout.unknown-yarn": "There is no yarn with the id {yarn}.",
    "layout.unknown-yarn.way-out": "The yarns of this design are: {yarns}.",
    "layout.yarn-wanted": "A yarn's id is wanted here, found: {found}.",
    "layout.unknown-name": "There is no layout called {name}.",
    "layout.unknown-name.way-out": "Choose one of: {names}; or draw shapes of your own.",
    "layout.unknown-parameter": "The layout {layout} has no parameter {parameter}.",
    "layout.unknown-parameter.way-out": "It has: {names}.",
    "layout.whole-wanted": "Found {found}; a whole number from {least} to {most} is wanted.",
    "layout.number-wanted": "Found {found}; a number from {least} to {most} is wanted.",
    "layout.parameter-range.way-out": "Choose a value in that range.",
    "layout.no-profile": "Shaped pieces (a profile of rows) are not planned by this version, only flat panels.",
    "layout.no-profile.way-out": "Take the profile out, or plan the piece as a rectangle.",
    "layout.no-area": "These points enclose nothing.",
    "layout.no-area.way-out": "Give at least three points that do not lie on one line.",
    "layout.crossing-edges": "The edges from point {one} and from point {other} cross or lie on each other.",
    "layout.crossing-edges.way-out": "Put the points in the order in which the outline runs, or split the shape in two.",
    "layout.hidden-shape": "This shape gets no stitch: it is covered, outside the panel, or thinner than a stitch.",
    "layout.hidden-shape.way-out": "Move it up in the list, make it larger, or take it out.",
}
