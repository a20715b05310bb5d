"""One evening in a studio without a network, from the visit at home to the twenty-fifth step."""

from __future__ import annotations

from stepping import READY as MACHINE
from stepping import at, cue_of, step_to
from visiting import GONE, figures, gone_and_live, settled


def test_an_evening_without_a_network(host, visitor) -> None:
    here = host()
    with visitor(allow=GONE) as one:
        page = gone_and_live(one, here, "calculators/gauge/")
        # 40 stitches over 28.5 cm and 60 rows over 31.5 cm: 14.04 and 19.05 in 10 cm.
        for name, typed in (("stitches", "40"), ("width", "28.5 cm"), ("rows", "60"), ("height", "31.5 cm")):
            page.fill(f"[name={name}]", typed)
        settled(page)
        assert figures(page)["stitches_per_10cm"] == "14.04"
        assert figures(page)["rows_per_10cm"] == "19.05"
        page.close()

        page = one.open(f"{here.address}machine/")
        page.wait_for_selector(MACHINE)
        begin = cue_of(page)
        for step in range(1, 26):
            page.wait_for_timeout(260)  # a second tap within 250 ms counts as the same tap
            step_to(page, begin + step, "tap" if step % 2 else "PageDown")
        rows = page.get_attribute("[data-row]", "data-row")
        page.close()

        page = one.open(f"{here.address}machine/")
        page.wait_for_selector(MACHINE)
        at(page, begin + 25)
        assert page.get_attribute("[data-row]", "data-row") == rows
