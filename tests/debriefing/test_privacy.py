"""A private debrief: no name, no clock, nothing beyond the course, and the same figures."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import numpy as np
import pytest
from reports.sample_debrief import sample_debrief

from audit.debriefing.privacy import private_debrief
from audit.reports.csv_report import render_csv
from audit.reports.geojson_report import render_geojson
from audit.reports.gpx_report import render_gpx
from audit.reports.html_report import render_html
from audit.reports.json_report import render_json
from audit.words import sentence
from audit.words.figures import Listed, Moment

NAME = "jo-bloggs-2026.gpx"


@pytest.fixture(scope="module")
def plain():
    debrief = sample_debrief(
        notes=(
            sentence("recording-called", point="1", name=repr("Jo Bloggs")),
            sentence("recording-called", point="9", name=repr("Jo O'Bloggs")),
            "Begun 2026-10-03T09:15:30Z.",
        )
    )
    east = debrief.clean.east_m.copy()
    east[:5] -= 3_000.0  # the way from home
    quality = replace(debrief.quality, source=NAME)
    return replace(debrief, clean=replace(debrief.clean, east_m=east), quality=quality)


@pytest.fixture(scope="module")
def private(plain):
    return private_debrief(plain)


def test_no_report_tells_name_or_clock(plain, private):
    start = json.loads(render_json(plain))["track"]["start"]
    assert start[:4] != "1970"
    for render in (render_json, render_csv, render_geojson, render_gpx, render_html):
        told = render(private)
        told = re.sub(r'<script type="text/plain".*?</script>', "", told, flags=re.DOTALL)
        assert NAME not in told
        assert "Bloggs" not in told
        moments = re.findall(r"\d{4}-\d\d-\d\dT[\d:.]+Z", told)
        assert all(moment.startswith("1970-01-01T0") for moment in moments)
        assert f"{start[:10]}T" not in told


def test_recording_is_cropped_to_the_legs(plain, private):
    """Bug: a way to a home 117 m from the start was kept, for it lay within 150 m of the course."""
    assert private.spans[0].first == 0
    assert private.spans[-1].last == len(private.clean) - 1
    assert private.spans[0].leg is not None
    assert private.spans[-1].leg is not None
    of_legs = [span for span in plain.spans if span.leg is not None]
    assert len(private.clean) <= of_legs[-1].last - of_legs[0].first + 3
    assert private.quality.fixes == len(private.clean)
    assert list(private.clean.fix) == list(range(len(private.clean)))


def test_a_walk_without_a_leg_keeps_no_way(plain):
    spans = (replace(plain.spans[0], leg=None, end_s=plain.spans[-1].end_s),)
    assert len(private_debrief(replace(plain, spans=spans)).clean) == 2


def test_figures_stay(plain, private):
    for before, after in zip(plain.legs, private.legs, strict=True):
        first, second = before.audit.measures, after.audit.measures
        if first is None:
            assert second is None
            continue
        assert second.miss_m == first.miss_m
        assert second.duration_s == first.duration_s
        assert second.heading == first.heading
        shift_s = first.start.time_s - second.start.time_s
        assert first.claim.time_s - second.claim.time_s == shift_s
        assert shift_s > 1e8
        fixes = slice(second.start.fix, second.claim.fix + 1)
        old = slice(first.start.fix, first.claim.fix + 1)
        assert np.array_equal(private.clean.east_m[fixes], plain.clean.east_m[old])


def test_it_says_that_it_is_private(private):
    assert any(note.startswith("Private: ") for note in private.quality.notes)
    assert "Private: names of files and tracks are left out" in render_html(private)


def test_advice_with_a_clock_in_it_is_left_out(plain):
    doubt = sentence(
        "doubt-otherwise",
        taken="Leg 1: 60 % sure.",
        sure="30 %",
        reading="skipped",
        settle=sentence("doubt-settle-other", pins="--claim 1=09:15:30Z"),
    )
    leg = replace(plain.legs[0], doubt=doubt)
    private = private_debrief(replace(plain, legs=(leg, *plain.legs[1:])))
    assert private.legs[0].doubt == "Leg 1: 60 % sure. Likeliest otherwise (30 %): skipped."


def test_moments_in_a_list_count_from_the_start_too(plain):
    """Bug: the times of other rounds, told in a list, kept their day and hour."""
    begun_s = plain.quality.start_s
    rounds = sentence(
        "recording-rounds",
        chosen="fit",
        begun=Moment(time_s=begun_s, day=True),
        times=Listed(things=[Moment(time_s=begun_s + 7200.0, day=True)], link="comma"),
        later=0,
    )
    assert "2026" in rounds
    quality = replace(plain.quality, notes=(rounds,))
    private = private_debrief(replace(plain, quality=quality))
    assert "2026" not in private.quality.notes[0]


def test_recording_without_times():
    private = private_debrief(sample_debrief(timed=False))
    assert private.quality.start_s is None


def test_what_was_written_in_the_log_is_told_and_in_private_left_out(plain):
    """Bug: neither page nor file had the walker's own notes."""
    noted = "boxed the marsh with Jo Bloggs"
    legs = tuple(replace(leg, noted=noted if leg.name == "2" else "") for leg in plain.legs)
    told = replace(plain, legs=legs)
    entries = json.loads(render_json(told))["legs"]
    assert [one["log_note"] for one in entries if one["log_note"]] == [noted]
    assert noted in render_html(told)
    private = private_debrief(told)
    assert noted not in render_json(private)
    assert noted not in render_html(private)
    assert any("notes of the walker's log" in note for note in private.quality.notes)
    assert not any("walker's log" in note for note in private_debrief(plain).quality.notes)
