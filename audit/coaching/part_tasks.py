"""The parts of the misses on legs of which no mistake is named: what to look at next."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Literal

from audit.coaching.lean_over_legs import Lean, lean_task
from audit.coaching.line_exercise import bent_aside, exercise_of_line
from audit.coaching.ordinary_metres import SizedPart, measured_sd_m, ordinary_m, part_sd_m
from audit.coaching.task import Task, TaskKind, work_on
from audit.diagnosis.finding import Finding
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.guide.cause_names import CAUSE_KINDS
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.words import sentence
from audit.words.figures import Length

_TURNS = frozenset({*CAUSE_KINDS["Direction"], *CAUSE_KINDS["Holding the line"]})
_LENGTHS = frozenset(CAUSE_KINDS["Distance"])
Part = SizedPart | Literal["passed"]
_PARTS: tuple[SizedPart, ...] = ("heading", "distance", "start")
_NO_SCATTER = WalkersScatter()


def part_tasks(  # noqa: PLR0913 (what is known of the legs beside their measures)
    rest: Mapping[str, LegMeasures],
    spared: Mapping[Part, Collection[str]],
    radius_m: float,
    sight_m: float,
    settings: CoachingSettings,
    *,
    lean: Lean | None = None,
    causes: Mapping[str, Sequence[Finding]] | None = None,
    scatter: WalkersScatter = _NO_SCATTER,
) -> Iterator[Task]:
    """Give the parts that stand out of their error of measuring, with the legs that show each.

    ``spared`` has the legs of which a part is not told; ``sight_m`` is how near a walker sees
    a point. Who came so near his point made up for every part on the way, and who began off by
    no fault of the leg is held to what he added.
    """
    nobodys = spared.get("start", ())
    missed = {
        name: one
        for name, one in rest.items()
        if _added_m(one, began_off=name in nobodys) > settings.met_radii * radius_m
    }
    parts = {name: _largest(one, spared, name) for name, one in missed.items()}
    if lean is not None and missed.keys() & lean.legs.keys():
        yield lean_task(lean)
    heading = {
        name: metres
        for name, metres in _sized("heading", parts).items()
        if lean is None or name not in lean.legs
    }
    distance = _sized("distance", parts)
    began = _sized("start", parts)
    began = {name: metres for name, metres in began.items() if metres >= settings.began_off_m}
    for _, of in _alike(heading, {name: rest[name].azimuth_error_deg for name in heading}):
        cause = _turn(rest, of, causes or {}, settings)
        yield _part(cause, "heading", of, rest, scatter)
    for side, of in _alike(distance, {name: rest[name].distance_error_m for name in distance}):
        cause = _stretch(rest, side, of, causes or {}, settings)
        yield _part(cause, "distance", of, rest, scatter)
    if began:
        yield _part("wrong-start", "start", began, rest, scatter)
    passed = {
        name: one
        for name, one in rest.items()
        if name not in spared.get("passed", ()) and _passed(one, radius_m, max(radius_m, sight_m))
    }
    if passed:
        yield _passed_by(passed)


def _alike(
    metres: Mapping[str, float], errors: Mapping[str, float]
) -> Iterator[tuple[float, dict[str, float]]]:
    """Give the legs that have an average in common; the side is 1 or -1.

    They are out to one side, and none by less than half of the worst: another thing put it out.
    """
    for side in (1.0, -1.0):
        left = {name: size for name, size in metres.items() if (errors[name] < 0.0) == (side < 0.0)}
        while left:
            worst = max(abs(errors[name]) for name in left)
            of = {name: size for name, size in left.items() if abs(errors[name]) >= 0.5 * worst}
            yield side, of
            left = {name: size for name, size in left.items() if name not in of}


def _sized(part: SizedPart, parts: Mapping[str, tuple[str, float]]) -> dict[str, float]:
    """Give a part's metres on the legs of which it is told."""
    return {name: metres for name, (largest, metres) in parts.items() if largest == part}


def _largest(
    one: LegMeasures, spared: Mapping[Part, Collection[str]], name: str
) -> tuple[SizedPart | Literal["none"], float]:
    """Give the largest part of a leg's miss, where it is to be told, and its metres.

    It is told where it is more than twice its standard error. A smaller one is not told in its
    place: the head of the debrief names the largest. A part that takes back what the plan itself
    was out by is no error of the walker's, nor is a start that is none of the leg's doing.
    """
    own: list[SizedPart] = [
        part
        for part in _PARTS
        if not _makes_up(part, one) and (part != "start" or name not in spared.get("start", ()))
    ]
    sizes = {part: _part_m(part, one) for part in own}
    largest = max(own, key=lambda part: sizes[part][0], default=None)
    if largest is None or name in spared.get(largest, ()):
        return "none", 0.0
    metres, sd_m = sizes[largest]
    return (largest, metres) if metres > 2.0 * sd_m else ("none", 0.0)


def _vector(part: SizedPart, one: LegMeasures) -> tuple[float, float]:
    return {
        "heading": one.ledger.heading,
        "distance": one.ledger.distance,
        "start": one.ledger.inherited,
    }[part]


def _added_m(one: LegMeasures, *, began_off: bool) -> float:
    """Give the miss, without where the leg began if that is none of its doing."""
    total, start = one.ledger.total, one.ledger.inherited
    return math.hypot(total[0] - start[0], total[1] - start[1]) if began_off else one.miss_m


def _makes_up(part: SizedPart, one: LegMeasures) -> bool:
    """Tell whether a part takes back most of what card and points of the plan differ by.

    So do azimuth and distance together, of who began off and made for his point: no error.
    """
    ledger = one.ledger
    own = (ledger.total[0] - ledger.inherited[0], ledger.total[1] - ledger.inherited[1])
    back = part != "start" and _undone(own, ledger.inherited)
    return back or _undone(_vector(part, one), ledger.plan)


def _undone(vector: tuple[float, float], other: tuple[float, float]) -> bool:
    """Tell whether a vector takes back more of another than it leaves of itself."""
    left_m = math.hypot(vector[0] + other[0], vector[1] + other[1])
    return left_m < 0.5 * math.hypot(*vector)


def _part_m(part: SizedPart, one: LegMeasures) -> tuple[float, float]:
    """Give a part of the ledger and its standard error; without one, that of the miss."""
    return math.hypot(*_vector(part, one)), measured_sd_m(part, one)


def _part(
    cause: str,
    part: SizedPart,
    metres: Mapping[str, float],
    walked: Mapping[str, LegMeasures],
    scatter: WalkersScatter,
) -> Task:
    worst = max(metres, key=lambda name: metres[name])
    evidence = sentence(
        "coach-part",
        count=len(metres),
        legs=told_legs(list(metres)),
        part=part,
        mean=Length(metres=sum(metres.values()) / len(metres)),
        most=Length(metres=metres[worst]),
        leg=worst,
    )
    return Task(
        kind=TaskKind.PART,
        metres=sum(metres.values()),
        ordinary_m=ordinary_m(part_sd_m(part, walked[name], scatter) for name in metres),
        worst_m=max(walked[name].miss_m for name in metres),
        work=work_on(cause, evidence, list(metres), certain=False),
    )


def _passed(one: LegMeasures, radius_m: float, sight_m: float) -> bool:
    """Tell whether a walk came within sight of its point and did not stop there."""
    if one.miss_m <= radius_m or one.at_the_edge(radius_m) or one.nearest_m > sight_m:
        return False
    return one.point_verdict == "missed" or (one.found and not one.came_back(radius_m))


def _passed_by(legs: Mapping[str, LegMeasures]) -> Task:
    farthest = max(legs, key=lambda name: legs[name].miss_m)
    evidence = sentence(
        "coach-passed",
        legs=told_legs(list(legs)),
        count=len(legs),
        near=Length(metres=legs[farthest].nearest_m),
        leg=farthest,
        miss=Length(metres=legs[farthest].miss_m),
    )
    return Task(
        kind=TaskKind.PART,
        metres=sum(one.miss_m - one.nearest_m for one in legs.values()),
        worst_m=legs[farthest].miss_m,
        work=work_on("passed-unseen", evidence, list(legs), certain=False),
    )


def _turn(
    legs: Mapping[str, LegMeasures],
    metres: Mapping[str, float],
    causes: Mapping[str, Sequence[Finding]],
    settings: CoachingSettings,
) -> str:
    """Give the exercise for azimuths that are out: the likeliest mistake's, or the line's."""
    worst = max(metres, key=lambda name: metres[name])
    likely = _candidate(causes.get(worst, ()), _TURNS, settings)
    if likely is not None:
        return likely
    one = legs[worst]
    return exercise_of_line(one.azimuth_error_deg, settings, bends=bent_aside(one))


def _stretch(
    legs: Mapping[str, LegMeasures],
    side: float,
    metres: Mapping[str, float],
    causes: Mapping[str, Sequence[Finding]],
    settings: CoachingSettings,
) -> str:
    """Give the exercise for distances out to a side: the pace count, or the hundreds."""
    errors = [one.distance_ratio - 1.0 for one in legs.values()]
    mean = sum(errors) / len(errors)
    if _leans(errors) and side * mean > settings.good_distance_share / 2.0:
        return "pace-long" if mean > 0.0 else "pace-short"
    worst = max(metres, key=lambda name: metres[name])
    if metres[worst] < settings.hundred_m:
        return "pace-long" if side > 0.0 else "pace-short"
    return _candidate(causes.get(worst, ()), _LENGTHS, settings) or "hundred-miscounted"


def _candidate(
    findings: Sequence[Finding], kinds: Collection[str], settings: CoachingSettings
) -> str | None:
    """Give the likeliest mistake of a leg that puts out this part, where it is likely at all."""
    likely = (
        one.cause
        for one in findings
        if one.cause in kinds and one.probability >= settings.candidate_probability
    )
    return next(likely, None)


def _leans(errors: Sequence[float]) -> bool:
    """Tell whether errors lean to one side: their mean over twice its standard error."""
    if len(errors) < 3:
        return False
    mean = sum(errors) / len(errors)
    spread = math.sqrt(sum((error - mean) ** 2 for error in errors) / (len(errors) - 1))
    return abs(mean) > 2.0 * spread / math.sqrt(len(errors))
