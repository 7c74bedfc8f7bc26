"""The whole recording divided into spans: approach, walking, halts, searches, walk-off."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import get_args

import numpy as np
from numpy.typing import NDArray

from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.leg_measures import Span, SpanKind
from audit.measurement.search_ends import settled_since
from audit.settings import MeasuringSettings
from audit.units import FloatArray

_KINDS: tuple[SpanKind, ...] = get_args(SpanKind)
_NO_LEG = -1
_TELLABLE_S = 0.001
"""The document tells times to the millisecond: what lies nearer together is one moment."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """A stretch of time before it is put on the fixes."""

    start_s: float
    end_s: float
    leg: int | None
    kind: SpanKind


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Painted:
    """Leg and kind of every piece between two edges, by their numbers; shape (n - 1,)."""

    edge_s: FloatArray
    leg: NDArray[np.int64]
    kind: NDArray[np.int8]

    def between(self, start_s: float, end_s: float) -> slice:
        """Give the pieces between two moments, each of which has an edge."""
        first, last = np.searchsorted(self.edge_s, [start_s, end_s])
        return slice(int(first), int(last))


def divide_walk(
    clean: CleanTrack,
    match: Match,
    bypasses: dict[int, list[tuple[float, float]]],
    settings: MeasuringSettings,
) -> tuple[Span, ...]:
    """Divide the recording at the very moments of starts, claims, halts and bypasses.

    ``bypasses`` holds the start and end times of each leg's bypasses.
    """
    stages = _stages(clean, match, settings)
    return _merge(clean, _paint(clean, stages, match, bypasses))


def _stages(clean: CleanTrack, match: Match, settings: MeasuringSettings) -> list[Stage]:
    """Give approach, legs, what lies between them, and walk-off, in order of time."""
    begin, end = float(clean.time_s[0]), float(clean.time_s[-1])
    walked = match.walked_in_turn()
    if not walked:
        return [Stage(start_s=begin, end_s=end, leg=None, kind="approach")]
    stages = _before(clean, begin, walked[0].times_s[0], settings)
    for number, leg in enumerate(walked):
        start, claim = leg.times_s
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
    claim, start = leg.times_s[1], following.times_s[0]
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
    claim = leg.times_s[1]
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
) -> _Painted:
    """Give leg and kind of every piece of time; halts, bypasses and gaps laid over the stages."""
    ends_s = (float(clean.time_s[0]), float(clean.time_s[-1]))
    moments = np.unique(
        [*ends_s, *(one for stage in stages for one in (stage.start_s, stage.end_s))]
    )
    moments = moments[(moments >= ends_s[0]) & (moments <= ends_s[1])]

    def held(times: list[tuple[float, float]]) -> list[tuple[float, float]]:
        return [(_held(start_s, moments), _held(end_s, moments)) for start_s, end_s in times]

    halts = held([(float(start_s), float(end_s)) for start_s, end_s in match.halts])
    aside = {leg: held(times) for leg, times in bypasses.items()}
    gaps = held([(gap.start_s, gap.end_s) for gap in clean.gaps])
    laid_over = [halts, gaps, *aside.values()]
    edge_s = np.unique([*moments, *(one for times in laid_over for pair in times for one in pair)])
    pieces = len(edge_s) - 1
    painted = _Painted(
        edge_s=edge_s,
        leg=np.full(pieces, _NO_LEG),
        kind=np.full(pieces, _KINDS.index("approach"), dtype=np.int8),
    )
    for stage in stages:
        there = painted.between(stage.start_s, stage.end_s)
        painted.leg[there] = _NO_LEG if stage.leg is None else stage.leg
        painted.kind[there] = _KINDS.index(stage.kind)
    for leg, times in aside.items():
        for there in (painted.between(*pair) for pair in times):
            painted.kind[there][painted.leg[there] == leg] = _KINDS.index("bypass")
    on_legs = [_KINDS.index(kind) for kind in ("walking", "search", "bypass")]
    for there in (painted.between(*pair) for pair in halts):
        of_leg = (painted.leg[there] != _NO_LEG) & np.isin(painted.kind[there], on_legs)
        painted.kind[there][of_leg] = _KINDS.index("halt")
    for there in (painted.between(*pair) for pair in gaps):
        painted.kind[there] = _KINDS.index("gap")
    return painted


def _held(time_s: float, moments: FloatArray) -> float:
    """Give a time within the recording, or the moment beside it that nobody can tell from it."""
    within = float(np.clip(time_s, moments[0], moments[-1]))
    nearest = float(moments[np.argmin(np.abs(moments - within))])
    return nearest if abs(nearest - within) < _TELLABLE_S else within


def _merge(clean: CleanTrack, painted: _Painted) -> tuple[Span, ...]:
    if not len(painted.leg):
        return ()
    changes = (np.diff(painted.leg) != 0) | (np.diff(painted.kind) != 0)
    ends = [*(np.flatnonzero(changes) + 1).tolist(), len(painted.leg)]
    return tuple(
        Span(
            start_s=float(painted.edge_s[begin]),
            end_s=float(painted.edge_s[end]),
            first=clean.index_at(float(painted.edge_s[begin])),
            last=clean.index_at(float(painted.edge_s[end])),
            leg=None if painted.leg[begin] == _NO_LEG else int(painted.leg[begin]),
            kind=_KINDS[painted.kind[begin]],
        )
        for begin, end in pairwise((0, *ends))
    )
