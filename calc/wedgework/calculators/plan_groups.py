"""The fields of the panel plan inside other calculators: the same piece, under the same names, so that links carry over.

Labels and help are those of the panel plan; only the titles of the groups are said again, once for each calculator.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from wedgework.calculators import panel_plan
from wedgework.declare import Field, Group

__all__ = ["PLAN_GROUPS"]

_SLUG = panel_plan.CALCULATOR.slug


def _borrowed(field: Field) -> Field:
    words = field.choice_words
    if field.choices and field.kind == "choice" and words is None:
        words = partial(field.choice_label, _SLUG)
    return replace(
        field,
        label_words=field.label_words or partial(field.label, _SLUG),
        help_words=field.help_words or partial(field.help, _SLUG),
        choice_words=words,
    )


PLAN_GROUPS = tuple(
    Group(group.key, tuple(_borrowed(field) for field in group.fields), folded="piece") for group in panel_plan.CALCULATOR.groups
)
