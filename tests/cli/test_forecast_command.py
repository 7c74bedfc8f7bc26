"""`leg-audit forecast` as somebody who plans a walk meets it."""

from __future__ import annotations

import json
import math
from pathlib import Path

import pytest


@pytest.mark.usefixtures("course")
def test_every_leg_is_forecast(leg_audit):
    done = leg_audit("forecast", "plan.toml", "--clicks", "3", "--aim-off", "-60")
    assert done.status == 0
    assert "7    Two Pines to Gate" in done.out
    assert "Aimed off 60 m to the left:" in done.out
    assert "note: Course grid" in done.err


@pytest.mark.usefixtures("course")
def test_the_document_holds_every_figure(leg_audit):
    done = leg_audit("forecast", "plan.toml", "--json", "--sight", "25", "--heading-sd", "2",
                     "--pace-sd", "3")  # fmt: skip
    document = json.loads(done.out)
    assert document["format"] == 1
    assert document["sight_m"] == 25.0
    walker = document["walker"]
    assert (walker["turn_sd_deg"], walker["distance_sd"]) == (2.0, 0.03)
    assert "changed by the options" in walker["source"]
    leg = document["legs"][0]
    # By hand: 2 degrees and 3 % over 500 m are 17.5 m and 15 m; squares of 10 m add 4.1 m.
    assert leg["across_sd_m"] == pytest.approx(math.hypot(17.3, 4.1), abs=0.3)
    assert leg["along_sd_m"] == pytest.approx(math.hypot(14.9, 4.1), abs=0.3)
    assert document["chance_of_all"] == pytest.approx(
        math.prod(leg["chance_in_sight"] for leg in document["legs"])
    )


def test_earlier_debriefs_of_the_walker_count(leg_audit, course: Path):
    leg_audit("debrief", "plan.toml", "walk.gpx", "--log", "log.csv", "--only", "json",
              "--out", "before")  # fmt: skip
    done = leg_audit("forecast", "plan.toml", "--walked", "before/debrief.json", "--json")
    walker = json.loads(done.out)["walker"]
    # Legs 2 and 6 have a mistake that is likelier than ordinary error.
    assert "5 earlier legs of the walker" in walker["source"]
    assert 1.0 < walker["turn_sd_deg"] < 3.6
    (course / "list.json").write_text("[1, 2]")
    (course / "other.json").write_text('{"format": 1, "legs": [{"status": "walked"}]}')
    done = leg_audit("forecast", "plan.toml", "--walked", "list.json", "--walked", "other.json")
    assert done.status == 3
    assert done.err.splitlines() == [
        "list.json: is no debrief.json. Give a debrief.json that this program has written.",
        (
            "other.json, leg 1: has not the fields of a leg. "
            "Give a debrief.json that this program has written."
        ),
    ]


def test_what_cannot_be_forecast_is_said(leg_audit, course: Path):
    assert leg_audit("forecast", "none.toml").status == 3
    done = leg_audit("forecast", "plan.toml", "--aim-off", "nan")
    assert done.status == 2
    assert "finite" in done.err
    text = (course / "plan.toml").read_text().split("[[leg]]")[0]
    (course / "free.toml").write_text(text.replace("[course]", '[course]\norder = "free"'))
    done = leg_audit("forecast", "free.toml")
    assert done.status == 2
    assert "no leg is known beforehand" in done.err
