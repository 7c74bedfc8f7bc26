"""The debrief as tables, against the document and against pandas' own reading."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest
from coaching.demo_walk import demo
from reports.sample_debrief import sample_debrief


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


def test_one_row_a_leg_with_the_figures_of_the_document(debrief):
    frame, document = debrief.legs_frame(), debrief.to_dict()
    assert list(frame["leg"]) == [leg["name"] for leg in document["legs"]]
    for row, leg in zip(frame.to_dict("records"), document["legs"], strict=True):
        assert row["planned_azimuth_deg"] == leg["planned"]["grid_azimuth_deg"]
        if leg["walked"] is None:
            continue
        assert row["walked_azimuth_low_deg"] == leg["walked"]["grid_azimuth_95_deg"][0]
        assert row["azimuth_error_deg"] == leg["azimuth_error_deg"]
        assert row["own_cross_track_rms_m"] == leg["own_cross_track"]["rms_m"]
        assert row["ledger_distance_north_m"] == leg["ledger"]["distance"][1]
        assert row["runner_up"] == leg["causes"][1]["cause"]
        assert row["found"] is leg["found"]
        assert row["walked_azimuth_sd_deg"] == leg["walked"]["grid_azimuth_sd_deg"]


def test_the_ledger_in_a_row_has_the_errors_of_the_document():
    _, debrief, _ = demo()
    frame, document = debrief.legs_frame(), debrief.to_dict()
    known = 0
    for row, leg in zip(frame.to_dict("records"), document["legs"], strict=True):
        if leg["details"] is None:
            continue
        known += 1
        for part in ("inherited", "plan", "heading", "distance", "detour", "total"):
            assert row[f"ledger_{part}_sd_m"] == leg["details"]["ledger_sd"][f"{part}_m"]
        assert row["point_sd_m"] == leg["details"]["point"]["sd_m"]
        assert row["bypasses"] == len(leg["details"]["bypasses"])
    assert known


def test_times_are_utc_moments(debrief):
    frame, document = debrief.legs_frame(), debrief.to_dict()
    assert str(frame["claim_time"].dt.tz) == "UTC"
    assert frame["claim_time"][0] == pd.Timestamp(document["legs"][0]["end"]["time"])


def test_leg_not_walked_has_no_figure(debrief):
    row = debrief.legs_frame().iloc[3]
    measured = row.drop(
        ["leg", "from", "to", "status", "confidence", "planned_azimuth_deg",
         "planned_magnetic_deg", "planned_distance_m", "planned_paces"]
    )  # fmt: skip
    assert measured.isna().all()
    assert row["status"] == "skipped"


def test_every_column_is_documented(debrief):
    from audit.debriefing.frames import legs_frame

    words = legs_frame.__doc__
    stems = {"ledger_", "cross_track_", "own_cross_track_", "walked_azimuth_"}
    for column in debrief.legs_frame().columns:
        stem = next((one for one in stems if column.startswith(one)), column)
        assert stem.rstrip("_") in words, column


def test_recording_without_times():
    frame = sample_debrief(timed=False).legs_frame()
    assert frame["start_time"].isna().all()
    assert frame["duration_s"].isna().all()
    assert frame["straight_m"].notna().sum() == 3


def test_cross_track_frame_is_the_record(debrief):
    frame = debrief.cross_track_frame("1")
    measures = debrief.legs[0].audit.measures
    np.testing.assert_array_equal(frame["along_m"], measures.cross_track.along_m)
    np.testing.assert_array_equal(frame["offset_m"], measures.cross_track.offset_m)
    np.testing.assert_array_equal(frame["own_offset_m"], measures.own_cross_track.offset_m)
    assert frame["offset_m"].iloc[-1] == measures.cross_track.end_m
    assert frame["time"].iloc[0] == pd.Timestamp(measures.start.time_s, unit="s", tz="UTC")
    assert frame["time"].is_monotonic_increasing


def test_cross_track_frame_of_a_leg_not_walked_is_empty(debrief):
    frame = debrief.cross_track_frame("4")
    assert len(frame) == 0
    assert list(frame.columns) == [
        "time", "along_m", "offset_m", "own_along_m", "own_offset_m",
        "band_m", "left_band", "own_band_m", "own_left_band",
    ]  # fmt: skip


def test_bands_say_where_the_line_was_left_for_good():
    _, debrief, _ = demo()
    for leg in debrief.legs:
        if leg.audit.measures is None:
            continue
        frame, details = debrief.cross_track_frame(leg.name), leg.audit.measures.details
        for name, kept in (("", details.planned_line), ("own_", details.own_line)):
            band, left = frame[f"{name}band_m"], frame[f"{name}left_band"]
            assert (band == kept.band_m).all()
            outside = frame[f"{name}offset_m"].abs() > band
            # From the first place of the tail on, every place is outside, and the one before not.
            assert outside[left].all()
            assert left.any() == (kept.left is not None)
            if kept.left is not None:
                first = int(left.to_numpy().argmax())
                assert frame[f"{name}along_m"][first] == kept.left_along_m
                assert frame["time"][first].timestamp() == pytest.approx(kept.left.time_s, abs=1e-3)
                assert first == 0 or not outside[first - 1]


def test_cross_track_frame_without_times():
    frame = sample_debrief(timed=False).cross_track_frame("2")
    assert frame["time"].isna().all()
    assert frame["along_m"].notna().all()


def test_unknown_leg_is_named_with_those_that_exist(debrief):
    with pytest.raises(ValueError, match=r'no leg "9"; its legs are "1", "2", "3", "4"'):
        debrief.cross_track_frame("9")
