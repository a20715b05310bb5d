"""After one visit everything works with the server gone."""

from __future__ import annotations

import gzip
import hashlib
import json
import re
import shutil
from pathlib import Path

import pytest

from builder.keep import TWINS, kept_files, twin
from visiting import GONE, LIVE, Host, figures, settled

READY = "() => document.documentElement.dataset.offline === 'ready'"
GAUGE = "calculators/gauge/"


def listed(folder: Path) -> list[tuple[str, str, int]]:
    first, _, _ = (folder / "sw.js").read_text(encoding="utf-8").partition("\n")[2].partition("\n")
    kept = json.loads(first.removeprefix("const KEPT = ").removesuffix(";"))
    return [(address, digest, size) for address, digest, size, _ in kept["files"]]


# Each page is there, whole to its title.
UNTITLED = """async (addresses) => {
    const wrong = [];
    for (const address of addresses) {
        const text = await fetch(address).then((response) => response.text(), String);
        if (!/<title>[^<]* - Wedgework<\\/title>|<title>Wedgework/.test(text) || !text.includes('</html>')) wrong.push(address);
    }
    return wrong;
}"""


@pytest.mark.parametrize("nth", [18, pytest.param(1, marks=pytest.mark.long)])
def test_everything_works_with_the_server_gone(nth: int, built: Path, host, visitor) -> None:
    """Every page comes; each `nth` is opened as well."""
    here = host()
    with visitor(allow=GONE) as one:
        page = one.open(here.address, stored=True)
        assert page.get_attribute("html", "data-offline") == "ready"
        assert "works without a network" in page.inner_text(".ww-offline")
        page.close()
        here.stop()
        pages = [address for address, _, _ in kept_files(built) if not address or address.endswith("/")]
        assert len(pages) > 80
        page = one.open(here.address)
        assert page.evaluate(UNTITLED, [here.address + address for address in pages]) == []
        page.close()
        for address in pages[::nth]:
            page = one.open(here.address + address)
            assert page.title().endswith("Wedgework")
            assert page.evaluate("getComputedStyle(document.body).backgroundColor") != "rgba(0, 0, 0, 0)"
            page.close()
        page = one.open(f"{here.address}{GAUGE}", live=True, stored=True)
        assert page.get_attribute("html", "data-engine") == "ready"
        page.reload()
        page.wait_for_function(LIVE)
        page.fill("[name=stitches]", "30")
        page.fill("[name=width]", "10 cm")
        settled(page)
        assert figures(page)["stitches_per_10cm"] == "30.00"
        page = one.open(f"{here.address}plan/index.html", live=True)
        page.select_option("[name=size_in]", "counts")
        page.fill("[name=needles]", "36")
        page.fill("[name=rows]", "72")
        settled(page)
        assert "36 needles" in page.inner_text("output")
        page.click("input[name=query]")
        page.keyboard.type("holding position")
        page.wait_for_selector(".md-search-result__link")
        page = one.open(f"{here.address}reference/words")
        assert page.url == f"{here.address}reference/words/"
        page = one.open(f"{here.address}not/there/")
        assert "404" in page.inner_text("h1")


def test_it_lies_under_any_path_beside_another_copy(built: Path, tmp_path: Path, host, visitor) -> None:
    for name in ("guild/knit", "guild/knit too"):
        shutil.copytree(built, tmp_path / name)
    here: Host = host(tmp_path)
    with visitor(allow=GONE) as one:
        for name in ("guild/knit/", "guild/knit%20too/"):
            assert one.open(f"{here.address}{name}", stored=True).get_attribute("html", "data-offline") == "ready"
        stores = one.context.pages[0].evaluate("caches.keys()")
        assert len(stores) == 2
        here.stop()
        for name in ("guild/knit/", "guild/knit%20too/"):
            page = one.open(f"{here.address}{name}{GAUGE}", live=True)
            assert page.get_attribute("html", "data-engine") == "ready"


# Each word of the line at the foot, with the state that it stands for.
WATCH = """addEventListener('DOMContentLoaded', () => {
    window.said = [];
    const now = () => {
        const told = [document.documentElement.dataset.offline, document.querySelector('.ww-offline')?.textContent ?? ''];
        if (told[0] !== 'none' && told.join() !== said.at(-1)?.join()) said.push(told);
    };
    const all = {subtree: true, childList: true, characterData: true, attributes: true};
    new MutationObserver(now).observe(document.documentElement, all);
});"""


@pytest.mark.fault
def test_storing_says_how_far_it_is_and_goes_on_from_there(built: Path, host, visitor) -> None:
    here: Host = host()
    last = max(kept_files(built), key=lambda file: file[2])[0]
    here.refused = {last}
    with visitor(allow=GONE) as one:
        one.context.add_init_script(WATCH)
        page = one.open(f"{here.address}reference/words/", stored=True)
        assert page.get_attribute("html", "data-offline") == "paused"
        files = len(kept_files(built))
        said = page.evaluate("window.said")
        assert {state for state, _ in said} == {"storing", "paused"}
        counts = [re.search(r": (\d+) of (\d+)\.", words) for state, words in said if state == "storing" and words]
        done = [int(count[1]) for count in counts if count and int(count[2]) == files]
        assert len(done) == len(counts) > 10
        assert done == sorted(done)
        assert f"{files - 1} of {files}" in page.inner_text(".ww-offline")
        page.close()
        here.refused = set()
        here.asked.clear()
        page = one.open(f"{here.address}reference/words/")
        page.wait_for_function(READY)
        # The browser's own questions for this page aside, only what was missing was fetched.
        assert last in here.asked
        assert not any(path.startswith(TWINS) for path in here.asked)


@pytest.mark.fault
def test_where_nothing_can_be_stored_it_is_said(host, visitor) -> None:
    here = host()
    with visitor() as one:
        one.context.add_init_script("delete Navigator.prototype.serviceWorker")
        page = one.open(f"{here.address}reference/words/", stored=True)
        assert page.get_attribute("html", "data-offline") == "impossible"
        assert "stores nothing for offline use" in page.inner_text(".ww-offline")


def test_the_list_is_what_was_built(built: Path) -> None:
    assert listed(built) == kept_files(built)
    addresses = [address for address, _, _ in listed(built)]
    assert "" in addresses
    assert "plan/" in addresses
    assert not any(address.endswith("index.html") or address == "sw.js" for address in addresses)


def test_each_twin_is_its_page_compressed(built: Path) -> None:
    for address, digest, size in listed(built):
        packed = built / twin(digest)
        if packed.is_file():
            assert packed.stat().st_size == size
            assert hashlib.sha256(gzip.decompress(packed.read_bytes())).hexdigest() == digest, address
        else:
            assert not address.endswith(("/", ".html", ".mjs")), address


def test_it_can_be_installed(host, visitor) -> None:
    here = host()
    with visitor() as one:
        page = one.open(here.address, stored=True)
        manifest = page.evaluate(
            """async () => {
                const link = document.querySelector('link[rel=manifest]').href;
                const read = await (await fetch(link)).json();
                const sizes = await Promise.all(read.icons.map(async (icon) => {
                    const image = new Image();
                    image.src = new URL(icon.src, link);
                    await image.decode();
                    return [icon.sizes, `${image.naturalWidth}x${image.naturalHeight}`];
                }));
                return {sizes, start: new URL(read.start_url, link).href, scope: new URL(read.scope, link).href};
            }"""
        )
        assert manifest["start"] == manifest["scope"] == here.address
        assert [said for said, _ in manifest["sizes"]] == ["192x192", "512x512", "512x512", "any"]
        assert all(said in ("any", real) for said, real in manifest["sizes"])
        session = one.context.new_cdp_session(page)
        errors = [error["errorId"] for error in session.send("Page.getInstallabilityErrors")["installabilityErrors"]]
        assert errors in ([], ["in-incognito"])  # a browser of a test keeps nothing
