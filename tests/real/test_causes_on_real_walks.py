"""Real recordings: people who walked their own way are told of no mistake; a planted one is.

Open data, described beside the recordings. The plans are each recording's own turns, so
that every leg was walked as planned, along paths that bend and swerve as paths do.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from real.own_turns import own_turns

import audit
from audit.azimuths import GridAzimuth
from audit.leg_card import work_out_card

NO_MISTAKE = {"within-skill", "cannot-tell"}
ANGLE_DEG = 12.0


def named(debrief) -> list[tuple[str, str]]:
    return [
        (leg.name, one.cause)
        for leg in debrief.legs
        if leg.audit.measures is not None
        for one in leg.causes
        if one.probability >= 0.8 and one.cause not in NO_MISTAKE
    ]


def walked(debrief) -> int:
    return sum(leg.audit.measures is not None for leg in debrief.legs)


@pytest.fixture(scope="module")
def woods(shared_tracks):
    track = audit.read_track(shared_tracks / "walk-1hz-woods.gpx")
    return track, own_turns(track, 25.0).plan


@pytest.mark.parametrize("name", ["walk-1hz-woods", "hike-karst"])
def test_clean_walk_gets_no_mistake_named(shared_tracks, name) -> None:
    track = audit.read_track(shared_tracks / f"{name}.gpx")
    found = audit.debrief(own_turns(track, 30.0).plan, track)
    assert walked(found) >= 15
    assert named(found) == []
    assert found.stories == ()


def test_angle_left_out_by_a_real_walker_is_named_on_his_legs(woods) -> None:
    """The card's azimuths are turned back by G: who walked as he did then left G out."""
    track, plan = woods
    card = work_out_card(plan)
    legs = tuple(
        replace(
            leg, grid_azimuth=GridAzimuth(of.azimuth.degrees - ANGLE_DEG), distance_m=of.distance_m
        )
        for leg, of in zip(plan.legs, card.legs, strict=True)
    )
    found = audit.debrief(replace(plan, legs=legs, grid_magnetic_angle_deg=ANGLE_DEG), track)
    causes = [cause for _, cause in named(found)]
    assert causes.count("gm-angle-omitted") >= 0.5 * walked(found)
    assert set(causes) == {"gm-angle-omitted"}
    assert [story.cause for story in found.stories] == ["gm-angle-omitted"]
