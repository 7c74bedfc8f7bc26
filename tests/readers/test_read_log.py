"""The walker's log: what was set, counted and believed."""

from __future__ import annotations

import datetime as dt

import pytest

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.errors import InputRefusedError
from audit.readers.walkers_log_file import read_log

HEADER = "leg,magnetic_azimuth_deg,paces,arrived,note\n"


def read(tmp_path, text, encoding="utf-8"):
    path = tmp_path / "log.csv"
    path.write_bytes(text.encode(encoding))
    return read_log(path)


def test_the_columns_of_the_format(tmp_path):
    log = read(tmp_path, HEADER + '1,75.3,580,10:42,"wet, slow"\n2,,,,\nback,0,12.5,,\n')
    assert [entry.leg for entry in log.entries] == ["1", "2", "back"]
    first = log.entry("1")
    assert first.magnetic_azimuth == MagneticAzimuth(75.3)
    assert first.paces == 580.0
    assert first.arrived == dt.time(10, 42)
    assert first.note == "wet, slow"
    second = log.entry("2")
    assert (second.magnetic_azimuth, second.paces, second.arrived, second.note) == (
        None,
        None,
        None,
        "",
    )
    assert log.entry("3") is None
    assert log.source == "log.csv"
    assert log.notes == ()


@pytest.mark.parametrize(
    ("cell", "moment"),
    [
        ("10:42", dt.time(10, 42)),
        ("10:42:30", dt.time(10, 42, 30)),
        ("9:05", dt.time(9, 5)),
        ("10.42", dt.time(10, 42)),
        ("10h42", dt.time(10, 42)),
        ("1042", dt.time(10, 42)),
        ("0005", dt.time(0, 5)),
        ("930", dt.time(9, 30)),
        ("1042Z", dt.time(10, 42, tzinfo=dt.UTC)),
        ("10:42Z", dt.time(10, 42, tzinfo=dt.UTC)),
        # Bug: refused, though --claim takes the same writing.
        ("13:24-04:00", dt.time(13, 24, tzinfo=dt.timezone(dt.timedelta(hours=-4)))),
        ("1324 +0530", dt.time(13, 24, tzinfo=dt.timezone(dt.timedelta(hours=5.5)))),
        ("20260919T172419Z", dt.datetime(2026, 9, 19, 17, 24, 19, tzinfo=dt.UTC)),
        ("2:15 pm", dt.time(14, 15)),
        ("12:15 a.m.", dt.time(0, 15)),
        ("12:15 PM", dt.time(12, 15)),
        ("2026-10-03T10:42:00Z", dt.datetime(2026, 10, 3, 10, 42, tzinfo=dt.UTC)),
        ("2026-10-03 10:42", dt.datetime(2026, 10, 3, 10, 42)),  # noqa: DTZ001
        (
            "2026-10-03T10:42:00+02:00",
            dt.datetime(2026, 10, 3, 10, 42, tzinfo=dt.timezone(dt.timedelta(hours=2))),
        ),
    ],
)
def test_clock_times(tmp_path, cell, moment):
    arrived = read(tmp_path, f"{HEADER}1,,,{cell},\n").entries[0].arrived
    assert arrived == moment
    assert arrived.tzinfo == moment.tzinfo


@pytest.mark.parametrize(
    "cell",
    [
        "24:00",
        "10:60",
        "noon",
        "0.4458",
        "13:00 pm",
        "2026-13-01T10:00:00Z",
        "10",
        "3.10.",
        "10:42-11:30",
        "10:42+15:00",
        "20261301T1000Z",
    ],
)
def test_what_no_clock_shows_is_refused(tmp_path, cell):
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, f"{HEADER}1,,,{cell},\n")
    assert f'line 2, arrived: "{cell}" is no clock time' in str(refused.value)


def test_semicolons_mils_and_other_letters(tmp_path):
    text = "Leg;magnetic azimuth mil;paces;note\r\n1;1600;612,5;Höhe\r\n"
    log = read(tmp_path, text, encoding="cp1252")
    assert log.entries[0].magnetic_azimuth == MagneticAzimuth(90.0)
    assert log.entries[0].paces == 612.5
    assert log.entries[0].note == "Höhe"
    assert any("Windows-1252" in note for note in log.notes)


def test_rows_without_a_leg_are_counted_and_noted(tmp_path):
    log = read(tmp_path, "paces\n580\n600\n")
    assert [entry.leg for entry in log.entries] == ["1", "2"]
    assert any('taken as leg "1"' in note for note in log.notes)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        (HEADER, ["holds no row"]),
        ("", ["is empty"]),
        ("a,b\n", ["line 1: names no known column", "magnetic_azimuth_deg"]),
        (HEADER.replace("note", "pace") + "1,,,,\n", ['line 1: "pace" is no column', '"paces"']),
        (HEADER + "1,,,,\n1,,,,\n", ['line 3, leg: "1" has two rows']),
        (HEADER + "1,361,,,\n", ['line 2, magnetic_azimuth_deg: "361" is out of range']),
        (HEADER + "1,,0,,\n", ['line 2, paces: "0" is out of range']),
        (HEADER + '1,,"1,250",,\n', ["line 2, paces", "1.25 or as 1250"]),
        (HEADER + "1,,,,a,b\n", ["line 2: has more cells"]),
    ],
)
def test_one_slip_is_one_sentence(tmp_path, text, parts):
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, text)
    (problem,) = refused.value.problems
    for part in ["log.csv", *parts]:
        assert part in str(problem)


def test_all_slips_are_told_at_once(tmp_path):
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, HEADER + "1,400,-1,noon,\n2,x,,,\n")
    assert [problem.place for problem in refused.value.problems] == [
        "line 2, magnetic_azimuth_deg",
        "line 2, paces",
        "line 2, arrived",
        "line 3, magnetic_azimuth_deg",
    ]


def test_no_file(tmp_path):
    with pytest.raises(InputRefusedError, match=r"gone\.csv: there is no such file"):
        read_log(tmp_path / "gone.csv")


def test_an_azimuth_from_another_north_is_read_as_that(tmp_path):
    """Bug: a compass adjusted to true north had no column, and its log was read as magnetic."""
    log = read(tmp_path, "leg,true_azimuth_deg\n1,33\n")
    assert log.entry("1").true_azimuth == TrueAzimuth(33.0)
    log = read(tmp_path, "leg,grid_azimuth_mil,paces\n1,1600,300\n")
    assert log.entry("1").grid_azimuth == GridAzimuth(90.0)


def test_an_azimuth_from_two_norths_is_refused(tmp_path):
    with pytest.raises(InputRefusedError, match="grid and magnetic north"):
        read(tmp_path, "leg,grid_azimuth_deg,magnetic_azimuth_deg\n1,33,40\n")
