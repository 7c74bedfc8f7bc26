"""What the other legs of a walk say of one, on a walk laid out by hand."""

from __future__ import annotations

from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest

from audit.matching.other_legs import BESIDE_LOOKS, OpenLeg, OtherLegs
from audit.units import direction_degrees

POINTS = np.array([[0.0, 0.0], [0.0, 300.0], [400.0, 300.0], [400.0, 100.0]])
TURN = np.radians(37.0)
TURNED = np.array([[np.cos(TURN), -np.sin(TURN)], [np.sin(TURN), np.cos(TURN)]])
MIRRORED = np.diag([-1.0, 1.0])
HALT_S = 60


class InTime(SimpleNamespace):
    """Columns with one row a second."""

    def __len__(self):
        return len(self.time_s)


def walked(points=POINTS, halt_s=HALT_S, further_m=(0, 0, 0)):
    """Walk from point to point at 1 m a second, standing at each; give places and leg ends.

    Of each leg so many metres more are walked than planned, beyond its point, and the next one
    is begun there.
    """
    place, ends = [np.zeros(2)], []
    for (start, end), more_m in zip(pairwise(points), further_m, strict=True):
        way = end - start
        length_m = float(np.hypot(*way)) + more_m
        begun = len(place) - 1
        steps = np.arange(1.0, length_m + 0.5)[:, None] * way / np.hypot(*way)
        place += list(place[-1] + steps)
        ends.append((begun, len(place) - 1))
        place += [place[-1]] * halt_s
    return np.array(place), ends


def looks(place, ends, *, of, cut, end="claim", points=POINTS, share=None, read=(0, 1, 2)):
    """Look at some seconds as an end of a leg, at a cut a second, the others read as walked."""
    cut = np.array(cut)
    step = np.hypot(*np.diff(place, axis=0).T)
    path_m = np.concatenate([[0.0], np.cumsum(step)])
    stood_s = np.concatenate([[0.0], np.cumsum(step == 0.0)])
    time_s = np.arange(len(place)) + 1000.0
    rest_s, begins, ends_halt = np.zeros(len(place)), *np.zeros((2, len(place)), dtype=bool)
    for _, claim in ends:
        rest_s[[claim, claim + HALT_S]] = HALT_S
        begins[claim], ends_halt[claim + HALT_S] = True, True
    cuts = InTime(
        position=place, path_m=path_m, time_s=time_s, sample=np.arange(len(place)), rest_s=rest_s,
        halted_s=stood_s, begins_halt=begins, ends_halt=ends_halt,
    )  # fmt: skip
    laid_out = SimpleNamespace(
        cuts=cuts,
        samples=InTime(smooth=place, time_s=time_s, step_s=1.0),
        movement=SimpleNamespace(noise_m=4.0, walking_m_s=1.25),
        evidence=SimpleNamespace(route=SimpleNamespace(position=points)),
    )
    planned = {
        leg: SimpleNamespace(
            distance_m=float(np.hypot(*way)), azimuth_deg=direction_degrees(*way.tolist())
        )
        for leg, way in enumerate(np.diff(points, axis=0))
    }
    readings = [
        SimpleNamespace(kind="leg", first=first, second=second)
        if leg in read
        else SimpleNamespace(kind="none", first=None, second=None)
        for leg, (first, second) in enumerate(ends)
    ]
    start, claim = (
        (np.full(len(cut), ends[of][0]), cut)
        if end == "claim"
        else (cut, np.full(len(cut), ends[of][1]))
    )
    share = np.full(len(cut), 1.0 / len(cut)) if share is None else np.array(share)
    open_leg = OpenLeg(end=end, leg=of, cut=cut, start=start, claim=claim, share=share)
    return OtherLegs(readings, planned, laid_out).looks(open_leg)


def look(name, *given, **options):
    return looks(*given, **options)[:, BESIDE_LOOKS.index(name)]


@pytest.mark.parametrize("end", ["start", "claim"])
@pytest.mark.parametrize("turned", [TURNED, MIRRORED])
def test_a_walk_turned_or_mirrored_looks_the_same(end, turned):
    place, ends = walked(further_m=(20, -30, 10))
    wobble = np.random.default_rng(3).normal(0.0, 2.0, place.shape)
    cut = (ends[1][1] - 90, ends[1][1]) if end == "claim" else (ends[1][0], ends[1][0] + 50)
    before = looks(place + wobble, ends, of=1, cut=cut, end=end)
    after = looks(
        (place + wobble) @ turned.T, ends, of=1, cut=cut, end=end, points=POINTS @ turned.T
    )
    assert after == pytest.approx(before, abs=1e-6)


def test_each_look_has_a_name_and_none_two():
    place, ends = walked()
    table = looks(place, ends, of=1, cut=(600, 760))
    assert len(set(BESIDE_LOOKS)) == len(BESIDE_LOOKS) == table.shape[1]
    assert np.isfinite(table).all()


@pytest.mark.parametrize(
    ("name", "right", "early"),
    [
        ("odds_nats", np.log(0.75), np.log(0.25)),
        ("behind_best_nats", 0.0, np.log(3.0)),
        ("after_best_s", 0.0, -100.0),
        ("path_from_best_m", 0.0, 100.0),
        ("from_best_m", 0.0, 100.0),
        ("rest_over_best_s", 0.0, -60.0),
        ("log_planned_m", np.log(400.0), np.log(400.0)),
        ("log_ratio_as_planned", 0.0, np.log(0.75)),
        ("turned_as_planned_deg", 0.0, 0.0),
        ("start_off_m", 0.0, 0.0),
        ("claim_off_m", 0.0, 100.0),
        ("point_within_m", 0.0, 100.0),
        ("speed_share", 0.8, 0.8),
        ("halted_within_s", 0.0, 0.0),
        ("rest_within_s", 0.0, 0.0),
        ("others_log_ratio_scatter", 0.0, 0.0),
        ("others_turned_scatter_deg", 0.0, 0.0),
        ("others_rest_s", 60.0, 60.0),
        ("others_halted_share", 1.0, 1.0),
        ("others_off_m", 0.0, 0.0),
        ("others_found_m", 0.0, 0.0),
        ("noise_m", 4.0, 4.0),
        ("step_s", 1.0, 1.0),
        ("walking_m_s", 1.25, 1.25),
        ("rest_until_next_leg_s", 0.0, 60.0),
        ("path_from_leg_before_m", 400.0, 300.0),
        ("path_to_next_leg_m", 0.0, 100.0),
        ("from_leg_before_m", 400.0, 300.0),
        ("to_next_leg_m", 0.0, 100.0),
        ("next_to_log_ratio", 0.0, np.log(np.hypot(100.0, 200.0) / 200.0)),
        ("next_to_turned_deg", 0.0, np.degrees(np.arctan(0.5))),
        ("next_to_along_m_90s", 30.0, 0.0),
        ("next_to_aside_m_90s", 0.0, 90.0),
    ],
)
def test_the_claim_at_the_point_and_one_a_hundred_metres_early(name, right, early):
    place, ends = walked()
    claim = ends[1][1]
    table = look(name, place, ends, of=1, cut=(claim - 100, claim), share=(0.25, 0.75))
    assert table == pytest.approx([early, right], abs=1e-6)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("rest_since_leg_before_s", 60.0),
        ("path_from_leg_before_m", 0.0),
        ("path_to_next_leg_m", 400.0),
        ("next_to_log_ratio", 0.0),
        ("next_to_turned_deg", 0.0),
        ("next_to_along_m_90s", 30.0),  # of 90 s before, 60 were stood
        ("next_to_aside_m_90s", 0.0),
    ],
)
def test_a_start_is_held_against_the_leg_before(name, value):
    place, ends = walked()
    found = look(name, place, ends, of=1, cut=(ends[1][0],), end="start")
    assert found == pytest.approx([value], abs=1e-6)


def test_how_the_others_were_walked_is_held_against_what_is_usual_on_them():
    place, ends = walked(further_m=(30, 0, -20))
    found = look("others_log_ratio_scatter", place, ends, of=1, cut=(ends[1][1],))
    ratios = np.log([330.0 / 300.0, 180.0 / 200.0])
    assert found == pytest.approx([np.ptp(ratios) / 2.0])


def test_a_rest_on_the_way_is_counted_within_the_leg_alone():
    place, ends = walked()
    claim = ends[1][1] + HALT_S + 50  # as if the leg went on beyond the halt at its point
    for name in ("halted_within_s", "rest_within_s"):
        found = look(name, place, ends, of=1, cut=(ends[1][1], claim))
        assert found == pytest.approx([0.0, HALT_S])


def test_how_far_off_and_how_near_the_others_ended():
    """The first leg ends 40 m beyond its point and the next is walked back past it; so the last."""
    place, ends = walked(further_m=(40, 0, 10))
    beyond = walked(further_m=(40, 0, 40))
    middle = {"of": 1, "cut": (ends[1][1],)}
    assert look("start_off_m", place, ends, **middle) == pytest.approx([40.0])
    # By 40 m north the second and third points are missed as well.
    off = [40.0, np.hypot(0.0, 40.0 - 10.0)]
    assert look("others_off_m", place, ends, **middle) == pytest.approx([np.mean(off)])
    assert look("others_found_m", *beyond, of=1, cut=(beyond[1][1][1],)) == pytest.approx(
        [np.mean([40.0, 0.0])]
    )
    turned = walked(points=POINTS + np.array([[0, 0], [30, 0], [30, 0], [0, 0]]))
    scatter = look("others_turned_scatter_deg", *turned, of=1, cut=(turned[1][1][1],))
    ways = [np.degrees(np.arctan2(30.0, 300.0)), np.degrees(np.arctan2(30.0, 200.0))]
    assert scatter == pytest.approx([np.ptp(ways) / 2.0], abs=1e-6)


def test_a_leg_before_that_ended_later_lies_that_much_ahead():
    place, ends = walked()
    late = [(ends[0][0], ends[0][1] + HALT_S + 30), *ends[1:]]
    found = look("path_from_leg_before_m", place, late, of=1, cut=(ends[1][0],), end="start")
    assert found == pytest.approx([-30.0])


def test_without_another_leg_nothing_is_usual():
    place, ends = walked()
    table = looks(place, ends, of=1, cut=(ends[1][1],), read=(1,))
    others = [number for number, name in enumerate(BESIDE_LOOKS) if name.startswith("others_")]
    assert (table[:, others] == -1.0).all()
    ways = [BESIDE_LOOKS.index(name) for name in ("from_leg_before_m", "to_next_leg_m")]
    assert (table[:, ways] == 3000.0).all()
