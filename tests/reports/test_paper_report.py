"""Paper: the essentials on one sheet, then the legs; the overlay true to scale."""

from __future__ import annotations

import shutil
import subprocess

import numpy as np
import pytest
from PIL import Image
from reports.sample_debrief import sample_debrief

from audit.errors import OutputRefusedError
from audit.reports.overlay import overlay
from audit.reports.paper_report import render_overlay, render_pdf
from audit.reports.paper_sizes import MARGIN_MM

PX_A_MM = 10
"""254 dots to the inch."""


def tool(name):
    if shutil.which(name) is None:
        pytest.skip(f"{name} is not installed")
    return name


def run(*words):
    return subprocess.run(words, capture_output=True, text=True, check=True).stdout


@pytest.fixture(scope="module")
def pdf(tmp_path_factory):
    path = tmp_path_factory.mktemp("paper") / "debrief.pdf"
    path.write_bytes(render_pdf(sample_debrief()))
    return path


def test_essentials_come_first_then_the_legs(pdf):
    pages = run(tool("pdftotext"), "-layout", pdf, "-").split("\f")[:-1]
    for words in ("In short", "The worst is leg 1", "Consistent with", "Post 9", "head-count"):
        assert words in pages[0]
    assert pages[1].lstrip().startswith("Leg by leg")
    assert "Leg 4: Post 5 to Post 9, skipped" in " ".join(" ".join(pages).split())


@pytest.mark.parametrize(("paper", "size_pt"), [("a4", (595.3, 841.9)), ("letter", (612, 792))])
def test_size_of_the_sheets(tmp_path, paper, size_pt):
    path = tmp_path / "debrief.pdf"
    path.write_bytes(render_pdf(sample_debrief(), paper))
    said = run(tool("pdfinfo"), path)
    width, height = said.split("Page size:")[1].split("pts")[0].split(" x ")
    assert (float(width), float(height)) == pytest.approx(size_pt, abs=0.5)
    assert int(said.split("Pages:")[1].split()[0]) <= 5


def test_same_debrief_gives_the_same_paper(pdf):
    assert render_pdf(sample_debrief()) == pdf.read_bytes()


def test_paper_reads_in_grey(pdf, tmp_path):
    """Plan, walk and miss differ in darkness, not only in colour (WCAG's luminance)."""
    run(tool("pdftoppm"), "-r", "100", "-f", "1", "-l", "1", "-png", pdf, tmp_path / "page")
    grey = np.asarray(Image.open(next(tmp_path.glob("page*.png"))).convert("L"))
    # Blue 0x164d8c is 71 in grey, orange 0xbf5407 is 107 (ITU-R 601, as Pillow mixes), ink 28.
    for darkness in (28, 71, 107):
        assert (np.abs(grey.astype(int) - darkness) <= 2).sum() > 50


@pytest.mark.parametrize(("scale", "kilometre_mm"), [(25_000, 40.0), (50_000, 20.0)])
def test_overlay_is_true_to_scale(tmp_path, scale, kilometre_mm):
    debrief = sample_debrief(stretch=3.0, interval_s=15.0)
    path = tmp_path / "overlay.pdf"
    path.write_bytes(render_overlay(debrief, scale))
    run(tool("pdftoppm"), "-r", str(25.4 * PX_A_MM), "-png", path, tmp_path / "sheet")
    sheet = np.asarray(Image.open(next(tmp_path.glob("sheet*.png"))).convert("RGB")).astype(int)
    line = np.all(np.abs(sheet - 0xA6) <= 24, axis=2)  # the grey of the kilometre lines
    for along in (0, 1):
        counts = line.sum(axis=along)
        places = np.flatnonzero(counts > 0.9 * counts.max())
        lines = [
            group.mean() for group in np.split(places, np.flatnonzero(np.diff(places) > 3) + 1)
        ]
        assert len(lines) >= 2
        steps_mm = np.diff(lines) / PX_A_MM
        assert steps_mm == pytest.approx(kilometre_mm, abs=0.15)  # a dot and a half of the print


def test_ruler_of_the_overlay_is_as_long_as_it_says(tmp_path):
    path = tmp_path / "overlay.pdf"
    path.write_bytes(render_overlay(sample_debrief(), 25_000))
    assert "50 mm long" in run(tool("pdftotext"), path, "-")
    run(tool("pdftoppm"), "-r", str(25.4 * PX_A_MM), "-png", path, tmp_path / "sheet")
    dark = np.asarray(Image.open(next(tmp_path.glob("sheet*.png"))).convert("L")) < 100
    rows = dark[: 40 * PX_A_MM, : int((MARGIN_MM + 52) * PX_A_MM)]
    longest = max(_longest_run(row) for row in rows)
    assert longest / PX_A_MM == pytest.approx(50.0, abs=0.3)  # millimetres


def _longest_run(row) -> int:
    edges = np.flatnonzero(np.diff(np.concatenate([[0], row.astype(int), [0]])))
    return int((edges[1::2] - edges[::2]).max(initial=0))


def test_larger_course_takes_a_larger_sheet_and_then_is_refused():
    assert overlay(sample_debrief(), 25_000, "a4").sheet.width_mm in {210.0, 297.0}
    wide = sample_debrief(stretch=4.0, interval_s=20.0)
    assert (
        overlay(wide, 25_000, "a4").sheet.height_mm >= overlay(wide, 50_000, "a4").sheet.height_mm
    )
    with pytest.raises(OutputRefusedError, match="Choose a smaller scale"):
        overlay(sample_debrief(stretch=60.0, interval_s=300.0), 25_000, "a4")
