"""From one answer to the next calculator, over what was typed there the last time; and back to the last time."""

from __future__ import annotations

from visiting import settled


def test_a_gauge_goes_to_the_size_and_on_to_the_planner(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/size/", live=True)
        page.select_option("[name=stitch_parity]", "odd")
        settled(page)
        page.goto(f"{served}calculators/gauge/")
        page.fill("[name=stitches]", "44")
        settled(page)
        page.click(".ww-onward button:text-is('A size')")
        page.wait_for_url("**/calculators/size/")
        page.wait_for_function("() => document.querySelector('.ww-notes').textContent.includes('Gauge')")
        assert page.input_value("[name=stitches_per_10cm]") == "15.439"
        assert page.input_value("[name=stitch_parity]") == "odd", "what was typed here before is left"
        page.fill("[name=width]", "60")
        settled(page)
        stitches = page.inner_text("[data-result=stitches]")
        page.click(".ww-onward button:text-is('The planner')")
        page.wait_for_url("**/plan/")
        page.wait_for_function("() => document.querySelector('[name=size_in]').value === 'counts'")
        assert page.input_value("[name=needles]") == stitches
        assert page.input_value("[name=stitches_per_10cm]") == "15.439"
        settled(page)
        page.click(".ww-onward summary")
        page.click(".ww-onward button:text-is('How long it takes')")
        page.wait_for_url("**/calculators/time/")
        page.wait_for_function("() => document.querySelector('[name=passes]').value !== '960'")


def test_what_is_wrong_does_not_go_on(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        page.fill("[name=stitches]", "many")
        settled(page)
        page.click(".ww-onward button:text-is('A size')")
        page.wait_for_timeout(300)
        assert page.url == f"{served}calculators/gauge/"
        assert "many" in page.inner_text(".ww-told")


def test_the_last_time_is_offered_and_the_defaults_stay_until_it_is_taken(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/blocking/", live=True)
        page.fill("[name=stitches]", "97")
        settled(page)
        page.goto(f"{served}calculators/tension/")
        page.goto(f"{served}calculators/blocking/")
        page.wait_for_selector("text=As last time")
        assert page.input_value("[name=stitches]") == "95"
        page.click("text=As last time")
        settled(page)
        assert page.input_value("[name=stitches]") == "97"
        assert page.query_selector("text=As last time") is None


def test_the_pace_of_the_machine_page_is_offered_to_the_time(served: str, visitor) -> None:
    """Five steps of 9 to 13 seconds a row: their median is 11, and setting needles is in it."""
    keep = """async () => {
      const store = await import(scriptAt("store.js"));
      await store.keepNote("about.some", {title: "Small kite", steps: 40, rows: 90});
      await store.keepNote("place.some", {index: 9, pace: {rows: [9000, 13000, 11000, 10000, 12000], changes: [61000]}});
    }"""
    with visitor() as one:
        page = one.open(f"{served}calculators/time/", live=True)
        assert page.query_selector("text=As measured at the machine") is None
        page.evaluate(keep)
        page.reload()
        page.click("text=As measured at the machine: Small kite")
        settled(page)
        seconds = [page.input_value(f"[name=seconds_per_{name}]") for name in ("pass", "change", "block_change", "end")]
        assert seconds == ["11", "0", "61", "90"]
        assert "last 5 measured steps of Small kite" in page.inner_text(".ww-notes")


def test_a_piece_wider_than_the_bed_becomes_panels_with_one_tap(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=width]", "150")
        page.fill("[name=height]", "40")
        page.click("button:text-is('Knit it in panels')")
        settled(page)
        assert page.input_value("[name=split]") == "design"
        assert page.is_visible("[name=panel_number]")
        assert "panel 1 of 2" in page.inner_text("output")
        assert page.query_selector("button:text-is('Knit it in panels')") is None
