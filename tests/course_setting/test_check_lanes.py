"""Planted faults of a course: each is named, and nothing else is."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
import shapely
from course_setting.lanes import (
    EAST_LANE,
    SOUTH,
    TWIN_LANE,
    WEST,
    WEST_LANE,
    box,
    faulty_ground,
    lane,
    sound_ground,
    with_lake,
)

from audit.azimuths import MagneticAzimuth
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.leg_card.profiles import stations
from audit.settings import CourseSettingSettings, Settings


def kinds(lanes: list[Lane], areas: GroundAreas | None = None, **wishes) -> list[tuple[str, str]]:
    return [(one.kind, one.what) for one in check_lanes(lanes, areas, **wishes).findings]


def two_lanes() -> list[Lane]:
    return [lane("East", EAST_LANE), lane("West", WEST_LANE)]


def test_sound_lanes_have_nothing_to_look_at():
    assert kinds(two_lanes(), sound_ground(), sets_out=dt.time(14, 0)) == []


def test_all_planted_faults_are_named_and_nothing_else():
    # A twin point 40 m off, a leg through a no-go area, the safety bearing into a lake.
    found = check_lanes([lane("East", TWIN_LANE), lane("West", WEST_LANE)], faulty_ground())
    assert [(one.kind, one.what) for one in found.findings] == [
        ("twin-points", "Dogwood, Gorse"),
        ("leg-through-no-go", "leg 3"),
        ("safety-bearing-through-no-go", "Long Lake"),
    ]
    twin, through, lake = (one.message for one in found.findings)
    assert "49 m apart, nearer than 60 m" in twin
    assert "goes through the no-go area Black Marsh" in through
    # On paper: 400 m by 1900 m north of the lake, of 4.84 km2 less the lake.
    assert "from 76.0 ha, 15.8 % of the ground" in lake


@pytest.mark.parametrize(
    ("fault", "wanted"),
    [
        ("twin", [("twin-points", "Dogwood, Gorse")]),
        ("no-go", [("leg-through-no-go", "leg 2")]),
        ("lake", [("safety-bearing-through-no-go", "Long Lake")]),
        ("hazard", [("leg-through-hazard", "leg 3")]),
        ("bounds", [("leg-out-of-bounds", "leg 2")]),
        ("point", [("point-in-hazard", "Birch")]),
        ("outside", [("point-out-of-bounds", "Hazel")]),
        ("bearings", [("safety-bearings-differ", "safety bearing")]),
        ("missing", [("safety-bearing-missing", "safety bearing")]),
        ("late", [("dark-soon-after-the-end", "daylight")] * 2),
        ("dusk", [("dark-before-the-end", "daylight"), ("dark-before-the-end", "daylight")]),
        ("dawn", [("dark-before-the-end", "daylight"), ("dark-before-the-end", "daylight")]),
    ],
)
def test_each_fault_alone(fault, wanted):
    lanes, areas, sets_out = planted(fault)
    assert kinds(lanes, areas, sets_out=sets_out) == wanted


def planted(fault: str) -> tuple[list[Lane], GroundAreas, dt.time | None]:
    lanes, areas, sets_out = two_lanes(), sound_ground(), None
    if fault == "twin":
        lanes[0] = lane("East", TWIN_LANE)
    elif fault == "no-go":
        # Beside the southern edge of the bounds nobody walks into it from the north.
        lanes[0] = lane("East", [("Gate", 1000, 500), ("Alder", 1500, 700), ("Birch", 1900, 1300),
                                 ("Cedar", 1400, 1800), ("Dogwood", 900, 1500)])  # fmt: skip
        areas = replace(areas, no_go=(sliver(lanes[0]),))
    elif fault == "lake":
        areas = with_lake(areas, 1600, 200, 2000, 300)
    elif fault == "hazard":
        line = shapely.LineString([(WEST + 1600, SOUTH + 1300), (WEST + 1600, SOUTH + 2190)])
        areas = replace(areas, hazards=(GroundArea(name="Scarp", shape=line),))
        lanes = [replace_safety(one, 187.5) for one in lanes]
    elif fault == "bounds":
        notch = box(1750, 950, 1800, 1150)
        areas = replace(areas, bounds=areas.bounds.difference(notch))
    elif fault == "point":
        areas = replace(areas, hazards=(GroundArea(name="Adit", shape=post(1900, 1300)),))
    elif fault == "outside":
        areas = replace(areas, bounds=box(0, 0, 2200, 2040))
    elif fault == "bearings":
        lanes[1] = replace_safety(lanes[1], 97.5)
        areas = replace(areas, no_go=())  # east would lead into the quarry
    elif fault == "missing":
        lanes[1] = lane("West", WEST_LANE, safety_azimuth=None)
    elif fault == "late":
        sets_out = dt.time(23, 0)  # ends 13 and 16 min before civil dusk
    elif fault == "dusk":
        sets_out = dt.time(23, 30)  # 18:30 by the sun there
    elif fault == "dawn":
        sets_out = dt.time(9, 0)
    return lanes, areas, sets_out


def replace_safety(one: Lane, magnetic_deg: float) -> Lane:
    places = EAST_LANE if one.name == "East" else WEST_LANE
    return lane(one.name, places, safety_azimuth=MagneticAzimuth(magnetic_deg))


def sliver(one: Lane) -> GroundArea:
    """Give an upright line of a no-go area across leg 2: the bearing south runs along it."""
    middle = one.card.legs[1].line.mean(axis=0)
    line = shapely.LineString([np.subtract(middle, (0.0, 60.0)), np.add(middle, (0.0, 60.0))])
    return GroundArea(name="Wire", shape=line)


def post(east: float, north: float) -> shapely.Polygon:
    """Give ground so narrow that the bearing south leads into it from next to nowhere."""
    return box(east - 1e-4, north - 5.0, east + 1e-4, north + 5.0)


def test_nobody_is_told_to_copy_a_bearing_that_leads_into_an_area():
    """Bug: "put it on its card" of the bearing that the next line said leads into a hazard."""
    lanes, areas, _ = planted("lake")
    lanes[1] = lane("West", WEST_LANE, safety_azimuth=None)
    led, missing = check_lanes(lanes, areas).findings
    assert (led.kind, missing.kind) == ("safety-bearing-through-no-go", "safety-bearing-missing")
    assert "once it is put right" in missing.message
    (alone,) = check_lanes(lanes, sound_ground()).findings
    assert "put it on its card." in alone.message


@pytest.mark.parametrize(
    ("minute", "settings", "lanes"),
    [
        # The slowest rule ends East (51 min) 28 min before civil dusk and West (48 min) 31 min.
        (45, CourseSettingSettings(), ["East"]),
        # 5 min later: 23 min and 26 min, which are less and more than half their walking times.
        (50, CourseSettingSettings(least_light_left_s=0.0), ["East"]),
        (50, CourseSettingSettings(least_light_left_s=0.0, least_light_share=0.0), []),
    ],
)
def test_light_left_is_told_below_half_an_hour_or_half_the_walk(minute, settings, lanes):
    """Bug: a lane that ended 4 min before civil dusk was nothing to look at."""
    chosen = Settings(course_setting=settings)
    found = check_lanes(
        two_lanes(), sound_ground(), sets_out=dt.time(22, minute), settings=chosen
    ).findings
    assert [(one.kind, one.lane) for one in found] == [
        ("dark-soon-after-the-end", lane) for lane in lanes
    ]


def test_a_difference_of_two_lanes_is_told_once():
    """Bug: of two lanes each was told to stand out from "the others" by the same length."""
    far = [*WEST_LANE[:4], ("Hazel", 1900, 2150)]
    found = check_lanes([lane("East", EAST_LANE), lane("West", far)])
    uneven = [(one.lane, one.what) for one in found.findings if one.kind == "uneven"]
    assert uneven == [("West", "length")]
    (message,) = (one.message for one in found.findings if one.kind == "uneven")
    assert "and that of the other " in message


def test_among_many_lanes_the_odd_one_out_is_told_alone():
    lanes = [lane(f"Lane {n}", shifted(WEST_LANE, 3000.0 * n)) for n in range(6)]
    odd = shifted([*WEST_LANE, ("Extra", 1500, 2050)], 3000.0 * 6)
    found = check_lanes([*lanes, lane("Odd", odd)])
    assert {one.lane for one in found.findings} == {"Odd"}
    assert "length" in [one.what for one in found.findings]


def shifted(places, by: float):
    return [(f"{name} {by:.0f}", east + by, north) for name, east, north in places]


def test_climb_and_times_come_from_heights():
    # On paper: a plane that rises 100 m in 1000 m to the north.
    def on_plane(one: Lane, slope: float) -> Lane:
        apart = Settings().carried_card.station_m
        heights = tuple(
            slope * (stations(leg.line, apart)[1][:, 1] - SOUTH) for leg in one.card.legs
        )
        return replace(one, heights=heights)

    level, steep = two_lanes()
    found = check_lanes([on_plane(level, 0.0), on_plane(steep, 0.1)])
    climbs = [one.figures.climb_m for one in found.lanes]
    assert climbs == [0.0, pytest.approx(0.1 * (2050 - 500), abs=1.0)]
    assert ("West", "climb") in [(one.lane, one.what) for one in found.findings]
    # W. W. Naismith's rule: 5 km an hour and 10 min for each 100 m climbed.
    west = found.lanes[1].figures
    wanted = west.length_m / 5000.0 * 3600.0 + 6.0 * west.climb_m
    assert dict(west.times_s)["Naismith"] == pytest.approx(wanted, rel=1e-6)


def test_what_is_not_known_is_said():
    found = check_lanes([lane("East", EAST_LANE, safety_azimuth=None)])
    assert found.findings == ()
    assert len(found.notes) == 5
    assert found.lanes[0].figures.climb_m is None


def test_a_shared_point_is_no_twin_but_one_place_with_two_names_is():
    other = [("Gatehouse", 1000, 500), *WEST_LANE[1:]]
    found = check_lanes([lane("East", EAST_LANE), lane("West", other)])
    assert [(one.kind, one.what) for one in found.findings] == [("twin-points", "Gate, Gatehouse")]
    assert "one place under two names" in found.findings[0].message
    assert np.isfinite(found.findings[0].latitude_deg)


def test_a_point_beside_a_hazard_is_something_to_look_at():
    """Bug: a lane whose point lay 16 m from a quarry's edge had nothing to look at."""
    # East of Birch, which the leg from the south-west comes to.
    line = shapely.LineString([(WEST + 1916, SOUTH + 1200), (WEST + 1916, SOUTH + 1400)])
    areas = GroundAreas(hazards=(GroundArea(name="Scarp", shape=line),))
    found = check_lanes(two_lanes(), areas).findings
    assert [(one.kind, one.lane, one.what) for one in found] == [
        ("point-near-hazard", "East", "Birch")
    ]
    assert "Birch lies 16 m from the hazard Scarp" in found[0].message
    assert "in 100 ordinary walks of leg 2 reach it" in found[0].message


def test_points_of_any_order_are_held_against_areas_and_no_legs_are():
    """Bug: points in no-go areas were unchecked where their order was free."""
    adit = GroundArea(name="Adit", shape=box(1890, 1290, 1910, 1310))  # about Birch
    wire = GroundArea(name="Wire", shape=box(1000, 1520, 1010, 1530))  # between the last two
    drop = GroundArea(name="Drop", shape=box(1400, 1820, 1410, 1830))  # 20 m from Cedar
    areas = GroundAreas(no_go=(adit, wire), hazards=(drop,))
    found = check_lanes([lane("East", EAST_LANE, order="free"), lane("West", WEST_LANE)], areas)
    assert [(one.kind, one.what) for one in found.findings] == [
        ("point-in-no-go", "Birch"),
        ("point-near-hazard", "Cedar"),
    ]
    assert "nearer than 30 m: the arrival radius." in found.findings[1].message
    assert any("any order" in note for note in found.notes)
