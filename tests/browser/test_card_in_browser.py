"""The card to carry in a browser: it fits its paper and a phone, is grey throughout, and is read out."""

from __future__ import annotations

import io
import re
import subprocess
from importlib.resources import as_file, files

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image

import audit
from audit.reports.card_page import render_card_page
from audit.reports.paper_sizes import CARD_PAPERS, card_sheet


@pytest.fixture(scope="module")
def card():
    with as_file(files("audit").joinpath("demo_course", "plan.toml")) as path:
        plan = audit.read_plan(path, safety_grid_azimuth_deg=180.0, safety_note="to the road")
        return audit.carried_card(plan)


@pytest.fixture
def opened(chrome, tmp_path, card):
    """Give a function that opens the card of a paper at a width of screen."""
    contexts = []

    def open_page(paper, width_px):
        path = tmp_path / f"{paper}.html"
        path.write_text(render_card_page(card, paper), encoding="utf-8")
        context = chrome.new_context(bypass_csp=True, viewport={"width": width_px, "height": 800})
        contexts.append(context)
        page = context.new_page()
        page.goto(path.as_uri())
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_nothing_runs_over_the_edge_of_the_sheet(opened, paper, tmp_path):
    page = opened(paper, 1000)
    made = tmp_path / "card.pdf"
    page.pdf(path=str(made), prefer_css_page_size=True)
    sheet = card_sheet(paper)
    box = re.search(rb"/MediaBox ?\[ ?0 0 ([\d.]+) ([\d.]+) ?\]", made.read_bytes())
    size_mm = [float(one) / 72.0 * 25.4 for one in box.groups()]
    assert size_mm == pytest.approx([sheet.width_mm, sheet.height_mm], abs=0.5)
    page.emulate_media(media="print")
    wide = page.evaluate(
        "[...document.querySelectorAll('main *')].filter("
        "one => one.getBoundingClientRect().right > document.body.getBoundingClientRect().right + 1)"
        ".length"
    )
    assert wide == 0


@pytest.mark.parametrize("paper", ["a6", "a4"])
def test_a_phone_shows_it_without_scrolling_sideways(opened, paper):
    page = opened(paper, 390)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_it_is_black_on_white_throughout(opened):
    # Red ink vanishes by red light: each dot has the same red, green and blue, but for the
    # fringes of smoothed type.
    shot = opened("a5", 700).screenshot(full_page=True)
    dots = np.asarray(Image.open(io.BytesIO(shot)).convert("RGB")).astype(int)
    assert np.ptp(dots, axis=2).max() == 0
    assert dots.min() == 0
    assert dots.max() == 255


def test_those_who_hear_it_read_can_use_it(opened):
    assert Axe().run(opened("a5", 700)).violations_count == 0


def test_no_leg_is_torn_by_the_edge_of_a_page(opened, tmp_path):
    made = tmp_path / "card.pdf"
    opened("a6", 700).pdf(path=str(made), prefer_css_page_size=True)
    try:
        text = subprocess.run(
            ["pdftotext", "-layout", made, "-"], capture_output=True, text=True, check=True
        ).stdout
    except FileNotFoundError:
        pytest.skip("pdftotext is not installed")
    pages = [page for page in text.split("\f") if page.strip()]
    begun = [len(re.findall(r"^ *\d: ", page, re.MULTILINE)) for page in pages]
    ended = [page.count("reached at") for page in pages]
    assert begun == ended
    assert sum(begun) == 7
