"""The safety bearing of lanes, held against the ground inside the bounds."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from audit.course_setting.checked_lanes import FindingKind, Lane, LaneFinding
from audit.course_setting.legs_and_areas import placed_finding
from audit.course_setting.safety_sweep import unsafe_ground
from audit.geodesy.areas_on_grid import GroundAreas
from audit.settings import CourseSettingSettings
from audit.units import turn_degrees
from audit.words import sentence
from audit.words.figures import Azimuth, Number, Percent

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


def safety_findings(
    lanes: Sequence[Lane], areas: GroundAreas, settings: CourseSettingSettings
) -> Iterator[LaneFinding]:
    """Give from where a safety bearing leads into an area, and where bearings differ."""
    given = [lane for lane in lanes if lane.card.safety is not None]
    if not given:
        return
    wrong = [
        *(one for lane in _one_a_bearing(given) for one in _led_into(lane, areas, settings)),
        *_differences(given, settings.same_bearing_deg),
    ]
    yield from wrong
    for lane in lanes:
        if lane.card.safety is None:  # nobody is to copy what is told to be wrong above
            message = sentence("lanes-no-bearing", lane=lane.name, right="no" if wrong else "yes")
            yield LaneFinding(
                kind="safety-bearing-missing", lane=lane.name, what="safety bearing",
                message=message,
            )  # fmt: skip


def _differences(lanes: Sequence[Lane], same_deg: float) -> Iterator[LaneFinding]:
    first = lanes[0]
    for lane in lanes[1:]:
        if abs(turn_degrees(_grid_deg(first), _grid_deg(lane))) > same_deg:
            message = sentence(
                "lanes-bearings-differ",
                first=first.name,
                one=Azimuth(degrees=_grid_deg(first)),
                lane=lane.name,
                other=Azimuth(degrees=_grid_deg(lane)),
            )
            yield LaneFinding(
                kind="safety-bearings-differ", lane=lane.name, what="safety bearing",
                message=message,
            )  # fmt: skip


def _one_a_bearing(lanes: Sequence[Lane]) -> list[Lane]:
    """Give one lane for each bearing: the ground is the same for all."""
    found: list[Lane] = []
    for lane in lanes:
        if all(abs(turn_degrees(_grid_deg(one), _grid_deg(lane))) > 1e-6 for one in found):
            found.append(lane)
    return found


def _led_into(
    lane: Lane, areas: GroundAreas, settings: CourseSettingSettings
) -> Iterator[LaneFinding]:
    if areas.bounds is None or lane.card.safety is None:
        return
    magnetic = lane.card.safety.magnetic.degrees
    kinds: tuple[tuple[FindingKind, str], ...] = (
        ("safety-bearing-through-no-go", "no-go"),
        ("safety-bearing-through-hazard", "hazard"),
    )
    for (kind, what), group in zip(kinds, (areas.no_go, areas.hazards), strict=True):
        for area in group:
            found = unsafe_ground(
                areas.bounds, area.shape, _grid_deg(lane), settings.least_unsafe_m2
            )
            if found is None:
                continue
            message = sentence(
                "lanes-led-into",
                grid=Azimuth(degrees=_grid_deg(lane)),
                magnetic=Azimuth(degrees=magnetic),
                kind=what,
                area=area.name,
                hectares=Number(value=found.area_m2 / 1e4, decimals=1),
                share=Percent(share=found.share, decimals=1),
            )
            yield placed_finding(kind, "", area.name, message, (lane.card, found.furthest_m))


def _grid_deg(lane: Lane) -> float:
    if lane.card.safety is None:
        message = "a lane without a safety bearing has no direction"
        raise ValueError(message)
    return lane.card.safety.grid.degrees


def unsafe_shapes(
    lanes: Sequence[Lane], areas: GroundAreas, settings: CourseSettingSettings | None = None
) -> tuple[BaseGeometry, ...]:
    """Give all ground from which a safety bearing leads into an area, for a picture."""
    chosen = settings or CourseSettingSettings()
    if areas.bounds is None:
        return ()
    given = [lane for lane in lanes if lane.card.safety is not None]
    found = [
        unsafe_ground(areas.bounds, area.shape, _grid_deg(lane), chosen.least_unsafe_m2)
        for lane in _one_a_bearing(given)
        for area in (*areas.no_go, *areas.hazards)
    ]
    return tuple(one.shape for one in found if one is not None)
