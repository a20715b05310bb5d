"""How a calculator is declared: once, as a value. Form, command, page, messages and tests all read it.

    Celsius = Calculator("celsius", (Group("in", (decimal("fahrenheit", "68", -460, 1000, "per-10cm"),)),), compute)
    answer = work_out(Celsius, {"fahrenheit": "212"})      # what was typed, field by field
    answer.problems, answer.result

A field has a kind, a range, an own unit and a default as somebody would type it. Its words stand in the say room,
under ``calculators.<slug>.<field>.label`` and ``.help``. `compute` gets the values that were read (`Inputs`: whole
numbers, exact fractions, mm) and returns a `Result`: values for programs, parts to show for people, warnings.
Every mistake is found before anything is computed, all of them at once.
"""

from __future__ import annotations

from wedgework.declare.calculator import Answer, Calculator, Group, work_out
from wedgework.declare.fields import Field, Only, choice, colour, decimal, length, lengths, lines, mass, text, whole, yes_no
from wedgework.declare.inputs import Inputs, Value
from wedgework.declare.shown import Bullets, Figure, Figures, Picture, Plain, Prose, Result, Shown, Table, Written

__all__ = [
    "Answer",
    "Bullets",
    "Calculator",
    "Field",
    "Figure",
    "Figures",
    "Group",
    "Inputs",
    "Only",
    "Picture",
    "Plain",
    "Prose",
    "Result",
    "Shown",
    "Table",
    "Value",
    "Written",
    "choice",
    "colour",
    "decimal",
    "length",
    "lengths",
    "lines",
    "mass",
    "text",
    "whole",
    "work_out",
    "yes_no",
]
