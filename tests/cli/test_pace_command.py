"""`leg-audit pace` as somebody meets it who has walked a strip."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

import pytest
from pacing.made_strips import write_strip


@pytest.fixture
def strips(tmp_path, monkeypatch) -> Path:
    for number in (1, 2):
        write_strip(tmp_path / f"strip{number}.gpx", 600.0, number)
    write_strip(tmp_path / "cadence.gpx", 600.0, 3, cadence=47.0)
    (tmp_path / "broken.gpx").write_text("<gpx")
    (tmp_path / "plan.csv").write_text(
        "leg,from,to,from_position,to_position\n1,A,B,16S GF 4832 5828,16S GF 4865 5865\n"
    )
    monkeypatch.chdir(tmp_path)
    return tmp_path


def rate_of(out: str) -> float:
    """Read the last line as a plan would."""
    return tomllib.loads(out.splitlines()[-1])["paces_per_100m"]


@pytest.mark.usefixtures("strips")
def test_the_last_line_goes_into_a_plan(leg_audit):
    done = leg_audit("pace", "strip1.gpx", "--paces", 390)
    assert done.status == 0
    assert rate_of(done.out) == pytest.approx(65.0, abs=2.0)
    assert "390 double paces counted" in done.out
    assert re.search(r"Counted: 6\d(?:\.\d)? ±\d", done.out)


@pytest.mark.usefixtures("strips")
def test_counts_one_each_all_together_or_the_same_on_each(leg_audit):
    each = leg_audit("pace", "strip1.gpx", "strip2.gpx", "--paces", 390, "--paces", 390)
    together = leg_audit("pace", "strip1.gpx", "strip2.gpx", "--paces", 780)
    same = leg_audit("pace", "strip1.gpx", "strip2.gpx", "--paces", 390, "--each")
    assert each.out == same.out
    assert rate_of(together.out) == rate_of(each.out)


@pytest.mark.usefixtures("strips")
def test_a_measured_strip_leaves_the_receiver_out(leg_audit):
    done = leg_audit("pace", "strip1.gpx", "--paces", 390, "--strip", 600, "--json")
    document = json.loads(done.out)
    assert document["paces_per_100m"] == 65.0
    assert document["strips"][0]["length_by"] == "given"
    assert document["counted"]["metres"] == 600.0


@pytest.mark.usefixtures("strips")
def test_without_a_count_the_cadence_is_gone_by(leg_audit):
    # 47 double paces a minute at 1.2 m/s: 65.3 to 100 m.
    done = leg_audit("pace", "cadence.gpx")
    assert "By cadence" in done.out
    assert rate_of(done.out) == pytest.approx(65.3, abs=3.0)


@pytest.mark.usefixtures("strips")
@pytest.mark.parametrize(
    ("arguments", "status", "said"),
    [
        (("strip1.gpx", "--paces", "0"), 2, "--paces 0: a count lies above 0"),
        (("strip1.gpx", "--paces", "nan"), 2, "--paces nan: a count lies above 0"),
        (("strip1.gpx", "--paces", "9", "--paces", "9"), 2, "2 counts for 1 recordings"),
        (("strip1.gpx", "--each"), 2, "--each holds for one --paces"),
        (("strip1.gpx", "--strip", "100"), 2, "Give --paces with it"),
        (("strip1.gpx", "--paces", "9", "--strip", "-1"), 2, "--strip -1: a length lies above 0"),
        (("broken.gpx", "no.gpx", "--paces", "9"), 3, "no.gpx: does not exist"),
        (("strip1.gpx",), 3, "has no cadence to go by, and no paces were counted on it. Say how"),
        (("plan.csv", "--paces", "3"), 3, "plan.csv: is a plan, and paces are counted on a"),
        (("strip1.gpx", "--paces", "abc"), 2, '"abc" is no number; write it with a decimal point'),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told(leg_audit, arguments, status, said):
    done = leg_audit("pace", *arguments)
    assert done.status == status
    assert said in done.err
    assert "Traceback" not in done.err


@pytest.mark.usefixtures("strips")
def test_a_step_that_nobody_walks_with_is_noted(leg_audit):
    """Bug: 130 double paces to 100 m, a step of 0.38 m, were told without a word."""
    done = leg_audit("pace", "strip1.gpx", "--paces", 780, "--pace", "double")
    assert done.status == 0
    assert "double paces to 100 m make a step of 0.3" in done.err
    for usual in ((780, "single"), (390, "double")):
        done = leg_audit("pace", "strip1.gpx", "--paces", usual[0], "--pace", usual[1])
        assert "make a step" not in done.err
