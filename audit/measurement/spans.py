"""The whole recording divided into spans: approach, walking, halts, searches, walk-off."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.leg_measures import Span, SpanKind
from audit.measurement.searches import settled_since
from audit.settings import MeasuringSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """A stretch of time before it is put on the fixes."""

    start_s: float
    end_s: float
    leg: int | None
    kind: SpanKind


def divide_walk(
    clean: CleanTrack,
    match: Match,
    bypasses: dict[int, list[tuple[float, float]]],
    settings: MeasuringSettings,
) -> tuple[Span, ...]:
    """Divide the recording; the last fix of each span is the first of the next.

    ``bypasses`` holds the start and end times of each leg's bypasses.
    """
    stages = _stages(clean, match, settings)
    laid = _paint(clean, stages, match, bypasses)
    return _merge(laid)


def _stages(clean: CleanTrack, match: Match, settings: MeasuringSettings) -> list[Stage]:
    """Give approach, legs, what lies between them, and walk-off, in order of time."""
    begin, end = float(clean.time_s[0]), float(clean.time_s[-1])
    walked = sorted(
        (leg for leg in match.legs if leg.start_s is not None and leg.claim_s is not None),
        key=lambda leg: leg.start_s or 0.0,
    )
    if not walked:
        return [Stage(start_s=begin, end_s=end, leg=None, kind="approach")]
    stages = _before(clean, begin, walked[0].start_s or begin, settings)
    for number, leg in enumerate(walked):
        start, claim = leg.start_s or begin, leg.claim_s or end
        stages.append(Stage(start_s=start, end_s=claim, leg=leg.leg, kind="walking"))
        if number + 1 < len(walked):
            following = walked[number + 1]
            stages += _between(clean, leg, following, settings)
        else:
            stages += _after(clean, leg, end, settings)
    return stages


def _before(
    clean: CleanTrack, begin: float, start: float, settings: MeasuringSettings
) -> list[Stage]:
    settled = settled_since(clean, begin, start, settings.at_point_m)
    return [
        Stage(start_s=begin, end_s=settled, leg=None, kind="approach"),
        Stage(start_s=settled, end_s=start, leg=None, kind="at-point"),
    ]


def _between(
    clean: CleanTrack, leg: LegMatch, following: LegMatch, settings: MeasuringSettings
) -> list[Stage]:
    """Give what lies between a claim and the next departure: a search, a rest at the point."""
    claim, start = leg.claim_s or 0.0, following.start_s or 0.0
    searched: Stage
    if following.leg == leg.leg + 1:
        settled = min(max(leg.search_end_s or claim, claim), start)
        searched = Stage(start_s=claim, end_s=settled, leg=leg.leg, kind="search")
    else:  # a way that no leg plans
        settled = settled_since(clean, claim, start, settings.at_point_m)
        searched = Stage(start_s=claim, end_s=settled, leg=None, kind="walking")
    return [searched, Stage(start_s=settled, end_s=start, leg=None, kind="at-point")]


def _after(
    clean: CleanTrack, leg: LegMatch, end: float, settings: MeasuringSettings
) -> list[Stage]:
    claim = leg.claim_s or end
    found = leg.search_end_s or claim
    stages = []
    if found > claim:
        stages.append(Stage(start_s=claim, end_s=found, leg=leg.leg, kind="search"))
    # With few fixes, the one after he got there shows the place better than the one before.
    here = min(int(np.searchsorted(clean.time_s, found)), len(clean) - 1)
    away = np.hypot(
        clean.east_m[here:] - clean.east_m[here], clean.north_m[here:] - clean.north_m[here]
    )
    outside = np.flatnonzero(away > settings.at_point_m)
    gone = float(clean.time_s[here + outside[0]]) if len(outside) else end
    stages.append(Stage(start_s=found, end_s=gone, leg=None, kind="at-point"))
    stages.append(Stage(start_s=gone, end_s=end, leg=None, kind="walk-off"))
    return stages


def _paint(
    clean: CleanTrack,
    stages: list[Stage],
    match: Match,
    bypasses: dict[int, list[tuple[float, float]]],
) -> list[tuple[int | None, SpanKind]]:
    """Give leg and kind of every step between fixes; halts, bypasses and gaps laid over."""
    steps = len(clean) - 1
    painted: list[tuple[int | None, SpanKind]] = [(None, "approach")] * steps
    for stage in stages:
        for step in _steps(clean, stage.start_s, stage.end_s):
            painted[step] = (stage.leg, stage.kind)
    for leg, times in bypasses.items():
        for step in _steps_of(clean, times):
            if painted[step][0] == leg:
                painted[step] = (leg, "bypass")
    for step in _steps_of(clean, [(float(start), float(end)) for start, end in match.halts]):
        leg_there, kind = painted[step]
        if leg_there is not None and kind in ("walking", "search", "bypass"):
            painted[step] = (leg_there, "halt")
    for gap in clean.gaps:
        painted[gap.before] = (painted[gap.before][0], "gap")
    return painted


def _steps_of(clean: CleanTrack, times: list[tuple[float, float]]) -> list[int]:
    return [step for start_s, end_s in times for step in _steps(clean, start_s, end_s)]


def _steps(clean: CleanTrack, start_s: float, end_s: float) -> range:
    """Give the steps between the fixes nearest to two moments."""
    return range(clean.index_at(start_s), clean.index_at(end_s))


def _merge(painted: list[tuple[int | None, SpanKind]]) -> tuple[Span, ...]:
    spans: list[Span] = []
    first = 0
    for step in range(1, len(painted) + 1):
        if step == len(painted) or painted[step] != painted[first]:
            leg, kind = painted[first]
            spans.append(Span(first=first, last=step, leg=leg, kind=kind))
            first = step
    return tuple(spans)
