"""The walker's pace count: what the strips say, what the cadence says, and how well."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.errors import InputRefusedError, Problem
from audit.leg_card.pace_kind import PaceKind, pace_unit
from audit.measurement.leg_details import Ground, GroundWalked
from audit.measurement.paces_of_walk import GROUNDS, PaceRate, rates_by_ground
from audit.pacing.cadence_rates import CadenceRates, cadence_rates
from audit.pacing.ground_of_steps import ground_of_steps
from audit.pacing.recorded_walk import RecordedWalk, recorded_walk
from audit.pacing.strip_length import StripLength, strip_length
from audit.settings import PacingSettings, Settings
from audit.track import Track


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """One recording: its length, what was counted on it, what its cadence says.

    ``counted`` is None where nothing was counted, or only all strips together.
    """

    source: str
    length: StripLength
    noise_m: float
    noise_from: str
    counted: float | None
    cadence: CadenceRates | None
    silent_m: float
    ridden_m: float
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceCount:
    """A walker's pace count.

    Attributes
    ----------
    pace : "single" or "double"
    counted : PaceRate or None
        From paces that were counted.
    counted_on : dict
        By kind of ground, as far as the strips tell them apart.
    by_cadence, by_cadence_on
        From the cadence of the recordings.
    """

    pace: PaceKind
    strips: tuple[Strip, ...]
    counted: PaceRate | None
    counted_on: dict[Ground, PaceRate]
    by_cadence: PaceRate | None
    by_cadence_on: dict[Ground, PaceRate]

    @property
    def best(self) -> PaceRate | None:
        """The count to go by: the counted one before that of a device."""
        return self.counted or self.by_cadence


def pace_count(
    tracks: Sequence[Track],
    *,
    each: Sequence[float] | None = None,
    together: float | None = None,
    strip_m: float | None = None,
    pace: PaceKind | None = None,
    settings: Settings | None = None,
) -> PaceCount:
    """Give the pace count that recordings of walked strips bear.

    Parameters
    ----------
    each : sequence of float or None
        Paces counted on each recording, in its order.
    together : float or None
        Paces counted on all recordings together.
    strip_m : float or None
        Length of each strip, where somebody measured it.
    pace : "single", "double" or None
        Which pace is counted; None: as the count itself shows, else double.

    Raises
    ------
    InputRefusedError
        Where a recording shows nobody walking, or a count that nobody has.
    """
    settings = settings or Settings()
    walks = [recorded_walk(track, settings) for track in tracks]
    lengths = [strip_length(walk, strip_m, settings) for walk in walks]
    counts = list(each) if each is not None else None
    counted = _counted(lengths, counts, together, settings)
    _check_strips(walks, lengths, counts, counted, settings)
    kind = pace or pace_unit(None if counted is None else counted.per_100m, settings.paces)
    cadences = [
        cadence_rates(track, walk, kind, settings)
        for track, walk in zip(tracks, walks, strict=True)
    ]
    strips = tuple(
        Strip(
            source=walk.source,
            length=length,
            noise_m=walk.noise.noise_m,
            noise_from=walk.noise.source,
            counted=None if counts is None else counts[number],
            cadence=cadences[number],
            silent_m=walk.silent_m,
            ridden_m=walk.ridden_m,
            notes=track.notes,
        )
        for number, (track, walk, length) in enumerate(zip(tracks, walks, lengths, strict=True))
    )
    known = [one for one in cadences if one is not None]
    return PaceCount(
        pace=kind,
        strips=strips,
        counted=counted,
        counted_on=_counted_on(walks, lengths, counts, settings),
        by_cadence=_pooled([one.whole for one in known], settings),
        by_cadence_on={
            name: rate
            for name in GROUNDS
            if (rate := _pooled([one.on[name] for one in known if name in one.on], settings))
        },
    )


def _check_strips(
    walks: Sequence[RecordedWalk],
    lengths: Sequence[StripLength],
    counts: Sequence[float] | None,
    counted: PaceRate | None,
    settings: Settings,
) -> None:
    """Refuse recordings without a walk, and counts beyond what a plan takes."""
    low, high = settings.reading.paces_per_100m_low, settings.reading.paces_per_100m_high
    problems = []
    for number, (walk, length) in enumerate(zip(walks, lengths, strict=True)):
        rule = remedy = ""
        rate = None if counted is None else counted.per_100m
        if counts is not None:
            rate = 100.0 * counts[number] / max(length.metres, 1e-9)
        if walk.walked_m < settings.pacing.shortest_strip_m:
            rule = f"shows nobody walking as far as {settings.pacing.shortest_strip_m:g} m"
            remedy = "Record a strip as you walk it, 600 m or more."
        elif rate is not None and not low <= rate <= high:
            rule = (
                f"is {length.metres:.0f} m long, and the count makes "
                f"{_told(rate, low, high)} paces to 100 m of it; "
                f"pace counts run from {low:g} to {high:g}"
            )
            remedy = "Record the strip alone, and give the paces that were counted on it."
        if rule:
            file = walk.source or "track"
            problems.append(Problem(file=file, place="", value="", rule=rule, remedy=remedy))
    if problems:
        raise InputRefusedError(problems)


def _counted(
    lengths: Sequence[StripLength],
    counts: Sequence[float] | None,
    together: float | None,
    settings: Settings,
) -> PaceRate | None:
    """Give all counted paces over all metres, and how far the ratio may be off.

    Each strip has the error of its length, half a pace at its ends, and the walker's own
    scatter from walk to walk: a usual one, put right by what several strips show.
    """
    metres = float(sum(one.metres for one in lengths))
    total = together if counts is None else float(sum(counts))
    if total is None or metres <= 0.0:
        return None
    rate, pacing = total / metres, settings.pacing
    usual = settings.paces.count_sd
    squares = [(usual * rate * one.metres) ** 2 for one in lengths]
    if counts is not None and len(lengths) > 1:
        squares = _seen_scatter(lengths, counts, rate, usual, pacing)
    by_length = [(rate * one.sd_m) ** 2 for one in lengths]
    by_ends = len(lengths) * pacing.count_end_sd**2
    sd = math.sqrt(sum(squares) + sum(by_length) + by_ends) / metres
    return PaceRate(per_100m=100.0 * rate, sd=100.0 * sd, metres=metres)


def _seen_scatter(
    lengths: Sequence[StripLength],
    counts: Sequence[float],
    rate: float,
    usual: float,
    pacing: PacingSettings,
) -> list[float]:
    """Give each strip's variance of counting, the usual share mended by how the strips differ."""
    shares = []
    for one, count in zip(lengths, counts, strict=True):
        expected = rate * one.metres
        noise = ((rate * one.sd_m) ** 2 + pacing.count_end_sd**2) / expected**2
        shares.append(((count - expected) / expected) ** 2 - noise)
    excess = max(sum(shares), 0.0)
    # The usual scatter weighs as much as one strip; k strips have k - 1 differences.
    variance = (usual**2 + excess) / len(lengths)
    return [variance * (rate * one.metres) ** 2 for one in lengths]


def _counted_on(
    walks: Sequence[RecordedWalk],
    lengths: Sequence[StripLength],
    counts: Sequence[float] | None,
    settings: Settings,
) -> dict[Ground, PaceRate]:
    """Give the counts by kind of ground, where several strips tell them apart."""
    if counts is None:
        return {}
    legs = []
    for walk, length, count in zip(walks, lengths, counts, strict=True):
        kinds, why = ground_of_steps(walk, settings)
        if why:
            continue
        by_kind = {
            name: float(walk.step_m[walk.on_foot & (kinds == name)].sum()) for name in GROUNDS
        }
        scale = length.metres / max(sum(by_kind.values()), 1e-9)
        ground = GroundWalked(
            trusted=True,
            why_not="",
            along_m=np.empty(0),
            elevation_m=np.empty(0),
            uphill_m=scale * by_kind["uphill"],
            level_m=scale * by_kind["level"],
            downhill_m=scale * by_kind["downhill"],
        )
        legs.append((count, ground, length.metres))
    if not legs:
        return {}
    told = rates_by_ground(legs, settings.paces)
    most = settings.pacing.most_shown_sd
    return {name: rate for name, rate in told.items() if rate.sd <= most * rate.per_100m}


def _pooled(rates: Sequence[PaceRate], settings: Settings) -> PaceRate | None:
    """Give one rate of several recordings, each by its metres."""
    metres = sum(rate.metres for rate in rates)
    if metres <= 0.0:
        return None
    share = [rate.metres / metres for rate in rates]
    path = settings.measuring.path_sd
    per_100m = sum(part * rate.per_100m for part, rate in zip(share, rates, strict=True))
    own = [
        part**2 * max(rate.sd**2 - (path * rate.per_100m) ** 2, 0.0)
        for part, rate in zip(share, rates, strict=True)
    ]
    # What smoothing gets wrong, it gets wrong alike on every recording.
    sd = math.hypot(math.sqrt(sum(own)), path * per_100m)
    return PaceRate(per_100m=per_100m, sd=sd, metres=metres)


def _told(rate: float, low: float, high: float) -> str:
    """Write a count that is beyond the limits so that it shows: 250.4 beside 250."""
    texts = (f"{rate:.{digits}g}" for digits in range(3, 9))
    return next((text for text in texts if not low <= float(text) <= high), f"{rate:g}")
