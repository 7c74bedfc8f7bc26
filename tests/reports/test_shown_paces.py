"""One pace count goes by one word, on the card and everywhere after it."""

from __future__ import annotations

import re
from importlib.resources import files
from types import SimpleNamespace

import pytest
from coaching.demo_walk import demo
from school_records.attempts import walks

import audit
from audit.leg_card.carried_card import carried_card
from audit.measurement.paces_of_walk import PaceRate
from audit.reports.card_text import render_card_text
from audit.reports.check_report import render_check
from audit.reports.html_report import render_html
from audit.reports.pace_report import _rate, _rounded
from audit.reports.terminal_report import render_terminal
from audit.reports.trend_page import render_trend_page
from audit.reports.trend_report import render_trend
from audit.school_records.work_out_trend import work_out_trend
from audit.words import Words, spoken
from audit.words.in_other_units import Units

GERMAN = Words(language="de")
OTHER = re.compile(r"(?<![Kk]lein)\bSchritte\b(?! in Marschrichtung| zugeben)")
"""Steps, as advice has them that is not about a count, are left out."""


def told(words):
    """Give card, check, debrief and trend of the demo's plan."""
    plan, finished, _ = demo()
    with spoken(words):
        yield render_card_text(carried_card(plan))
        yield render_check(audit.check_plan(plan))
        yield render_terminal(finished)
        yield re.sub(r"<script.*?</script>", "", render_html(finished), flags=re.DOTALL)
        trend = work_out_trend("Somebody", walks_of_somebody())
        yield render_trend(trend)
        yield render_trend_page(trend)


def walks_of_somebody():
    import numpy as np

    return walks(np.random.default_rng(21), 9, 6, bias=12.0, drift=-1.5)


def test_a_double_pace_is_called_that_everywhere():
    """Bug: the German debrief told "65 Schritte auf 100 m" where the card had Doppelschritte."""
    texts = list(told(GERMAN))
    assert [OTHER.findall(text) for text in texts] == [[]] * len(texts)
    assert all("Doppelschritte" in text for text in texts)
    assert all("double paces" in text.lower() for text in told(None))


def test_words_that_chose_a_pace_are_kept_to():
    _, finished, _ = demo()
    single = Words(language="de", units=Units(paces="single", paces_counted="double"))
    assert "948 Einfachschritte" in render_terminal(finished, single)  # 474 counted


def test_the_grid_is_named_in_the_words_of_the_reader():
    """Bug: the German page said "UTM zone 16 north"."""
    _, finished, _ = demo()
    assert finished.card.grid.name == "UTM zone 16 north, WGS 84"
    assert "UTM-Zone 16 Nord, WGS 84" in render_html(finished, words=GERMAN)


POINT = re.compile(r"\bPunkt(e|es|en)?\b")
NOT_OF_THE_COURSE = {
    "lanes": "Strich und Punkt", "rehearse": "Strich und Punkt", "plan": "Eine Route ohne Punkte",
    "order": "# ",
}  # fmt: skip
"""Dots of a line, those of a GPX route, and a comment."""


def test_every_point_of_a_course_is_the_term():
    """Bug: with the term "posten" German still said "dieses Punktes", "östlich des Punktes"."""
    found = {}
    for file in files("audit.words").joinpath("de").iterdir():
        topic = file.name.removesuffix(".ftl")
        if topic != "terms":
            lines = file.read_text(encoding="utf-8").splitlines()
            spared = NOT_OF_THE_COURSE.get(topic, "\0")
            found[topic] = [one for one in lines if POINT.search(one) and spared not in one]
    assert {topic: lines for topic, lines in found.items() if lines} == {}


@pytest.mark.parametrize(
    ("ident", "values"),
    [
        (
            "class-caught",
            {
                "leg": "1",
                "lane": "A",
                "point": "P",
                "walkers": "4",
                "doubtful": "0",
                "unevidenced": "0",
            },
        ),
        ("class-tracks-said", {"walks": 4, "doubtful": 0}),
        ("appeal-others-said", {"walks": 4, "doubtful": 0, "unevidenced": "0"}),
    ],
)
def test_one_walker_is_told_in_the_singular(ident, values):
    """Bug: "1 verfehlten ihn"."""
    said = GERMAN.say(ident, **values, found=1, missed=1)
    assert "1 verfehlte ihn" in said
    assert "fanden" not in said
    said = GERMAN.say(ident, **values, found=2, missed=2)
    assert "2 verfehlten ihn" in said
    assert "fanden" in said


@pytest.mark.parametrize(
    ("sd", "paces", "told"),
    [
        (0.4, "double", "65.3 ±0.8"),
        (0.6, "double", "65 ±1"),
        (0.4, "single", "131 ±2"),  # of single paces it is 0.8
        (0.2, "single", "130.6 ±0.8"),
    ],
)
def test_a_rate_has_the_decimals_that_its_error_bears_in_the_pace_shown(sd, paces, told):
    """Bug: two rules, and neither went by the unit: what was told in tenths had its error in ones."""
    rate = PaceRate(per_100m=65.3, sd=sd, metres=1000.0)
    count = SimpleNamespace(pace="double")
    with spoken(Words(units=Units(paces=paces))):
        assert _rate(rate, count) == told
    assert _rounded(rate) == (65.3 if sd < 0.5 else 65.0)
