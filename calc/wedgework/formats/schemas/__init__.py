"""The open formats as JSON Schemas (draft 2020-12), written as Python values so that they travel with the code.

    from wedgework.formats.schemas import SCHEMAS
    SCHEMAS["design"]["properties"]["bed"]["properties"]["needles"]["maximum"]

They are the one place where a bound stands. The strict reader interprets them, tests hold them against a general
JSON Schema validator, and the reference page is made from their descriptions. ``pieces`` builds the small parts.
"""

from __future__ import annotations

from typing import Any

from wedgework.formats.schemas.classes import CLASS
from wedgework.formats.schemas.design import DESIGN
from wedgework.formats.schemas.plan import PLAN
from wedgework.formats.schemas.project import PROJECT
from wedgework.formats.schemas.report import REPORT
from wedgework.formats.schemas.state import STATE

__all__ = ["SCHEMAS"]

SCHEMAS: dict[str, dict[str, Any]] = {
    "design": DESIGN,
    "plan": PLAN,
    "state": STATE,
    "project": PROJECT,
    "class": CLASS,
    "report": REPORT,
}
