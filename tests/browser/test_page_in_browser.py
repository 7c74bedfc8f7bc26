"""debrief.html in a real browser: it loads whole, fits a phone, prints."""

from __future__ import annotations

import re
import shutil
import subprocess

import pytest
from PIL import Image
from reports.sample_debrief import sample_debrief

from audit.reports.html_report import render_html


@pytest.fixture(scope="module")
def page(tmp_path_factory):
    path = tmp_path_factory.mktemp("page") / "debrief.html"
    path.write_text(render_html(sample_debrief()), encoding="utf-8")
    return path


def test_page_loads_whole(chrome, page):
    context = chrome.new_context(java_script_enabled=False)  # the script adds pictures of its own
    tab = context.new_page()
    tab.goto(page.as_uri())
    shown = tab.content()
    context.close()
    assert shown.count('role="img"') == 12
    assert shown.rstrip().endswith("</html>")
    # What the parser had to repair would add or drop elements. The text of scripts is none of
    # it: the library, once unpacked, holds the names of elements too.
    shown, written = (
        re.sub(r"<script.*?</script>", "", text, flags=re.DOTALL)
        for text in (shown, page.read_text(encoding="utf-8"))
    )
    for tag in ("section", "article", "tr", "td", "th", "svg", "li", "dd"):
        assert len(re.findall(rf"<{tag}[ >]", shown)) == len(re.findall(rf"<{tag}[ >]", written))


@pytest.mark.parametrize("width_px", [400, 1200])
@pytest.mark.parametrize("name", ["Post 7", "The ruined sheepfold " * 3, "M" * 48])
def test_page_is_no_wider_than_its_window(browser, tmp_path, width_px, name):
    """A frame of the window's width gets no scroll bar sideways, so nothing is cut off."""
    page = tmp_path / "debrief.html"
    page.write_text(render_html(sample_debrief(names={"Post 7": name})), encoding="utf-8")
    probe = tmp_path / "probe.html"
    probe.write_text(
        f'<iframe id="f" src="{page.as_uri()}" style="width:{width_px}px;height:900px;border:0">'
        "</iframe><script>f.onload=()=>{const e=f.contentDocument.documentElement;"
        'document.title=e.scrollWidth+" of "+e.clientWidth}</script>',
        encoding="utf-8",
    )
    shown = browser(probe, "--dump-dom", "--allow-file-access-from-files",
                    "--virtual-time-budget=4000", f"--window-size={width_px + 100},1000")  # fmt: skip
    title = re.search(r"<title>(\d+) of (\d+)</title>", shown)
    assert title, "the probe saw no page"
    assert int(title[1]) <= int(title[2])


def test_picture_of_the_page_has_ink(browser, page, tmp_path):
    picture = tmp_path / "page.png"
    browser(page, "--window-size=1200,1500", f"--screenshot={picture}")
    with Image.open(picture) as image:
        colours = {colour for _, colour in image.convert("RGB").getcolors(1 << 24)}
    assert (0x16, 0x4D, 0x8C) in colours  # the walk
    assert (0xBF, 0x54, 0x07) in colours  # the misses


def test_page_prints_essentials_first_then_legs(browser, page, tmp_path):
    pdf = tmp_path / "page.pdf"
    browser(page, "--no-pdf-header-footer", f"--print-to-pdf={pdf}")
    assert pdf.read_bytes().startswith(b"%PDF-")
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext is not installed")
    said = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, text=True, check=True)
    pages = said.stdout.split("\f")[:-1]
    assert len(pages) <= 5
    assert "In short" in pages[0]
    assert "Consistent with" in pages[0]  # the last column of the table of legs
    assert "From leaving for each leg" not in pages[0]
    assert "From leaving for each leg" in pages[1]  # the walk over time, and then the legs
    assert "Leg by leg" in pages[1]


def test_page_runs_no_script_of_a_file(browser, tmp_path):
    name = "<script>document.title='ran'</script><img src=x onerror=\"document.title='ran'\">"
    path = tmp_path / "evil.html"
    path.write_text(render_html(sample_debrief(names={"Post 7": name})), encoding="utf-8")
    assert "<title>ran" not in browser(path, "--dump-dom")
