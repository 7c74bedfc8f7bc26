"""Whether a walk kept the standard's rule for roads: a question for a person, never a verdict."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from audit.areas import Area
from audit.classroom.class_result import ClassFinding
from audit.classroom.walker_result import WalkerResult
from audit.debriefing.finished_debrief import Debrief
from audit.geodesy.areas_on_grid import areas_on_grid
from audit.measurement.leg_measures import SpanKind
from audit.measurement.near_roads import NearRoads, NearRule, near_roads
from audit.settings import GradingSettings
from audit.standard import Standard
from audit.statistics.runs import runs_of_one
from audit.units import FloatArray
from audit.words import Sentence, sentence
from audit.words.figures import Length, Listed

_ON_FOOT: tuple[SpanKind, ...] = ("walking", "bypass", "search")
_STILL: tuple[SpanKind, ...] = ("halt", "at-point")
_TOLD_ROADS = 3


def roads_used(
    found: Debrief, roads: Sequence[Area], standard: Standard, settings: GradingSettings
) -> NearRoads | None:
    """Measure a walk's use of roads; None where no road or no rule is given."""
    if not roads or standard.road_rule == "none":
        return None
    import shapely  # noqa: PLC0415 (only where there are roads)

    card = found.card
    placed = areas_on_grid(roads, card.grid).roads
    stated = standard.road_distance_m
    within_m = settings.on_road_m if stated is None else stated
    ends = np.array([[point.east_m, point.north_m] for point in found.points])
    parts, times = _on_foot(found, settings)
    return near_roads(
        parts,
        times if found.clean.timed else None,
        [(one.name, one.shape) for one in placed],
        shapely.union_all(shapely.buffer(shapely.points(ends), card.arrival_radius_m + within_m)),
        NearRule(
            within_m=within_m,
            sd_m=math.hypot(float(found.quality.noise_m), settings.road_sd_m),
            whole_error=settings.coverage_factor,
            crossing=settings.crossing if standard.road_rule == "cross only" else 0.0,
        ),
    )


def _on_foot(
    found: Debrief, settings: GradingSettings
) -> tuple[list[FloatArray], list[FloatArray]]:
    """Give the parts of the legs that were walked, and a clock of each that stands at halts.

    A halt does not end a part: who rests on a road goes on along it. A silence does, and so
    does whatever is no part of a leg.
    """
    clean = found.clean
    took_s = np.diff(clean.time_s)
    walking, still = np.zeros(len(took_s), dtype=bool), np.zeros(len(took_s), dtype=bool)
    for span in found.spans:
        if span.leg is not None and span.kind in _ON_FOOT:
            walking[span.first : span.last] = True
        elif span.kind in _STILL:
            still[span.first : span.last] = True
    walking &= took_s <= settings.road_silence_s
    clock_s = np.concatenate([[0.0], np.cumsum(np.where(walking, took_s, 0.0))])
    where = clean.places()
    parts, times = [], []
    for part in np.split(np.arange(len(clean)), np.flatnonzero(~(walking | still)) + 1):
        steps = np.floor((clock_s[part] - clock_s[part[0]]) / settings.trace_step_s)
        kept = part[runs_of_one(steps)[:, 0]]
        if len(kept) > 1:
            parts.append(where[kept])
            times.append(clock_s[kept])
    return parts, times


def asked_of_roads(walkers: Sequence[WalkerResult], standard: Standard) -> list[ClassFinding]:
    """Ask about every walk that was near roads for longer than the standard lets it be."""
    return [
        ClassFinding(
            what="on-a-road",
            message=_words(walker.name, walker.roads, standard),
            lane=walker.lane,
            walkers=(walker.ident,),
            question=True,
        )
        for walker in walkers
        if walker.roads is not None and walker.roads.seen_m > 0.0
    ]


def _words(name: str, used: NearRoads, standard: Standard) -> Sentence:
    return sentence(
        "shows-roads",
        walker=name,
        within=Length(metres=used.within_m),
        roads=Listed(things=used.roads[:_TOLD_ROADS]),
        seen=Length(metres=used.seen_m),
        minutes=_minutes(used.seen_s),
        sure=Length(metres=used.sure_m) if used.sure_m > 0.0 else "none",
        sure_minutes=_minutes(used.sure_s),
        rule=standard.road_rule.replace(" ", "-"),
    )


def _minutes(seconds: float | None) -> str:
    return "none" if seconds is None else f"{max(seconds / 60.0, 1.0):.0f}"
