"""No English sentence is left on a German page: all that is said is marked, and nothing else stays."""

from __future__ import annotations

import datetime as dt
import io
import re
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import numpy as np
import openpyxl
import pytest
from classes import make_class
from classes.true_results import true_result
from school_records.attempts import walks

import audit
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.forecast.course_forecast import forecast_course
from audit.forecast.walker_scatter import scatter_of_walker
from audit.geodesy.areas_on_grid import GroundAreas
from audit.leg_card import work_out_card
from audit.rehearsal.rehearse import rehearse
from audit.rehearsal.ways_on_ground import Surroundings
from audit.reports.appeal_sheets import appeal_sheets
from audit.reports.card_page import render_card_page
from audit.reports.card_text import render_card_text
from audit.reports.check_report import render_check
from audit.reports.class_page import render_class_html
from audit.reports.class_spreadsheet import render_class_xlsx
from audit.reports.class_terminal import render_class_terminal
from audit.reports.forecast_report import render_forecast
from audit.reports.html_report import render_html
from audit.reports.lanes_report import render_lanes, render_lanes_html
from audit.reports.pace_report import render_pace
from audit.reports.rehearsal_report import render_rehearsal, render_rehearsal_html
from audit.reports.terminal_report import render_terminal
from audit.reports.trend_page import render_trend_page
from audit.reports.trend_report import render_trend
from audit.school_records.work_out_trend import work_out_trend
from audit.words import spoken, told
from audit.words.in_other_units import Units
from audit.words.spoken_words import Words

DEMO = Path(audit.__file__).parent / "demo_course"
READ_TO_PEOPLE = {"aria-label", "title", "alt", "data-name", "placeholder"}
BARE = {
    "m", "s", "h", "min", "km", "mil", "gon", "UTC", "GN", "MN", "N", "E", "S", "W", "B", "H",
    "leg", "audit", "UTM", "zone", "north", "WGS", "EPSG",
}  # fmt: skip
"""Signs of units, letters of the map, names of grids and of the program."""


class Marked(Words):
    """Words that put everything they say in brackets."""

    def say(self, ident: str, **values: object) -> str:
        return f"⟦{super().say(ident, **values)}⟧"


class SeenText(HTMLParser):
    """Gather what people see or have read to them."""

    def __init__(self) -> None:
        super().__init__()
        self.seen: list[str] = []
        self.silent = 0

    def handle_starttag(self, tag, attributes):
        self.silent += tag in {"script", "style"}
        self.seen += [value for name, value in attributes if name in READ_TO_PEOPLE and value]

    def handle_endtag(self, tag):
        self.silent -= tag in {"script", "style"}

    def handle_data(self, data):
        if not self.silent and data.strip():
            self.seen.append(data)


def unsaid(text: str) -> str:
    """What stands outside of all brackets; a label that was cut short has no closing one."""
    while "⟦" in text:
        shorter = re.sub(r"⟦[^⟦⟧]*⟧", " ", text)
        text = shorter if shorter != text else re.sub(r"⟦.*$", " ", text, flags=re.DOTALL)
    return text


@pytest.fixture(scope="module")
def walk():
    plan = audit.read_plan(DEMO / "plan.toml")
    track, log = audit.read_track(DEMO / "walk.gpx"), audit.read_log(DEMO / "log.csv")
    return audit.debrief(plan, track, log=log)


@pytest.fixture(scope="module")
def walk_with_a_point_left_out(tmp_path_factory):
    """The demo's walk, set against a plan with one point more."""
    points, _ = (DEMO / "plan.toml").read_text(encoding="utf-8").split("[[leg]]", 1)
    before, after = points.split('[[point]]\nname = "Fern Rise"')
    lost = '[[point]]\nname = "Lost Well"\nposition = "16S GF 5010 6060"\n\n'
    plan = tmp_path_factory.mktemp("plan") / "plan.toml"
    plan.write_text(f'{before}{lost}[[point]]\nname = "Fern Rise"{after}', encoding="utf-8")
    return audit.debrief(audit.read_plan(plan), audit.read_track(DEMO / "walk.gpx"))


def names(debrief) -> set[str]:
    """Words of the walk's own files."""
    texts = [debrief.card.name, debrief.quality.source, "UTM WGS", debrief.card.model]
    texts += [point.name for point in debrief.points]
    texts += [text for leg in debrief.legs for text in (leg.audit.card.note, leg.noted)]
    return {word for text in texts for word in re.findall(r"[^\W\d_]+", text)}


def strange(texts, known: set[str]) -> list[str]:
    return [text for text in texts if set(re.findall(r"[^\W\d_]{2,}", unsaid(text))) - known]


def test_page(walk):
    page = SeenText()
    page.feed(render_html(walk, words=Marked(language="de")))
    assert len(page.seen) > 500
    assert strange(page.seen, names(walk) | BARE) == []


def test_page_of_a_walk_with_a_point_left_out(walk_with_a_point_left_out):
    """Bug: why a leg was not walked stood in English and metres on every page."""
    walk = walk_with_a_point_left_out
    assert [leg.audit.status for leg in walk.legs].count("skipped") == 2
    page = SeenText()
    page.feed(render_html(walk, words=Marked(language="de")))
    assert strange(page.seen, names(walk) | BARE) == []
    page.feed(render_html(walk, words=Words(language="de", units=Units(length="yards"))))
    assert any(re.search(r"Lost Well war nie näher als \d+\s+yd", one) for one in page.seen)


def test_figures_have_the_decimal_sign_of_the_language(walk):
    page = SeenText()
    page.feed(render_html(walk, words=Words(language="de")))
    numbers = [one.strip() for one in page.seen if re.fullmatch(r"\s*[\d.,]+\s*", one)]
    assert any("," in one for one in numbers)  # the kilometres at the edge of the map
    assert [one for one in numbers if "." in one] == []


def test_short_debrief(walk):
    told = render_terminal(walk, Marked(language="de")).splitlines()
    assert strange(told, names(walk) | BARE) == []


def test_check():
    plan = audit.read_plan(DEMO / "plan.toml")
    checked = audit.check_plan(plan)
    known = {word for text in [checked.card.name, checked.card.model,
                               *(point.name for point in checked.card.points)]
             for word in re.findall(r"[^\W\d_]+", text)}  # fmt: skip
    told = render_check(checked, Marked(language="de")).splitlines()
    assert strange(told, known | BARE) == []


@pytest.fixture(scope="module")
def demo_plan():
    return audit.read_plan(DEMO / "plan.toml")


def names_of_card(card) -> set[str]:
    texts = [card.name, card.model, *(point.name for point in card.points)]
    texts += [leg.note for leg in card.legs]
    return {word for text in texts for word in re.findall(r"[^\W\d_]+", text)}


def test_card(demo_plan):
    carried = audit.carried_card(demo_plan)
    known = names_of_card(carried.card) | BARE
    with spoken(Marked(language="de")):
        page = SeenText()
        page.feed(render_card_page(carried, "a6"))
        text = render_card_text(carried).split("\n\n")
    assert len(page.seen) > 100
    assert strange(page.seen, known) == []
    assert strange(text, known) == []


@pytest.fixture(scope="module")
def a_class():
    return true_result(make_class(100_301, walkers=16, legs=4))


def names_of_class(result) -> set[str]:
    """Names, the sentences of plans and standard, and refusals, which are in English only."""
    texts = [result.name, result.standard.name, result.standard.edition, result.fingerprint]
    texts += [*result.notes, *(one.problem or "" for one in result.walkers)]
    for leg in (leg for one in result.walkers for leg in one.legs):  # made without judging
        texts += [*leg.point.evidence_for, *leg.point.evidence_against]
    texts += [one for pair in result.standard.sources for one in pair] + [*result.standard.notes]
    texts += [
        text for one in result.walkers for text in (one.name, one.device, one.compass, *one.tracks)
    ]
    for lane in result.lanes:
        texts += [lane.name, lane.plan_file, lane.grid, lane.fingerprint, lane.course]
        texts += [point.name for point in lane.points]
    return {word for text in texts for word in re.findall(r"[^\W\d_]+", text)}


def test_class_page_and_appeal_sheets(a_class):
    known = names_of_class(a_class) | BARE
    with spoken(Marked(language="de")):
        pages = [render_class_html(a_class), *list(appeal_sheets(a_class).values())[:6]]
        told = [re.sub(r"[+x?.()]{2,}", "", line)  # the signs of the points
                for line in render_class_terminal(a_class).splitlines()]  # fmt: skip
    assert len(pages) > 3
    for text in pages:
        page = SeenText()
        page.feed(text)
        # A drawn figure shows no more of a long label than there is room for.
        assert strange([one.rstrip("…") for one in page.seen], known) == []
    assert strange(told, known) == []


def test_spreadsheet_of_a_class(a_class):
    with spoken(Marked(language="de")):
        book = openpyxl.load_workbook(io.BytesIO(render_class_xlsx(a_class)))
    for page in book:
        assert unsaid(page.title).strip() == ""
        assert strange([str(cell.value) for cell in page[1]], set()) == []


def test_forecast(demo_plan):
    card = work_out_card(demo_plan)
    scatter = replace(scatter_of_walker(()), click_deg=3.0)
    made = forecast_course(card, scatter, aim_off_m=40.0)
    with spoken(Marked(language="de")):
        told = render_forecast(made).split("\n\n")
    assert strange(told, names_of_card(card) | BARE) == []


def test_lanes(demo_plan):
    card = work_out_card(demo_plan)
    lanes = [Lane(name=name, source="plan.toml", card=card) for name in ("Oak", "Elm")]
    checked = check_lanes(lanes, GroundAreas(), sets_out=dt.time(23, 0))
    known = names_of_card(card) | BARE | {"Oak", "Elm"}
    assert checked.findings
    with spoken(Marked(language="de")):
        page = SeenText()
        page.feed(render_lanes_html(checked, GroundAreas()))
        told_all = render_lanes(checked).splitlines()
        told_all += [told(note) for note in checked.notes]
    assert strange(page.seen, known) == []
    assert strange(told_all, known) == []


def test_pace_count():
    track = audit.read_track(DEMO / "walk.gpx")
    with spoken(Marked(language="de")):
        told_all = render_pace(audit.pace_count([track], each=[3200.0])).splitlines()
    *said, line = told_all
    assert strange(said, {"walk", "gpx"} | BARE) == []
    assert line.startswith("paces_per_100m")


def test_rehearsal(demo_plan):
    card = work_out_card(demo_plan)
    made = rehearse(card, Surroundings())
    known = names_of_card(card) | BARE | {"csv", "json", "tracks", "rehearsal", "GF"}
    with spoken(Marked(language="de")):
        page = SeenText()
        page.feed(render_rehearsal_html(made, GroundAreas()))
        told_all = render_rehearsal(made).splitlines()
        told_all += [told(note) for note in made.notes]
    assert len(page.seen) > 500
    assert strange(page.seen, known) == []
    assert strange(told_all, known) == []


def test_trend():
    rng = np.random.default_rng(21)
    day = walks(rng, 9, 6, bias=12.0, drift=-1.5)
    night = [
        replace(one, begun_s=one.begun_s + 4e4, ended_s=one.ended_s + 4e4)
        for one in walks(rng, 5, 5, light="night")
    ]
    trend = work_out_trend("Somebody", [*day, *night])
    known = {"Somebody"} | BARE | {word for one in [*day, *night] for word in one.course.split()}
    with spoken(Marked(language="de")):
        page = SeenText()
        page.feed(render_trend_page(trend))
        told_all = render_trend(trend).split("\n\n")
    assert strange(page.seen, known) == []
    assert strange(told_all, known) == []


def test_programs_read_the_same_in_any_words(walk):
    """Bug: the descriptions in debrief.gpx were half in English, half in German and yards."""
    from audit.reports.csv_report import render_csv
    from audit.reports.geojson_report import render_geojson
    from audit.reports.gpx_report import render_gpx
    from audit.reports.json_report import render_json

    writers = (render_json, render_csv, render_geojson, render_gpx)
    plain = [render(walk) for render in writers]
    with spoken(Words(language="de", units=Units(angle="gon", length="yards"))):
        assert [render(walk) for render in writers] == plain
    assert "wie geplant" not in plain[0]
