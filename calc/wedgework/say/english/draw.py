"""Titles, descriptions and labels inside drawings."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
}
