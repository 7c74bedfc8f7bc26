"""What a walk looks like about an end of a leg, on walks laid out by hand."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from audit.matching.end_looks import AROUND_LOOKS, Ends, Spread, looks_around

TURN = np.radians(37.0)
TURNED = np.array([[np.cos(TURN), -np.sin(TURN)], [np.sin(TURN), np.cos(TURN)]])
MIRRORED = np.diag([-1.0, 1.0])


def wandering():
    """A minute of standing, 400 m about north-east, a loop, and 200 m back about west."""
    chance = np.random.default_rng(7)
    headings = np.concatenate([np.full(400, 40.0), np.linspace(40.0, 400.0, 90), np.full(200, 280)])
    headings = np.radians(headings + chance.normal(0.0, 8.0, len(headings)))
    steps = np.column_stack([np.sin(headings), np.cos(headings)])
    return np.cumsum(np.vstack([np.zeros((60, 2)), steps]), axis=0)


def read(place, cuts=(130, 380, 460, 520, 640), start=60, point=None, of=None, planned_deg=30.0):
    """Look at some seconds of a walk at a sample a second as claims of a leg begun at another."""
    place = np.asarray(place, dtype=float)
    at = np.array([*cuts])
    path_m = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(place, axis=0).T))])
    samples = SimpleNamespace(smooth=place, time_s=np.arange(len(place)) + 1000.0)
    every = SimpleNamespace(
        position=place, path_m=path_m, sample=np.arange(len(place)), time_s=samples.time_s,
        turn_deg=np.full(len(place), 20.0), rest_s=np.zeros(len(place)),
        begins_halt=np.zeros(len(place), dtype=bool), ends_halt=np.zeros(len(place), dtype=bool),
    )  # fmt: skip
    count = len(at)
    ends = Ends(
        cut=at,
        start=np.full(count, start),
        claim=at,
        point=np.tile(place[430] if point is None else point, (count, 1)),
        log_planned=np.full(count, np.log(300.0)),
        planned_deg=np.full(count, planned_deg),
        leg_before_s=np.full(count, 1010.0),
        next_leg_s=np.full(count, np.inf),
    )
    movement = SimpleNamespace(path_m=path_m)
    table = looks_around(ends, samples, movement, every, Spread(place))
    if of is None:
        return table
    return table[:, AROUND_LOOKS.index(of)]


@pytest.mark.parametrize("name", AROUND_LOOKS)
def test_a_walk_turned_or_mirrored_looks_the_same(name):
    place, column = wandering(), AROUND_LOOKS.index(name)
    before = read(place)[:, column]
    turned = read(place @ TURNED.T, planned_deg=30.0 - 37.0)[:, column]
    mirrored = read(place @ MIRRORED, planned_deg=-30.0)[:, column]
    assert turned == pytest.approx(before, abs=1e-6)
    assert mirrored == pytest.approx(before, abs=1e-6)


def straight(seconds=600):
    """Due north at 1 m a second from the origin, then standing for as long."""
    north = np.minimum(np.arange(2 * seconds), seconds).astype(float)
    return np.column_stack([np.zeros(2 * seconds), north])


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("log_distance_ratio", np.log(200.0 / 300.0)),
        ("turned_deg", 30.0),
        ("path_over_chord", 1.0),
        ("from_leg_before_s", 290.0),
        ("to_next_leg_s", 3600.0),
        ("off_point_m", 130.0),
        ("along_m_after_45s", 45.0),
        ("aside_m_after_45s", 0.0),
        ("path_m_before_90s", 90.0),
        ("straightness_before_180s", 1.0),
        ("spread_m_after_20s", np.sqrt((21.0**2 - 1.0) / 12.0)),
        ("along_m_after_360s", 300.0),
        ("nearest_m_after_60s", 70.0),
        ("nearest_s_after_60s", 60.0),
        ("nearest_m_after_180s", 0.0),
        ("nearest_path_m_after_600s", 130.0),
        ("nearest_m_before_180s", 130.0),
        ("nearest_s_before_180s", 0.0),
    ],
)
def test_halfway_along_a_straight_way(name, value):
    assert read(straight(), (300,), 100, of=name) == pytest.approx([value], abs=1e-6)


def test_each_look_has_a_name_and_none_two():
    assert len(set(AROUND_LOOKS)) == len(AROUND_LOOKS) == read(straight(), (300,), 100).shape[1]
