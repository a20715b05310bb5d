"""Laws are judged by what they find, not by how long one example took on a busy machine."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("laws", deadline=None)
settings.load_profile("laws")
