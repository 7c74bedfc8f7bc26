"""Every command under strain: places and recordings of all kinds give numbers, or a sentence."""

from __future__ import annotations

import json
import re

import pytest
from hostile.evil_course import run
from hostile.strained_course import BASE, ORDINARY, PLACES, STRAINED, gpx_text, plan_text, walk
from schema.make_schema import SHIPPED_OF_CLASS
from schema.strict import strict_validator

from audit.errors import InputRefusedError
from audit.readers.gpx_track import read_track

NO_NUMBER = re.compile(r"\b(?:nan|NaN|inf|Infinity)\b")
ODD = ["nan", "NaN", "inf", "-inf", "1e400", "1e308", "0x1p3", "", " ", "9" * 400]


def no_constant(word: str) -> None:
    pytest.fail(f"{word} is not JSON (RFC 8259)")


@pytest.mark.parametrize(
    "command",
    [["check"], ["check", "--json"], ["card"], ["forecast", "--json"], ["lanes"]],
    ids=" ".join,
)
@pytest.mark.parametrize("name", PLACES)
def test_a_plan_is_a_plan_anywhere(tmp_path, name, command):
    (tmp_path / "plan.toml").write_text(plan_text(PLACES[name]))
    status, said = run(command[0], tmp_path / "plan.toml", *command[1:])
    assert status in (0, 1), said
    assert not NO_NUMBER.search(said)
    if "--json" in command:
        # What is to be put right in the plan follows on the error stream.
        json.JSONDecoder(parse_constant=no_constant).raw_decode(said[said.index("{") :])


@pytest.mark.parametrize("name", ["around the north pole", "over the date line", "the equator"])
def test_a_rehearsal_and_a_copy_are_made_anywhere(tmp_path, name):
    (tmp_path / "plan.toml").write_text(plan_text(PLACES[name]))
    status, said = run("rehearse", tmp_path / "plan.toml", "--out", tmp_path / "out")
    assert status in (0, 1), said
    for path in (tmp_path / "out").rglob("*"):
        if path.suffix in {".json", ".geojson"}:
            json.loads(path.read_text(), parse_constant=no_constant)
        elif path.suffix == ".gpx":
            assert not NO_NUMBER.search(path.read_text())
    for ending in ("gpx", "geojson", "csv"):
        status, said = run("copy", tmp_path / "plan.toml", "--out", tmp_path / f"copy.{ending}")
        assert status == 0, said


@pytest.mark.parametrize("name", STRAINED)
def test_a_pace_count_of_any_recording_is_numbers_or_a_sentence(tmp_path, name):
    (tmp_path / "walk.gpx").write_text(gpx_text(STRAINED[name][1]))
    status, said = run("pace", tmp_path / "walk.gpx", "--paces", "600", "--json")
    assert status in (0, 3), said
    assert not NO_NUMBER.search(said)


def test_a_class_of_strained_recordings_is_graded_whole(tmp_path):
    (tmp_path / "plan.toml").write_text(plan_text(BASE))
    for number, (_, fixes, _) in enumerate(STRAINED.values()):
        (tmp_path / f"w{number:02}.gpx").write_text(gpx_text(fixes))
    tracks = sorted(tmp_path.glob("*.gpx"))
    status, said = run("grade", tmp_path / "plan.toml", *tracks, "--jobs", "1",
                       "--out", tmp_path / "out")  # fmt: skip
    assert status == 0, said
    text = (tmp_path / "out" / "class.json").read_text()
    document = json.loads(text, parse_constant=no_constant)
    strict_validator(SHIPPED_OF_CLASS).validate(document)
    assert "the program failed" not in text
    assert len(document["walkers"]) >= len(tracks) - 1
    assert not NO_NUMBER.search((tmp_path / "out" / "class.csv").read_text())


@pytest.mark.parametrize("field", ["lat", "lon", "ele", "time", "hdop"])
@pytest.mark.parametrize("odd", ODD, ids=lambda odd: odd[:8])
def test_no_odd_number_of_a_recording_becomes_a_number(tmp_path, field, odd):
    whole = gpx_text(walk(BASE, fixes=20))
    value = {"lat": 'lat="[^"]*"', "lon": 'lon="[^"]*"'}.get(field)
    if value:
        text = re.sub(value, f'{field}="{odd}"', whole, count=1)
    else:
        text = re.sub(
            rf"(<{field}>[^<]*</{field}>)?</trkpt>",
            f"<{field}>{odd}</{field}></trkpt>",
            whole,
            count=1,
        )
    (tmp_path / "walk.gpx").write_text(text)
    try:
        track = read_track(tmp_path / "walk.gpx")
    except InputRefusedError:
        return
    assert len(track) in (39, 40)
    assert abs(track.latitude_deg - 36.5).max() < 0.01
    assert abs(track.longitude_deg + 84.2).max() < 0.01


@pytest.mark.parametrize("odd", [odd for odd in ODD if odd.strip()], ids=lambda odd: odd[:8])
def test_no_odd_number_of_a_plan_becomes_a_number(tmp_path, odd):
    (tmp_path / "walk.gpx").write_text(gpx_text(ORDINARY))
    cells = {"distance_m": "555", "grid_azimuth_deg": "0"}
    for column in cells:
        row = {**cells, column: odd}
        (tmp_path / "plan.csv").write_text(
            "leg,from,to,from_position,to_position,grid_azimuth_deg,distance_m\n"
            f'1,A,B,"36.5, -84.2","36.505, -84.2",{row["grid_azimuth_deg"]},{row["distance_m"]}\n'
        )
        status, said = run("debrief", tmp_path / "plan.csv", tmp_path / "walk.gpx", "--date",
                           "2026-10-03", "--grid-magnetic-angle", "-7", "--only", "json",
                           "--out", tmp_path / "out")  # fmt: skip
        assert status in (0, 2, 3), said
        assert "nan" not in said.lower().replace(odd.lower(), "")
        if status == 0:
            text = (tmp_path / "out" / "debrief.json").read_text()
            json.loads(text, parse_constant=no_constant)
