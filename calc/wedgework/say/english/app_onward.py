"""What stands on the way from one calculator to the next."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "app.onward-taken": "Filled in from the page {title}. The other fields are as you last left them, or the defaults.",
    "app.pace-measured": "As measured at the machine: {title}",
    "app.pace-measured-help": "The seconds of your own pace, from the page at the machine. They are kept on this device only.",
    "app.pace-taken": "From the last {n} measured steps of {title}. Setting the needles of a row is in the seconds of its pass, so it counts 0 by itself; "
    "what was not measured stays as it was.",
    "app.pace-taken-rows": "From the last {n} measured steps of {title}. Setting the needles of a row is in the seconds of its pass, so it counts 0 by "
    "itself; no change of block was measured yet.",
    "app.offer-panels": "Knit it in panels",
    "app.last-time": "As last time",
    "app.last-time-help": "What was in these fields when this page last gave an answer. It is kept on this device only.",
}
