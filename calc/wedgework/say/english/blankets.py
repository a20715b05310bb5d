"""Names of usual sizes, and where they come from."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "blankets.baby": "Baby blanket",
    "blankets.lap": "Lap blanket",
    "blankets.charity-afghan": "Afghan of 49 sections",
    "blankets.adult": "Adult, for the sofa",
    "blankets.twin": "Twin bed (US)",
    "blankets.full": "Full bed (US)",
    "blankets.queen": "Queen bed (US)",
    "blankets.king": "King bed (US)",
    "blankets.crib-top": "Crib (US)",
    "blankets.twin-top": "Twin (US)",
    "blankets.full-top": "Full (US)",
    "blankets.queen-top": "Queen (US)",
    "blankets.king-top": "King (US)",
    "blankets.90-top": "90 cm (Europe)",
    "blankets.140-top": "140 cm (Europe)",
    "blankets.160-top": "160 cm (Europe)",
    "blankets.source-charity": "charities that collect blankets",
    "blankets.source-household-us": "US household lists",
    "blankets.source-household-eu": "from memory",
}
