"""Points so near each other that one is taken for the other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from audit.course_setting.checked_lanes import Lane
from audit.leg_card import CardPoint
from audit.settings import CourseSettingSettings
from audit.words import sentence
from audit.words.figures import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class TwinPoints:
    """Two points of two lanes, or of one, and how far apart they are."""

    lanes: tuple[str, str]
    points: tuple[CardPoint, CardPoint]
    apart_m: float
    least_m: float

    @property
    def message(self) -> str:
        """Say it in a sentence."""
        named = [
            sentence("lanes-of", point=point.name, lane=lane)
            for point, lane in zip(self.points, self.lanes, strict=True)
        ]
        first = self.points[0].name if self.lanes[0] == self.lanes[1] else named[0]
        if self.apart_m < 1.0:
            return sentence("lanes-one-place", first=first, second=named[1])
        return sentence(
            "lanes-near",
            first=first,
            second=named[1],
            apart=Length(metres=self.apart_m),
            least=Length(metres=self.least_m),
        )


def twin_points(lanes: Sequence[Lane], settings: CourseSettingSettings) -> Iterator[TwinPoints]:
    """Give every pair of points that are too near; a point that lanes share is one point."""
    placed = [
        (lane, point)
        for lane in lanes
        for point in lane.card.points
        if not point.dead_reckoned and _is_first(lane, point, settings)
    ]
    for (lane, point), (other_lane, other) in combinations(placed, 2):
        apart_m = _apart_m(point, other)
        if _same_name(point, other) and apart_m < settings.same_place_m:
            continue
        radius_m = max(lane.card.arrival_radius_m, other_lane.card.arrival_radius_m)
        least_m = settings.twin_radii * radius_m
        if apart_m < least_m:
            yield TwinPoints(
                lanes=(lane.name, other_lane.name),
                points=(point, other),
                apart_m=apart_m,
                least_m=least_m,
            )


def _is_first(lane: Lane, point: CardPoint, settings: CourseSettingSettings) -> bool:
    """Say whether a lane names this place for the first time: a loop ends where it began."""
    for other in lane.card.points:
        if other is point:
            return True
        if not other.dead_reckoned and _apart_m(point, other) < settings.same_place_m:
            return False
    return True


def _apart_m(point: CardPoint, other: CardPoint) -> float:
    return math.hypot(point.east_m - other.east_m, point.north_m - other.north_m)


def _same_name(point: CardPoint, other: CardPoint) -> bool:
    return point.name.casefold() == other.name.casefold()
