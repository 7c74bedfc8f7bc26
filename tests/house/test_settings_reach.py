"""Settings that somebody hands in go all the way down; no part takes a default in their place."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from docs.readme_parts import blocks
from house.watched_settings import ROOT, given_settings, watched
from school_records.attempts import walks

import audit
from audit.classroom.attempt_of_debrief import attempt_of_debrief
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.forecast.course_forecast import forecast_course
from audit.leg_card import work_out_card
from audit.readers.areas_file import read_areas
from audit.readers.earlier_debriefs import read_earlier_debriefs
from audit.rehearsal.rehearse import rehearse
from audit.reports.card_text import render_card_text
from audit.reports.write import render_gpx, render_html
from audit.school_records.work_out_trend import work_out_trend

COURSE = ROOT / "demo_course"
SETTINGS = given_settings()


@cache
def read():
    """Give plan, track and log of the demo."""
    return (
        audit.read_plan(COURSE / "plan.toml"),
        audit.read_track(COURSE / "walk.gpx"),
        audit.read_log(COURSE / "log.csv"),
    )


def debrief_with_card_and_log():
    plan, track, log = read()
    made = audit.debrief(plan, track, log=log, own_card=COURSE / "plan.toml", settings=SETTINGS)
    made.to_dict()
    made.legs_frame()
    render_html(made)
    render_gpx(made)
    attempt_of_debrief(made, "walker-1", "0")


def class_on_two_lanes():
    plan, track, _ = read()
    lanes = {"east": plan, "west": replace(plan, name="West")}
    standard = audit.read_standard("day-course", settings=SETTINGS)
    audit.grade(lanes, [track], standard, settings=SETTINGS)


def check_of_a_plan():
    audit.check_plan(read()[0], settings=SETTINGS)


def card_to_carry():
    render_card_text(audit.carried_card(read()[0], settings=SETTINGS))


def plan_on_another_grid():
    audit.plan_onto_grid(read()[0], "EPSG:32617", settings=SETTINGS)


def pace_count():
    audit.pace_count([read()[1]], settings=SETTINGS)


def card():
    return work_out_card(read()[0], settings=SETTINGS)


def forecast():
    forecast_course(card(), settings=SETTINGS.forecast)


def rehearsal_on_a_slope():
    one = card()
    rehearse(replace(one, legs=one.legs[:2]), heights=lambda at: 0.1 * at[:, 0], settings=SETTINGS)


def lanes_side_by_side():

    lanes = [Lane(name=name, source="", card=card()) for name in ("east", "west")]
    check_lanes(lanes, settings=SETTINGS)


def trend():
    work_out_trend("Somebody", list(walks(np.random.default_rng(1), 5, 4)), SETTINGS)


@pytest.mark.parametrize(
    "asked",
    [
        debrief_with_card_and_log,
        class_on_two_lanes,
        check_of_a_plan,
        card_to_carry,
        plan_on_another_grid,
        pace_count,
        forecast,
        rehearsal_on_a_slope,
        lanes_side_by_side,
        trend,
    ],
)
def test_what_is_asked_with_settings_goes_by_them_alone(asked):
    """Bug: the card was worked out by the defaults, whatever settings its debrief was given."""
    read()
    with watched() as reads:
        asked()
    assert reads.defaults == set()
    assert reads.given


READ = {
    "plan.toml": audit.read_plan,
    "plan.csv": audit.read_plan,
    "plan.gpx": audit.read_plan,
    "plan.geojson": audit.read_plan,
    "free.toml": audit.read_plan,
    "log.csv": audit.read_log,
    "roster.csv": audit.read_roster,
    "codes.csv": audit.read_punches,
    "standard.toml": audit.read_standard,
    "words.toml": audit.read_words,
    "ground.geojson": read_areas,
    "walk.gpx": audit.read_track,
    "debrief.json": lambda path, settings: read_earlier_debriefs([path], settings=settings),
}


@pytest.mark.parametrize("name", READ)
def test_a_file_is_read_with_settings_by_them_alone(name, tmp_path):
    """Bug: only recordings could be read by other limits than the usual ones."""
    path = COURSE / name if name == "walk.gpx" else tmp_path / name
    shown = {block.file: block.text for block in blocks()}
    path = path if path.exists() else written(path, shown.get(name) or earlier_debrief())
    with watched() as reads:
        READ[name](path, settings=SETTINGS)
    assert reads.defaults == set()
    assert reads.given


def written(path: Path, text: str) -> Path:
    path.write_text(text, encoding="utf-8")
    return path


def earlier_debrief() -> str:
    return '{"format": 1, "legs": [{"status": "walked", "confidence": 0.1}]}'


def test_a_default_is_taken_only_where_nothing_is_given():
    """Bug: settings of a part were made anew below the door that had been given others.

    The command line hands in none, and makes its own.
    """
    found = [
        f"{path.relative_to(ROOT)}: {ast.unparse(made)}"
        for path in sorted(ROOT.rglob("*.py"))
        if not {"settings", "cli"} & {*path.relative_to(ROOT).parts}
        for made in made_settings(ast.parse(path.read_text(encoding="utf-8")))
    ]
    assert found == []


def made_settings(tree: ast.Module) -> Iterator[ast.Call]:
    """Give the settings that code makes but in `settings or Settings()`."""
    wanted = {
        id(node.values[1])
        for node in ast.walk(tree)
        if isinstance(node, ast.BoolOp) and ast.unparse(node.values[0]) == "settings"
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and id(node) not in wanted:
            name = ast.unparse(node.func).rpartition(".")[2]
            if name.endswith("Settings") and not (node.args or node.keywords):
                yield node
