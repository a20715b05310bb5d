"""The open formats: design (what the person wants), plan (what the machine does), state (what is on the bed in the middle
of a piece), project (everything kept), class (links with a teacher's words), report (how a test knitter got on with it).

All are JSON, strict and versioned. A text is either read whole or refused with everything that is wrong in it, each
problem at its path; writing puts every default in.

    from wedgework.formats import read_design, write_design
    design = read_design(text)            # raises problems.Refused
    text = write_design(design)

Frozen classes stand in ``design``, ``plan``, ``state``, ``project``, ``classes`` and ``report``, the JSON Schemas with every
bound in ``schemas/``. Text becomes values in ``text``, values are held against the schema in ``reading``, worded in
``complaints``, and turned into
classes in ``building_*``; ``values_*`` and ``writing`` go the other way. Nothing here knows what a layout is or
whether a plan can be knitted.
"""

from __future__ import annotations

from wedgework.formats.classes import Class, ClassEntry
from wedgework.formats.decimals import nearest_decimal
from wedgework.formats.digest import steps_digest
from wedgework.formats.doors import (
    read_class,
    read_class_value,
    read_design,
    read_design_value,
    read_plan,
    read_plan_value,
    read_project,
    read_project_value,
    read_report,
    read_report_value,
    read_state,
    read_state_value,
    write_class,
    write_design,
    write_plan,
    write_project,
    write_report,
    write_state,
)
from wedgework.formats.project import Project
from wedgework.formats.report import Report
from wedgework.formats.state import Hanging, State
from wedgework.formats.values_classes import class_value
from wedgework.formats.values_design import design_value
from wedgework.formats.values_plan import plan_value
from wedgework.formats.values_state import state_value
from wedgework.formats.writing import canonical, pretty

__all__ = [
    "Class",
    "ClassEntry",
    "Hanging",
    "Project",
    "Report",
    "State",
    "canonical",
    "class_value",
    "design_value",
    "nearest_decimal",
    "plan_value",
    "pretty",
    "read_class",
    "read_class_value",
    "read_design",
    "read_design_value",
    "read_plan",
    "read_plan_value",
    "read_project",
    "read_project_value",
    "read_report",
    "read_report_value",
    "read_state",
    "read_state_value",
    "state_value",
    "steps_digest",
    "write_class",
    "write_design",
    "write_plan",
    "write_project",
    "write_report",
    "write_state",
]
