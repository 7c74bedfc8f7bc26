"""Where one recording holds several walks, and where it may hold two."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.classroom.lane import Lane
from audit.classroom.lane_fit import fit_lanes
from audit.geodesy.along_line import even_places
from audit.matching.leg_match import CleanTrack
from audit.settings import GradingSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A part of a recording that is taken for one walk, though it may also be two."""

    clean: CleanTrack
    perhaps_two: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Passing:
    """The lane of which a stretch passes most points, and how many."""

    lane: Lane
    points: int

    @property
    def share(self) -> float:
        """The share of the points of the lane."""
        return self.points / len(self.lane.points)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Parting:
    """A moment with a walk of some lane on either side.

    Attributes
    ----------
    more : int
        Points that two walks pass more than one. The place of parting is both an end and a
        start, and one walk passes it but once.
    silence_s : float
        For how long nothing was recorded there.
    at_start : bool
        Whether the walker was at the start of a lane then.
    """

    sides: tuple[CleanTrack, CleanTrack]
    walks: tuple[_Passing, _Passing]
    more: int
    silence_s: float
    at_start: bool

    def weight(self, settings: GradingSettings) -> tuple[bool, int, float]:
        """Give by what the likeliest of several partings is known."""
        return self.silence_s > settings.walks_night_s, self.more, self.silence_s

    def parts(self, settings: GradingSettings) -> bool:
        """Tell whether the sides are two walks, beyond what one that went astray explains.

        Who comes back to a start and sets out anew begins another walk, unless his lane comes
        back there by itself, or all that was walked twice is the start, which one walk may
        have come by between two points.
        """
        if self.silence_s > settings.walks_night_s:
            return True
        first, second = (walk.lane for walk in self.walks)
        fewest = min(len(first.points), len(second.points))
        if first.name != second.name:
            return self.more >= settings.walks_two_lanes * fewest
        if not self.at_start or _comes_by(first, settings):
            return self.more >= settings.walks_same_lane * fewest
        if self.silence_s > settings.walks_silence_s:
            return self.more > 0
        return self.more > (1 if _is_closed(first, settings) else 0)

    def may_part(self, settings: GradingSettings) -> bool:
        """Tell whether the sides may be two walks of one lane: they pass more than one does.

        Of a lane that comes by its start on a leg, one walk passes the finish there as well.
        """
        first, second = (walk.lane for walk in self.walks)
        return first.name == second.name and self.more > (1 if _comes_by(first, settings) else 0)


def parted(clean: CleanTrack, lanes: Sequence[Lane], settings: GradingSettings) -> list[Stretch]:
    """Part a recording where what lies on either side is a walk of some lane by itself.

    Of all the moments that part it, a night, then the one that explains most. A lane that
    passes its start again is walked on both sides of it: as one walk it passes all the points
    that the sides do, so that nothing is explained by two.
    """
    partings = _partings(clean, lanes, settings)
    sure = [one for one in partings if one.parts(settings)]
    if not sure:
        return [Stretch(clean=clean, perhaps_two=any(one.may_part(settings) for one in partings))]
    best = max(sure, key=lambda one: one.weight(settings))
    return [walk for side in best.sides for walk in parted(side, lanes, settings)]


def _partings(
    clean: CleanTrack, lanes: Sequence[Lane], settings: GradingSettings
) -> list[_Parting]:
    whole = _passing(clean, lanes, settings)
    found = []
    for here in _may_part(clean, lanes, settings):
        sides = clean.part(slice(None, here)), clean.part(slice(here, None))
        if any(len(side) < 2 for side in sides):
            continue
        first, second = (_passing(side, lanes, settings) for side in sides)
        if min(first.share, second.share) < settings.walk_of_lane:
            continue
        parting = _Parting(
            sides=sides,
            walks=(first, second),
            more=first.points + second.points - 1 - whole.points,
            silence_s=float(clean.time_s[here] - clean.time_s[here - 1]),
            at_start=any(
                np.hypot(*(_place(clean, fix) - lane.points[0])) <= settings.start_m
                for fix in (here - 1, here)
                for lane in (first.lane, second.lane)
            ),
        )
        found.append(parting)
    return found


def _passing(clean: CleanTrack, lanes: Sequence[Lane], settings: GradingSettings) -> _Passing:
    """Give the lane of which a stretch passes most points, of those that it is a walk of."""
    places = even_places(clean.places(), settings.path_step_m)
    called = {lane.name: lane for lane in lanes}
    passed = [
        _Passing(lane=lane, points=round(fit.passed * len(lane.points)))
        for fit in fit_lanes(places, lanes, settings)
        for lane in (called[fit.lane],)
    ]
    walked = [one for one in passed if one.share >= settings.walk_of_lane]
    return max(walked or passed, key=lambda one: (one.points, one.share))


def _may_part(clean: CleanTrack, lanes: Sequence[Lane], settings: GradingSettings) -> list[int]:
    """Give the fixes that may begin a walk: after long silences, and where a start is left anew."""
    begins = set(np.flatnonzero(np.diff(clean.time_s) > settings.walks_silence_s) + 1)
    for lane in {tuple(lane.points[0]): lane for lane in lanes}.values():
        away_m = np.hypot(clean.east_m - lane.points[0, 0], clean.north_m - lane.points[0, 1])
        at_start = away_m <= settings.start_m
        begins |= set(np.flatnonzero(at_start[:-1] & ~at_start[1:]))
    return sorted(int(fix) for fix in begins if fix > 0)


def _place(clean: CleanTrack, fix: int) -> FloatArray:
    return np.array([clean.east_m[fix], clean.north_m[fix]])


def _is_closed(lane: Lane, settings: GradingSettings) -> bool:
    return bool(np.hypot(*(lane.points[-1] - lane.points[0])) <= settings.passed_m)


def _comes_by(lane: Lane, settings: GradingSettings) -> bool:
    """Tell whether a lane comes by its own start on the way, at a point or on a leg."""
    line = np.vstack([leg.line for leg in lane.card.legs])
    places = even_places(line, settings.path_step_m)
    near = np.hypot(*(places - lane.points[0]).T) <= settings.passed_m
    times_there = 1 + int(np.count_nonzero(~near[:-1] & near[1:]))
    return times_there > (2 if _is_closed(lane, settings) else 1)
