"""Walks drawn by hand, whose every figure can be worked out on paper.

Coordinates are metres east and north of the first point of the course, which lies on
a UTM grid; directions are grid azimuths.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field

import numpy as np
from leg_card.plans import grid_point

from audit.azimuths import GridAzimuth
from audit.leg_card import LegCard, work_out_card
from audit.matching.leg_match import CleanTrack, Gap, LegMatch, Match
from audit.matching.walk_layout import lay_out
from audit.measurement.measure_walk import WalkMeasures, measure_walk
from audit.plan import Plan, PlannedLeg
from audit.settings import Settings
from audit.walkers_log import LogEntry, WalkersLog

ORIGIN = np.array([700_000.0, 3_580_000.0])
BEGIN = 1_791_014_400.0  # 2026-10-03T08:00:00Z
SETTINGS = Settings()


def card_of(*points, angle_deg=-7.0, via=(), legs=None, **values) -> LegCard:
    """Work out a course over places; ``via`` is the bent line of its first leg."""
    made = tuple(grid_point(f"P{n}", *(ORIGIN + place)) for n, place in enumerate(points))
    line = tuple(grid_point("via", *(ORIGIN + place)).position for place in via)
    planned = legs or tuple(
        PlannedLeg(name=str(n + 1), start=f"P{n}", end=f"P{n + 1}", via=line if n == 0 else ())
        for n in range(len(points) - 1)
    )
    plan = Plan(
        name="By hand",
        grid="EPSG:32616",
        points=made,
        legs=planned,
        date=dt.date(2026, 10, 3),
        grid_magnetic_angle_deg=angle_deg,
        **values,
    )
    return work_out_card(plan)


def leg_as_carded(azimuth_deg: float, distance_m: float, name="1", start="P0", end="P1"):
    """A leg whose card says something of its own."""
    azimuth = GridAzimuth(azimuth_deg)
    return PlannedLeg(name=name, start=start, end=end, grid_azimuth=azimuth, distance_m=distance_m)


@dataclass
class HandWalk:
    """Goes on second by second; ``marks`` keeps the second of every named moment."""

    places: list[np.ndarray] = field(default_factory=lambda: [np.zeros(2)])
    marks: dict[str, float] = field(default_factory=dict)
    halts: list[tuple[float, float]] = field(default_factory=list)

    @property
    def now_s(self) -> float:
        return BEGIN + len(self.places) - 1

    def mark(self, name: str) -> HandWalk:
        self.marks[name] = self.now_s
        return self

    def walk(self, azimuth_deg: float, metres: float, speed_m_s: float = 1.25) -> HandWalk:
        seconds = round(metres / speed_m_s)
        assert abs(seconds * speed_m_s - metres) < 1e-6, "whole seconds are easier on paper"
        angle = np.radians(azimuth_deg)
        way = np.array([np.sin(angle), np.cos(angle)])
        here = self.places[-1]
        self.places += [here + way * speed_m_s * second for second in range(1, seconds + 1)]
        return self

    def halt(self, seconds: int) -> HandWalk:
        begun = self.now_s
        self.places += [self.places[-1]] * seconds
        self.halts.append((begun, self.now_s))
        return self

    def clean(self, every_s: int = 1, noise=None, *, timed: bool = True, gaps=()) -> CleanTrack:
        """The fixes of every so many seconds, the last one always."""
        place = np.array(self.places) + ORIGIN
        if noise is not None:
            place = place + noise(len(place))
        chosen = np.unique(np.append(np.arange(0, len(place), every_s), len(place) - 1))
        time_s = BEGIN + chosen.astype(np.float64)
        return clean_of(time_s, place[chosen], timed=timed, every_s=float(every_s), gaps=gaps)

    def portion(self, leg: int = 0, start="start", claim="claim", search_end=None) -> LegMatch:
        return LegMatch(
            leg=leg,
            status="walked",
            start_s=self.marks[start],
            claim_s=self.marks[claim],
            search_end_s=self.marks[search_end or claim],
            confidence=0.99,
        )


def clean_of(time_s, place, *, timed=True, every_s=None, gaps=()) -> CleanTrack:
    """Put fixes on grid coordinates into a cleaned track."""
    nothing = np.full(len(time_s), np.nan)
    if every_s is None:
        every_s = float(np.median(np.diff(time_s)))
    return CleanTrack(
        time_s=np.asarray(time_s, dtype=np.float64),
        east_m=np.asarray(place)[:, 0].copy(),
        north_m=np.asarray(place)[:, 1].copy(),
        elevation_m=nothing,
        hdop=nothing.copy(),
        fix=np.arange(len(time_s)),
        timed=timed,
        gaps=tuple(Gap(before=b, start_s=time_s[b], end_s=time_s[b + 1]) for b in gaps),
        cleaning=(),
        median_interval_s=every_s if timed else None,
    )


def receiver(seed: int, sd_m: float, memory_s: float = 30.0):
    """First-order Gauss-Markov noise at 1 Hz for both axes, as a function of the length."""
    from scipy.signal import lfilter

    rng = np.random.default_rng(seed)
    kept = np.exp(-1.0 / memory_s)

    def noise(seconds: int) -> np.ndarray:
        shocks = rng.normal(0.0, sd_m * np.sqrt(1.0 - kept**2), (seconds, 2))
        shocks[0] = rng.normal(0.0, sd_m, 2)
        return lfilter([1.0], [1.0, -kept], shocks, axis=0)

    return noise


def match_of(card: LegCard, portions, halts=(), noise_m: float = 3.0) -> Match:
    """A match as a perfect matcher would give it; legs without a portion were skipped."""
    of_leg = {portion.leg: portion for portion in portions}
    legs = (of_leg.get(n, LegMatch(leg=n, status="skipped")) for n in range(len(card.legs)))
    return match_with(*legs, halts=halts, noise_m=noise_m)


def match_with(*legs: LegMatch, halts=(), noise_m: float = 3.0) -> Match:
    """A match of a walker without habits, in which the legs are as given."""
    return Match(
        legs=legs,
        noise_m=noise_m,
        halts=np.array(halts, dtype=np.float64).reshape(-1, 2),
        bias_deg=0.0,
        pace_scale=1.0,
        cost=0.0,
    )


def measure(
    card: LegCard, clean: CleanTrack, portions, halts=(), noise_m=3.0, paces=None, **known
) -> WalkMeasures:
    """Measure a walk whose portions are given by hand."""
    laid_out = lay_out(clean, card, SETTINGS.matching)
    match = match_of(card, portions, halts, noise_m)
    log = WalkersLog(
        entries=tuple(LogEntry(leg=leg, paces=count) for leg, count in (paces or {}).items())
    )
    return measure_walk(clean, laid_out, match, card, SETTINGS, **({"log": log} | known))


def kinds(measures: WalkMeasures) -> list[tuple[str, int | None]]:
    """The spans in order, without their lengths."""
    return [(span.kind, span.leg) for span in measures.spans]
