"""No count is praised on a leg whose end was looked for."""

from __future__ import annotations

from dataclasses import replace

from coaching.shown_walk import SETTINGS, all_praise, audits, shown

from audit.coaching.went_about import went_about
from audit.measurement.leg_details import Bypass


def leg(path_m, *bypasses):
    """The measures of leg 2, made to be 500 m as the crow flies."""
    (measures,) = (one.measures for one in audits() if one.card.name == "2")
    details = replace(measures.details, bypasses=bypasses)
    return replace(measures, path_m=path_m, straight_m=500.0, made_good_m=500.0, details=details)


def bypass(out_m, ahead_m):
    return Bypass(
        start_s=0.0, end_s=60.0, side="left", out_m=out_m, ahead_m=ahead_m, back_m=out_m,
        side_sd_m=4.0, equal=True,
    )  # fmt: skip


def test_the_way_about_an_obstacle_is_no_going_about():
    assert went_about({"2": leg(599.0)}, SETTINGS) == set()
    assert went_about({"2": leg(601.0)}, SETTINGS) == {"2"}
    assert went_about({"2": leg(699.0, bypass(50.0, 40.0))}, SETTINGS) == set()
    # Out and back without having come ahead passes nothing.
    assert went_about({"2": leg(699.0, bypass(50.0, -0.1))}, SETTINGS) == {"2"}


def test_no_count_is_praised_on_a_leg_that_went_about():
    """Bug: the distance was praised as counted where 620 m were walked on a leg of 212 m."""
    legs = audits()
    names = {leg.card.name for leg in legs}
    about = audits(**{
        f"leg{one.card.name}": {"path_m": 2.0 * one.measures.straight_m}
        for one in legs if one.measures is not None
    })  # fmt: skip
    told = {skill: set() for skill in ("distance", "arriving")}
    for keep in all_praise(shown(legs)):
        told.setdefault(keep.skill, set()).update(keep.legs)
    assert told["distance"] | told["arriving"] <= names
    assert told["distance"] or told["arriving"]
    assert not {"distance", "arriving"} & {keep.skill for keep in all_praise(shown(about))}
