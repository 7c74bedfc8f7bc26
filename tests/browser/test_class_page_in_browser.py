"""class.html and an appeal sheet in a real browser: nothing fetched, reachable, phone, paper."""

from __future__ import annotations

import shutil
import subprocess

import pytest
from axe_playwright_python.sync_playwright import Axe
from classes import make_class
from classes.true_results import true_result

from audit.reports.appeal_sheets import appeal_sheets
from audit.reports.class_page import render_class_html

SERIOUS = {"serious", "critical"}


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Give a folder with the page of a class of 40 and its appeal sheets."""
    made = tmp_path_factory.mktemp("class")
    result = true_result(make_class(100_301))
    (made / "class.html").write_text(render_class_html(result), encoding="utf-8")
    (made / "appeals").mkdir()
    for name, text in appeal_sheets(result).items():
        (made / "appeals" / name).write_text(text, encoding="utf-8")
    return made


@pytest.fixture(scope="module")
def pages(folder):
    return {"class": folder / "class.html", "appeal": min((folder / "appeals").iterdir())}


@pytest.mark.parametrize("which", ["class", "appeal"])
def test_no_request_leaves_and_nothing_is_refused(chrome, pages, which):
    context = chrome.new_context()
    tab = context.new_page()
    asked, said = [], []
    tab.on("request", lambda request: asked.append(request.url))
    tab.on("console", lambda message: said.append(message.text))
    tab.goto(pages[which].as_uri(), wait_until="networkidle")
    context.close()
    assert asked == [pages[which].as_uri()]
    assert said == []


@pytest.mark.parametrize("which", ["class", "appeal"])
def test_nothing_serious_stands_in_anybodys_way(chrome, pages, which):
    context = chrome.new_context(bypass_csp=True)
    tab = context.new_page()
    tab.goto(pages[which].as_uri())
    found = Axe().run(tab).response["violations"]
    context.close()
    serious = [(one["id"], one["nodes"][0]["html"]) for one in found if one["impact"] in SERIOUS]
    assert serious == []


@pytest.mark.parametrize("width_px", [390, 1200])
@pytest.mark.parametrize("which", ["class", "appeal"])
def test_page_is_no_wider_than_its_window(chrome, pages, which, width_px):
    context = chrome.new_context(viewport={"width": width_px, "height": 800})
    tab = context.new_page()
    tab.goto(pages[which].as_uri())
    root = "document.documentElement"
    shown, wide = tab.evaluate(f"[{root}.clientWidth, {root}.scrollWidth]")
    context.close()
    assert wide <= shown


def test_a_cell_opens_the_debrief_of_its_walker_and_an_appeal_its_sheet(chrome, folder, pages):
    context = chrome.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(pages["class"].as_uri())
    link = tab.locator("a.cell").first.evaluate("one => one.href")
    assert link.startswith((folder / "debriefs").as_uri())
    assert link.endswith("debrief.html#leg1")
    tab.locator(".appeal a").first.click()
    assert tab.locator("h1").inner_text().startswith("Appeal:")
    tab.locator("header a").first.click()
    assert tab.url == pages["class"].as_uri()
    context.close()


def test_columns_of_the_points_keep_their_names_on_a_phone(chrome, pages):
    context = chrome.new_context(viewport={"width": 390, "height": 800})
    tab = context.new_page()
    tab.goto(pages["class"].as_uri())
    named = tab.locator(".matrix td").first.evaluate(
        "one => getComputedStyle(one, '::before').content"
    )
    point = tab.locator(".matrix td").first.get_attribute("data-name")
    context.close()
    assert point
    assert point in named


def test_it_prints_on_few_pages_and_a_sheet_on_one(chrome, pages, tmp_path):
    if shutil.which("pdfinfo") is None:
        pytest.skip("pdfinfo is not installed")
    context = chrome.new_context()
    tab = context.new_page()
    counts = {}
    for which, page in pages.items():
        tab.goto(page.as_uri())
        tab.pdf(path=tmp_path / f"{which}.pdf", format="A4", prefer_css_page_size=True)
        told = subprocess.run(["pdfinfo", tmp_path / f"{which}.pdf"], capture_output=True,
                              text=True, check=True).stdout  # fmt: skip
        counts[which] = int(told.split("Pages:")[1].split()[0])
    context.close()
    assert counts["appeal"] == 1
    assert counts["class"] <= 9  # two lanes of 20, twelve figures


def test_every_appeal_sheet_fits_one_page(chrome, folder, tmp_path):
    if shutil.which("pdfinfo") is None:
        pytest.skip("pdfinfo is not installed")
    context = chrome.new_context()
    tab = context.new_page()
    longest = max((folder / "appeals").iterdir(), key=lambda path: len(path.read_text("utf-8")))
    tab.goto(longest.as_uri())
    tab.pdf(path=tmp_path / "sheet.pdf", format="Letter", prefer_css_page_size=True)
    context.close()
    told = subprocess.run(["pdfinfo", tmp_path / "sheet.pdf"], capture_output=True, text=True,
                          check=True).stdout  # fmt: skip
    assert int(told.split("Pages:")[1].split()[0]) == 1
