"""What only a class can show: angles, points and compasses, harder legs, and company."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.classroom.angle_alike import angles_alike
from audit.classroom.carried_alike import CarriedTurn, carried_alike
from audit.classroom.class_result import ClassFinding
from audit.classroom.each_walk_once import each_walk_once
from audit.classroom.harder_legs import HarderLeg, LegComparison, harder_legs
from audit.classroom.lane_result import LaneResult
from audit.classroom.missed_by_all import missed_by_all
from audit.classroom.places_left import usual_turn_deg
from audit.classroom.walked_together import Company, WalkOnClock, walked_together
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.settings.class_shows import ClassShowsSettings
from audit.words import says, sentence
from audit.words.figures import Length, Number, Percent, Turn

_TWO_AXES = 2**0.5
_READ_IN_PART = "recording-kept-before"
"""The note of the reader, wherever in the file it could read no further."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassShows:
    """Findings, and notes about what could not be told."""

    findings: tuple[ClassFinding, ...]
    notes: tuple[str, ...] = ()


def class_shows(
    lanes: Sequence[LaneResult],
    walkers: Sequence[WalkerResult],
    faults: Sequence[ClassFinding],
    settings: ClassShowsSettings,
) -> ClassShows:
    """Give what the class shows, ``faults`` of the course first."""
    graded = [walker for walker in walkers if walker.state == "graded"]
    once = each_walk_once(graded)
    angles = angles_alike(lanes, graded, settings)
    turned = {angle.lane for angle in angles}
    straight = [lane for lane in lanes if lane.name not in turned]
    notes = [sentence("shows-turned-alike", lane=one.name) for one in lanes if one.name in turned]
    compared = _compared(straight, once, faults, settings)
    not_compared = (compared.why_not,) if straight and compared.why_not else ()
    return ClassShows(
        findings=(
            *faults,
            *angles,
            *missed_by_all(lanes, graded, faults, settings),
            *_compasses(lanes, once, settings),
            *(_harder(lanes, leg) for leg in compared.legs),
            *_company(lanes, graded, settings),
            *_broken_files(graded),
        ),
        notes=(*notes, *not_compared),
    )


def _compasses(
    lanes: Sequence[LaneResult], walkers: Sequence[WalkerResult], settings: ClassShowsSettings
) -> list[ClassFinding]:
    """Look at compasses where the roster numbers them, else at devices."""
    by_compass = any(walker.compass for walker in walkers)
    thing = "compass" if by_compass else "device"
    held = [walker.compass if by_compass else walker.device for walker in walkers]
    turns = np.array([usual_turn_deg(walker) for walker in walkers])
    found = carried_alike([walker.name for walker in walkers], held, turns, settings)
    angles = [lane.grid_magnetic_angle_deg for lane in lanes]
    return [
        ClassFinding(
            what="compass-reads-wrong",
            message=_compass_words(thing, turn, angles, settings.like_angle_deg),
            walkers=tuple(
                walker.ident
                for walker, one in zip(walkers, held, strict=True)
                if one == turn.compass
            ),
            question=True,
            probability=1.0 - turn.chance,
        )
        for turn in found
    ]


def _compass_words(
    thing: str, turn: CarriedTurn, angles_deg: Sequence[float], like_deg: float
) -> str:
    size, half = abs(turn.turn_deg), 2.0 * turn.error_deg
    like = any(abs(turn.turn_deg - angle) < like_deg for angle in angles_deg)
    return sentence(
        "shows-compass",
        thing=thing,
        name=turn.compass,
        carriers=str(turn.carriers),
        size=Turn(degrees=size),
        side="right" if turn.turn_deg > 0 else "left",
        others=str(turn.others),
        low=Turn(degrees=max(size - half, 0.0)),
        high=Turn(degrees=size + half),
        out=Turn(degrees=size, degrees_decimals=0),
        angle="yes" if like else "no",
    )


def _broken_files(walkers: Sequence[WalkerResult]) -> list[ClassFinding]:
    """Ask again for recordings of which only the beginning could be read."""
    return [
        ClassFinding(
            what="broken-file",
            message=sentence("shows-broken", walker=walker.name, note=note),
            lane=walker.lane,
            walkers=(walker.ident,),
            question=True,
        )
        for walker in walkers
        for note in (() if walker.track is None else walker.track.notes)
        if says(note, _READ_IN_PART)
    ]


def _compared(
    lanes: Sequence[LaneResult],
    walkers: Sequence[WalkerResult],
    faults: Sequence[ClassFinding],
    settings: ClassShowsSettings,
) -> LegComparison:
    """Compare the legs, but those to and from a point that the course got wrong.

    What was brought along from where a leg began was made on the legs before it. To a point
    of a free order everybody has another leg.
    """
    wrong = {(fault.lane, fault.leg) for fault in faults}
    legs, who, misses, lengths = [], [], [], []
    for lane in (one for one in lanes if not one.is_free):
        names = [leg.name for leg in lane.legs]
        spoilt = {n for n, name in enumerate(names) if (lane.name, name) in wrong}
        spoilt |= {n + 1 for n in spoilt}
        for walker in (one for one in walkers if one.lane == lane.name):
            for number, leg in enumerate(walker.legs):
                own_m = _own_miss_m(leg, settings)
                if own_m is None or number in spoilt:
                    continue
                legs.append((lane.name, leg.name))
                who.append(walker.name)
                misses.append(own_m)
                lengths.append(lane.legs[number].distance_m)
    return harder_legs(legs, who, np.array(misses), np.array(lengths), settings)


def _own_miss_m(leg: LegResult, settings: ClassShowsSettings) -> float | None:
    """Give what a leg itself put into its miss, no less than a receiver can tell.

    None where that is not sure, or where the leg was begun was not seen.
    """
    if leg.miss is None or leg.began_off is None or (leg.confidence or 0.0) < settings.sure_leg:
        return None
    own_m = math.hypot(leg.miss.east_m - leg.began_off[0], leg.miss.north_m - leg.began_off[1])
    return max(own_m, _TWO_AXES * leg.miss.sd_m, 1.0)


def _harder(lanes: Sequence[LaneResult], leg: HarderLeg) -> ClassFinding:
    lane = next(lane for lane in lanes if lane.name == leg.leg[0])
    planned = next(one for one in lane.legs if one.name == leg.leg[1])
    return ClassFinding(
        what="harder-leg",
        message=sentence(
            "shows-harder",
            lane=lane.name,
            leg=planned.name,
            start=planned.start,
            end=planned.end,
            ratio=Number(value=leg.ratio, decimals=1),
            low=Number(value=leg.low, decimals=1),
            high=Number(value=leg.high, decimals=1),
            walkers=str(leg.walkers),
            more="no" if leg.low <= leg.by_length else "yes",
            length=Number(value=leg.by_length, decimals=1),
        ),
        lane=lane.name,
        leg=planned.name,
        probability=1.0 - leg.chance,
    )


def _company(
    lanes: Sequence[LaneResult], walkers: Sequence[WalkerResult], settings: ClassShowsSettings
) -> list[ClassFinding]:
    points = {
        lane.name: np.array([[point.east_m, point.north_m] for point in lane.points])
        for lane in lanes
    }
    walks = [walk for walker in walkers if (walk := _on_clock(walker)) is not None]
    by_ident = {walker.ident: walker for walker in walkers}
    return [
        ClassFinding(
            what="walked-together",
            message=_company_words(one, by_ident, settings),
            lane=by_ident[one.first].lane,
            walkers=(one.first, one.second),
            question=True,
        )
        for one in walked_together(walks, points, settings)
    ]


def _on_clock(walker: WalkerResult) -> WalkOnClock | None:
    trace = walker.trace
    begun = [leg.started_s for leg in walker.legs if leg.started_s is not None]
    if trace is None or trace.time_s is None or len(trace.time_s) < 2 or not begun:
        return None
    return WalkOnClock(
        ident=walker.ident,
        lane=walker.lane,
        begun_s=min(begun),
        time_s=np.array(trace.time_s),
        east_m=np.array(trace.east_m),
        north_m=np.array(trace.north_m),
    )


def _company_words(
    one: Company, by_ident: dict[str, WalkerResult], settings: ClassShowsSettings
) -> str:
    first, second = by_ident[one.first].name, by_ident[one.second].name
    together, usual = round(one.together_s / 60), max(round(one.usual_s / 60), 1)
    return sentence(
        "shows-company",
        first=first,
        second=second,
        within=Length(metres=settings.together_m),
        apart=f"{one.apart_s:.0f}",
        together=str(together),
        share=Percent(share=one.share),
        usual=str(usual),
    )
