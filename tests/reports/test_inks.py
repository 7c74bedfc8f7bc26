"""By day and on a dark screen every ink of page and pictures can be read (WCAG 2.2, level AA)."""

from __future__ import annotations

import re

import pytest
from reports.sample_debrief import sample_debrief

from audit.reports.html_report import page_templates, render_html

SHEET = page_templates().get_template("inks.css").render()
WORDS = ("ink", "soft", "blue", "orange", "claim", "grey-text")
SIGNS = (*WORDS, "grey", "tick")


def inks(part):
    """The colours of one part of the sheet, by name, each as red, green and blue from 0 to 1."""
    named = re.findall(r"--([a-z-]+): #([0-9a-f]{3,6});", part)
    whole = {name: code if len(code) == 6 else "".join(c * 2 for c in code) for name, code in named}
    return {
        name: tuple(int(code[i : i + 2], 16) / 255 for i in (0, 2, 4))
        for name, code in whole.items()
    }


BY_DAY, AT_NIGHT = (inks(part) for part in SHEET.split("@media")[:2])


def light(colour):
    """Relative luminance, as WCAG 2.2 defines it."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in colour]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    low, high = sorted((light(one), light(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("sheet", [BY_DAY, AT_NIGHT], ids=["by day", "at night"])
def test_words_and_signs_stand_out_from_the_paper(sheet):
    assert min(contrast(sheet[name], sheet["paper"]) for name in WORDS) >= 4.5
    assert min(contrast(sheet[name], sheet["pale"]) for name in ("ink", "soft", "blue")) >= 4.5
    assert min(contrast(sheet[name], sheet["paper"]) for name in SIGNS) >= 3.0


@pytest.mark.parametrize("sheet", [BY_DAY, AT_NIGHT], ids=["by day", "at night"])
def test_walker_and_miss_differ_in_grey(sheet):
    assert contrast(sheet["blue"], sheet["claim"]) >= 1.4
    assert contrast(sheet["blue"], sheet["pale-blue"]) >= 3.0


def test_every_ink_by_day_has_one_at_night():
    assert BY_DAY.keys() == AT_NIGHT.keys()


def test_no_colour_of_a_picture_is_left_by_day_on_a_dark_screen():
    page = re.sub(r"<script.*?</script>", "", render_html(sample_debrief()), flags=re.DOTALL)
    drawn = set(re.findall(r'<[a-z]+ [^>]*?(?:fill|stroke)="([^"]+)"', page))
    known = set(re.findall(r'\[(?:fill|stroke)="([^"]+)"\]', SHEET))
    assert drawn - known <= {"none", "transparent"}


def test_a_picture_of_the_ground_stays_by_day():
    """Its own colours are those of paper: light lines over it could not be seen."""
    assert ".by-day" in SHEET.split("@media")[0]
