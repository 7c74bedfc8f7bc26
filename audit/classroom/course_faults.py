"""Points that the course got wrong: said with their evidence, and left out of the grades."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from audit.classroom.class_result import ClassFinding
from audit.classroom.each_walk_once import each_walk_once
from audit.classroom.lane_result import LaneResult
from audit.classroom.places_left import able_walkers, left_from, own_claims
from audit.classroom.read_alike import read_alike
from audit.classroom.shared_miss import SharedPlace, gathered, missed_alike, stands_elsewhere
from audit.classroom.walker_result import WalkerResult
from audit.settings.class_shows import ClassShowsSettings
from audit.words import sentence
from audit.words.figures import Length, Percent

_How = Literal["gathered", "alike"]


def course_faults(
    lanes: Sequence[LaneResult], walkers: Sequence[WalkerResult], settings: ClassShowsSettings
) -> tuple[ClassFinding, ...]:
    """Give a finding for each point that all able walkers miss alike.

    To be asked before the walks are judged: each ``leaves_out`` its point.
    """
    found = []
    for lane in lanes:
        graded = each_walk_once(
            [one for one in walkers if one.lane == lane.name and one.state == "graded"]
        )
        for leg in range(len(lane.legs)):
            fault = _fault(lane, graded, leg, settings)
            if fault is not None:
                found.append(fault)
    return tuple(found)


def _fault(
    lane: LaneResult, walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> ClassFinding | None:
    able = able_walkers(walkers, leg, settings)
    offsets, errors = left_from(lane, able, leg, settings)
    place = gathered(offsets, errors, settings)
    if place is not None:
        if not stands_elsewhere(place, offsets, lane.arrival_radius_m, settings):
            return None
        return _finding(lane, leg, "gathered", place, read_alike(able, leg, settings))
    astray = [one for one in able if one.legs[leg].point.grade in {"missed", "doubtful"}]
    if len(astray) < settings.alike_share * len(able):
        return None
    alike = missed_alike(own_claims(lane, able, leg, settings), lane.arrival_radius_m, settings)
    if alike is None:
        return None
    return _finding(lane, leg, "alike", alike, read_alike(able, leg, settings))


def _finding(
    lane: LaneResult, leg: int, how: _How, place: SharedPlace, sure: float | None
) -> ClassFinding:
    """Tell the place; with its error unless ``sure`` says how little the walks are sure of it."""
    planned = lane.legs[leg]
    return ClassFinding(
        what="point-misplaced",
        message=sentence(
            "shows-fault",
            lane=lane.name,
            point=planned.end,
            leg=planned.name,
            seen=_seen(how, place, sure_place=sure is None),
            doubt=_doubt(sure, planned.start) if sure is not None else "",
        ),
        lane=lane.name,
        leg=planned.name,
        leaves_out=True,
    )


def _doubt(sure: float, start: str) -> str:
    return sentence("shows-read-alike", sure=Percent(share=sure), start=start)


def _seen(how: _How, place: SharedPlace, *, sure_place: bool) -> str:
    return sentence(
        f"shows-{how}",
        sharing=str(place.sharing),
        walkers=str(place.walkers),
        off=Length(metres=place.off_m),
        where=place_words(*place.mean_m),
        told="yes" if sure_place else "no",
        error=Length(metres=max(2.0 * place.error_m, 1.0)),
        scatter=Length(metres=place.scatter_m),
    )


def place_words(east_m: float, north_m: float) -> str:
    """Say where something lies: "86 m east, 72 m south"."""
    return sentence(
        "shows-place",
        across=Length(metres=abs(east_m)),
        east="yes" if east_m >= 0 else "no",
        up=Length(metres=abs(north_m)),
        north="yes" if north_m >= 0 else "no",
    )
