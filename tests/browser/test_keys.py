"""From a key to its answer: at every key where that is cheap, the picture first where it is not, and a way to stop."""

from __future__ import annotations

from playwright.sync_api import Page

from visiting import answer_html, figures, settled

# What the page showed after each key, and how long that took.
WATCH = """([name, keys]) => new Promise((done) => {
    const field = document.querySelector(`[name=${name}]`);
    const form = field.form, output = form.querySelector('output');
    const seen = [];
    field.value = '';
    const next = () => {
        if (seen.length === keys.length) return done(seen);
        const begun = performance.now();
        form.addEventListener('ww-answered', () => {
            const shown = output.querySelector('[data-result=stitches_per_10cm]').textContent;
            seen.push([field.value, shown, performance.now() - begun]);
            setTimeout(next, 0);
        }, {once: true});
        field.value += keys[seen.length];
        field.dispatchEvent(new Event('input', {bubbles: true}));
    };
    next();
})"""
PAUSE = 180


def fill(page: Page, **texts: str) -> None:
    """All at once, as a link does."""
    page.evaluate(
        """(texts) => {
            const form = document.querySelector('form[data-calculator]');
            for (const [name, text] of Object.entries(texts)) form.elements[name].value = text;
            form.elements[Object.keys(texts)[0]].dispatchEvent(new Event('change', {bubbles: true}));
            form.elements[Object.keys(texts)[0]].dispatchEvent(new Event('input', {bubbles: true}));
        }""",
        texts,
    )


def test_a_cheap_calculator_answers_at_every_key(served: str, visitor) -> None:
    """Over 28.5 cm: 4 stitches are 1.40 per 10 cm, 41 are 14.39, 412 are 144.56."""
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        page.evaluate(WATCH, ["stitches", "41"])  # the first answers of a Python warm it
        seen = page.evaluate(WATCH, ["stitches", "412"])
        assert [(typed, shown) for typed, shown, _ in seen][:2] == [("4", "1.40"), ("41", "14.39")]
        assert min(spent for _, _, spent in seen) < PAUSE, "no pause is waited for"


def test_half_a_number_is_not_called_wrong_while_one_types(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        told = page.evaluate(
            """async () => {
                const field = document.querySelector('[name=width]');
                const said = [];
                for (const text of ['', '1', '10', '10 ', '10 c', '10 cm']) {
                    field.value = text;
                    field.dispatchEvent(new Event('input', {bubbles: true}));
                    await new Promise((done) => setTimeout(done, 40));
                    said.push(document.querySelector('.ww-told').textContent);
                }
                return said;
            }"""
        )
        assert "".join(told) == ""
        settled(page)
        assert figures(page)["stitches_per_10cm"] == "40.00"
        page.fill("[name=width]", "10 c")
        page.wait_for_selector(".ww-problem")


def test_the_picture_comes_first_and_a_long_plan_can_be_stopped(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        before = answer_html(page)
        large = {"size_in": "counts", "bed": "standard-4.5", "needles": "200", "rows": "3000"}
        fill(page, layout="nested-diamonds", **large)
        page.wait_for_selector(".ww-sketch svg")
        assert page.get_attribute("form[data-live]", "data-live") == "asked"
        assert "The picture as it stands in the fields" in page.inner_text(".ww-sketch")
        hidden = "() => getComputedStyle(document.querySelector('output .ww-figures')).visibility === 'hidden'"
        page.wait_for_function(hidden)  # no figure of another piece stands for long beside the new picture
        assert page.locator("output figure:has(.drawing-front):visible").count() == 1
        page.wait_for_selector(".ww-told button >> text=Stop")
        page.wait_for_function("() => document.querySelector('.ww-seconds').textContent === '1 s'")
        page.click(".ww-told button >> text=Stop")
        page.wait_for_selector("text=Stopped. Change something")
        assert answer_html(page) == before
        assert page.is_visible("output .ww-figures")
        assert page.query_selector(".ww-sketch, .ww-sketched") is None
        assert "does not belong to what is in the fields now" in page.inner_text(".ww-told")
        fill(page, needles="40", rows="80")
        settled(page)
        assert "40 needles" in page.inner_text("output")
        assert page.query_selector(".ww-sketch, .ww-sketched, output figure[hidden]") is None
        assert page.query_selector(".ww-old") is None


def test_an_answer_that_nobody_waits_for_holds_nothing_up(served: str, visitor) -> None:
    """The question of a vast piece is in work; the same form is asked something small."""
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        fill(page, layout="nested-diamonds", size_in="counts", bed="standard-4.5", needles="200", rows="4000")
        page.wait_for_selector(".ww-sketch svg")
        page.wait_for_timeout(300)
        fill(page, needles="24", rows="48")
        settled(page)
        assert "24 needles" in page.inner_text("output")
