"""The smaller tables of the class: lanes, legs, causes, and where the time went."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median

from audit.classroom.class_result import ClassLeg, ClassResult
from audit.classroom.lane_result import LaneResult
from audit.classroom.walker_result import WalkerResult
from audit.reports import class_words, digits
from audit.reports.cause_words import cause_words
from audit.reports.class_matrix import debrief_page, numbered
from audit.reports.class_verdict import causes_counted
from audit.words import in_force, say, told
from audit.words.figures import Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """Parts of a bar, each a kind of filling, and where it begins and how wide it is in percent."""

    parts: tuple[tuple[str, float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LegRow:
    """One leg over all its walkers."""

    lane: str
    leg: str
    ends: str
    azimuth: str
    distance: str
    climb: str
    counts: tuple[tuple[str, int], ...]
    bar: Bar
    mean_miss: str
    fault: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeRow:
    """Where one walker's time went."""

    number: int
    name: str
    debrief: str
    moving: str
    searching: str
    halted: str
    together: str
    bar: Bar


def leg_rows(result: ClassResult) -> list[LegRow]:
    """Give the legs in the order of their lanes."""
    return [_leg(result.lane(leg.lane), leg) for leg in result.legs if leg.walkers]


def lane_rows(result: ClassResult) -> list[tuple[str, list[tuple[str, str]]]]:
    """Give, lane by lane, name and words of what can be compared."""
    return [(lane.name, _lane(lane, result)) for lane in result.lanes]


def cause_rows(result: ClassResult) -> list[tuple[str, int, int, Bar]]:
    """Give each named mistake: on how many legs, of how many walkers, and a bar of the legs."""
    counted = causes_counted(result)
    most = max((legs for _, legs, _ in counted), default=1)
    return [
        (cause_words(cause), legs, walkers, _bar([("missed", legs)], most))
        for cause, legs, walkers in counted
    ]


def time_rows(result: ClassResult) -> list[TimeRow]:
    """Give the walkers whose time is known."""
    known = [(n, one) for n, one in numbered(result) if one.moving_s is not None]
    longest = max((sum(_times(one)) for _, one in known), default=1.0)
    return [
        TimeRow(
            number=n,
            name=class_words.called(one),
            debrief=debrief_page(one),
            moving=class_words.hours(one.moving_s),
            searching=class_words.hours(one.searching_s),
            halted=class_words.hours(one.halted_s),
            together=class_words.hours(sum(60.0 * round(part_s / 60.0) for part_s in _times(one))),
            bar=_bar(
                list(zip(("moving", "searching", "halted"), _times(one), strict=True)), longest
            ),
        )
        for n, one in known
    ]


def _leg(lane: LaneResult, leg: ClassLeg) -> LegRow:
    planned = next(one for one in lane.legs if one.name == leg.name)
    counts = (
        ("found", leg.found),
        ("doubtful", leg.doubtful),
        ("missed", leg.missed),
        ("no-evidence", leg.without_evidence),
    )
    mean = ""
    if leg.mean_miss is not None:
        mean = class_words.vector(*leg.mean_miss)
        if leg.spread_m is not None and leg.walked:
            error_m = max(2.0 * leg.spread_m / leg.walked**0.5, 1.0)
            error = digits.stated_metres(error_m)
            mean = say("class-mean-miss-said", place=mean, error=error)
    return LegRow(
        lane=leg.lane,
        leg=leg.name,
        ends=told(planned.end) if lane.is_free else f"{told(planned.start)} – {told(planned.end)}",
        azimuth="–" if lane.is_free else digits.card_azimuth(planned.azimuth_deg),
        distance="–" if lane.is_free else digits.stated_metres(planned.distance_m),
        climb="–" if planned.climb_m is None else f"{digits.whole(planned.climb_m)} m",
        counts=counts,
        bar=_bar(list(counts), leg.walkers),
        mean_miss=mean,
        fault=leg.finding == "point-misplaced",
    )


def _lane(lane: LaneResult, result: ClassResult) -> list[tuple[str, str]]:
    walkers = [one for one in result.walkers if one.lane == lane.name]
    met = sum(one.verdict.grade == "pass" for one in walkers)
    times = [one.time.elapsed_s for one in walkers if one.time.elapsed_s is not None]
    climb = say("class-not-known") if lane.climb_m is None else f"{digits.whole(lane.climb_m)} m"
    hard = say("class-not-known")
    if lane.difficulty is not None:
        hard = digits.percent(lane.difficulty)
    length = say("class-not-known")
    if lane.length_m is not None:
        length = f"{Number(value=lane.length_m / 1000, decimals=1).shown(in_force())} km"
    planned = [
        ("legs", digits.whole(len(lane.legs))),
        ("length", length),
        ("climb", climb),
        ("out-of-sight", hard),
    ]
    if lane.is_free:
        any_order = say("class-any-order", count=digits.whole(len(lane.legs)))
        planned = [("legs", any_order), *((name, "–") for name, _ in planned[1:])]
    facts = [
        ("walks", digits.whole(len(walkers))),
        ("standard-met", say("class-of", count=str(met), all=str(len(walkers)))),
        *planned,
        ("middle-time", class_words.hours(median(times) if times else None)),
        ("plan", lane.plan_file),
        ("fingerprint", lane.fingerprint),
    ]
    return [(say(f"class-{name}"), words) for name, words in facts]


def _times(walker: WalkerResult) -> tuple[float, float, float]:
    return walker.moving_s or 0.0, walker.searching_s or 0.0, walker.halted_s or 0.0


def _bar(parts: list[tuple[str, float]] | list[tuple[str, int]], whole: float) -> Bar:
    placed, begin = [], 0.0
    for kind, size in parts:
        width = 100.0 * size / max(whole, 1e-9)
        if width > 0.0:
            placed.append((kind, round(begin, 2), round(width, 2)))
        begin += width
    return Bar(parts=tuple(placed))
