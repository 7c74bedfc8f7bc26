"""Points that the course got wrong: said with their evidence, and left out of the grades."""

from __future__ import annotations

from collections.abc import Sequence

from audit.classroom.places_left import able_walkers, left_from, own_claims
from audit.classroom.records import ClassFinding, LaneResult, WalkerResult
from audit.classroom.shared_miss import SharedPlace, gathered, missed_alike, stands_elsewhere
from audit.settings.class_shows import ClassShowsSettings


def course_faults(
    lanes: Sequence[LaneResult], walkers: Sequence[WalkerResult], settings: ClassShowsSettings
) -> tuple[ClassFinding, ...]:
    """Give a finding for each point that all able walkers miss alike.

    To be asked before the walks are judged: each ``leaves_out`` its point.
    """
    found = []
    for lane in lanes:
        graded = [one for one in walkers if one.lane == lane.name and one.state == "graded"]
        for leg in range(len(lane.legs)):
            fault = _fault(lane, graded, leg, settings)
            if fault is not None:
                found.append(fault)
    return tuple(found)


def _fault(
    lane: LaneResult, walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> ClassFinding | None:
    able = able_walkers(walkers, leg, settings)
    offsets, errors = left_from(lane, able, leg)
    place = gathered(offsets, errors, settings)
    if place is not None:
        if not stands_elsewhere(place, offsets, lane.arrival_radius_m, settings):
            return None
        return _finding(lane, leg, _gathered_words(place))
    astray = [one for one in able if one.legs[leg].point.grade in {"missed", "doubtful"}]
    if len(astray) < settings.alike_share * len(able):
        return None
    alike = missed_alike(own_claims(lane, able, leg), lane.arrival_radius_m, settings)
    return None if alike is None else _finding(lane, leg, _alike_words(alike))


def _finding(lane: LaneResult, leg: int, words: str) -> ClassFinding:
    planned = lane.legs[leg]
    return ClassFinding(
        what="point-misplaced",
        message=(
            f"{lane.name}, {planned.end} (leg {planned.name}): {words} The marker, the plan or the "
            "card is wrong there, not the walkers: go and check it. The point is left out of the "
            "grades."
        ),
        lane=lane.name,
        leg=planned.name,
        leaves_out=True,
    )


def _gathered_words(place: SharedPlace) -> str:
    return (
        f"{place.sharing} of the {place.walkers} able walkers left it from one place, "
        f"{place.off_m:.0f} m from where it is planned ({_where(place)}, ±{_error(place)} m); "
        f"about that place they scatter by {place.scatter_m:.0f} m."
    )


def _alike_words(place: SharedPlace) -> str:
    return (
        f"the {place.walkers} able walkers end {place.off_m:.0f} m from it on average "
        f"({_where(place)}, ±{_error(place)} m), {place.sharing} of them to that side; what each "
        f"turns and paces on other legs is taken off, and they scatter by {place.scatter_m:.0f} m."
    )


def _where(place: SharedPlace) -> str:
    east, north = place.mean_m
    return (
        f"{abs(east):.0f} m {'east' if east >= 0 else 'west'}, "
        f"{abs(north):.0f} m {'north' if north >= 0 else 'south'}"
    )


def _error(place: SharedPlace) -> str:
    return f"{max(2.0 * place.error_m, 1.0):.0f}"
