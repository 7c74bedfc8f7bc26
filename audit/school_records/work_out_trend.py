"""From a walker's attempts to what they show over time, and no more than they show."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.school_records.attempt import LIGHTS, Attempt, LegOfAttempt, Light
from audit.school_records.estimates import (
    Estimate,
    Spread,
    change_of,
    ends_of,
    log_spread,
    mean_of,
    spread_of,
)
from audit.school_records.legs_that_count import once_each, why_not_distance, why_not_heading
from audit.school_records.trend import (
    AttemptShown,
    CauseCount,
    Change,
    OverAttempts,
    Trend,
    TrendOfLight,
)
from audit.settings import RecordsSettings, Settings
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    """The legs of one attempt in one light, with those that say something, as (value, error)."""

    number: int
    attempt: Attempt
    legs: list[LegOfAttempt]
    headings: list[tuple[float, float]]
    distances: list[tuple[float, float]]
    has_paces: bool


def work_out_trend(
    walker: str, attempts: Sequence[Attempt], settings: Settings | None = None
) -> Trend:
    """Give what the attempts of one walker show, day and night apart."""
    settings = settings or Settings()
    chosen = settings.records
    walks = once_each(attempts, chosen)
    unit = walks[-1].pace_unit if walks else "double"
    lights = [_of_light(light, _parts(light, walks, settings), unit, settings) for light in LIGHTS]
    told = [one for one in lights if one.attempts]
    questions = sum(figure.change is not None for one in told for figure in one.figures)
    return Trend(
        walker=walker,
        pace_unit=unit,
        lights=tuple(_judged(one, questions, chosen) for one in told),
        attempts=len(walks),
        questions=questions,
        coverage=chosen.coverage,
        false_alarm=chosen.false_alarm,
        least_attempts=chosen.least_attempts,
        notes=_notes(attempts, walks, unit),
    )


def _notes(attempts: Sequence[Attempt], walks: Sequence[Attempt], unit: str) -> tuple[str, ...]:
    notes = []
    if again := len(attempts) - len(walks):
        notes.append(sentence("trend-again", count=again))
    if other := sum(one.paces_per_100m is not None and one.pace_unit != unit for one in walks):
        notes.append(sentence("trend-other-paces", count=other, unit=unit))
    if made := sum(one.simulated for one in walks):
        notes.append(sentence("trend-simulated", made=made, all=len(walks)))
    return tuple(notes)


def _parts(light: Light, walks: Sequence[Attempt], settings: Settings) -> list[_Part]:
    parts = []
    for number, attempt in enumerate(walks, start=1):
        legs = [leg for leg in attempt.legs if leg.status == "walked" and leg.light == light]
        # The count is of the whole walk, and goes with the light of most of it.
        has_paces = attempt.light == light and attempt.paces_per_100m is not None
        if not legs and not has_paces:
            continue
        parts.append(
            _Part(
                number=number,
                attempt=attempt,
                legs=legs,
                headings=[
                    (leg.heading_error_deg or 0.0, leg.heading_sd_deg or 0.0)
                    for leg in legs
                    if not why_not_heading(leg, settings)
                ],
                distances=[
                    (math.log(ratio), (leg.ratio_sd or 0.0) / ratio)
                    for leg in legs
                    if not why_not_distance(leg, settings) and (ratio := leg.distance_ratio)
                ],
                has_paces=has_paces,
            )
        )
    return parts


def _of_light(light: Light, parts: list[_Part], unit: str, known: Settings) -> TrendOfLight:
    settings = known.records
    turn = _pooled([p.headings for p in parts], settings.heading_scatter_deg, settings)
    ratio = _pooled([p.distances for p in parts], settings.distance_scatter, settings)
    shown = tuple(_shown(part, turn, ratio, unit, settings) for part in parts)
    legs = [leg for part in parts for leg in part.legs]
    return TrendOfLight(
        light=light,
        attempts=shown,
        legs=len(legs),
        heading=_over(shown, lambda one: _pair(one.heading_deg), settings),
        heading_scatter=_scatter_over(
            shown, lambda one: one.heading_scatter_deg, turn.together, settings
        ),
        distance=_over(shown, lambda one: _pair(one.distance), settings),
        distance_scatter=_scatter_over(
            shown, lambda one: one.distance_scatter, ratio.together, settings
        ),
        paces=_over(shown, _paces, settings),
        causes=_causes(legs),
        left_out=_left_out(legs, known),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Scatter:
    """Scatter of one walker: the variance to reckon with, and what the legs alone show."""

    variance: float
    freedom: float
    together: Spread | None


def _pooled(
    attempts: list[list[tuple[float, float]]], usual: float, settings: RecordsSettings
) -> _Scatter:
    """Pool the scatter about the mean of each attempt; few legs are helped by what is usual."""
    squares, freedom = _squares(attempts)
    measuring = _measuring([leg for legs in attempts for leg in legs])
    prior = settings.prior_legs
    return _Scatter(
        variance=(squares + prior * usual**2) / (freedom + prior),
        freedom=freedom + prior,
        together=spread_of(squares, freedom, measuring, settings.coverage) if freedom else None,
    )


def _squares(attempts: list[list[tuple[float, float]]]) -> tuple[float, int]:
    squares, freedom = 0.0, 0
    for legs in attempts:
        values = np.array([value for value, _ in legs])
        if len(values) > 1:
            squares += float(((values - values.mean()) ** 2).sum())
            freedom += len(values) - 1
    return squares, freedom


def _measuring(legs: list[tuple[float, float]]) -> float:
    return float(np.mean([error**2 for _, error in legs])) if legs else 0.0


def _shown(
    part: _Part, turn: _Scatter, ratio: _Scatter, unit: str, settings: RecordsSettings
) -> AttemptShown:
    attempt = part.attempt
    distance = _mean_of_legs(part.distances, ratio, settings)
    per_100m, per_sd = attempt.paces_per_100m, attempt.paces_sd
    scale = 1.0 if attempt.pace_unit == unit else 2.0 if unit == "single" else 0.5
    counted = part.has_paces and per_100m is not None
    return AttemptShown(
        number=part.number,
        walked_on=attempt.walked_on,
        course=attempt.course,
        verdict=attempt.verdict,
        legs=len(part.legs),
        heading_legs=len(part.headings),
        distance_legs=len(part.distances),
        heading_deg=_mean_of_legs(part.headings, turn, settings),
        heading_scatter_deg=_scatter(part.headings, settings),
        distance=None if distance is None else _as_share(distance),
        distance_scatter=_scatter(part.distances, settings),
        paces_per_100m=scale * per_100m if counted and per_100m is not None else None,
        paces_sd=scale * per_sd if counted and per_sd is not None else None,
        causes=tuple((one.cause, one.legs) for one in _causes(part.legs)),
    )


def _mean_of_legs(
    legs: list[tuple[float, float]], scatter: _Scatter, settings: RecordsSettings
) -> Estimate | None:
    """Give the mean of the legs of one attempt; the scatter as seen holds the measuring too."""
    from scipy.stats import t as student  # noqa: PLC0415 (slow to import)

    if not legs:
        return None
    value = float(np.mean([one for one, _ in legs]))
    error = math.sqrt(scatter.variance / len(legs))
    half = float(student.ppf(0.5 + settings.coverage / 2.0, scatter.freedom)) * error
    chance = 2.0 * float(student.sf(abs(value) / error, scatter.freedom))
    return Estimate(value=value, error=error, low=value - half, high=value + half, chance=chance)


def _as_share(of_log: Estimate) -> Estimate:
    """Turn a mean logarithm of walked over planned into a share: 0.02 is two in a hundred more."""
    low, value, high = (math.expm1(one) for one in (of_log.low, of_log.value, of_log.high))
    return replace(of_log, value=value, error=of_log.error * (1.0 + value), low=low, high=high)


def _scatter(legs: list[tuple[float, float]], settings: RecordsSettings) -> Spread | None:
    squares, freedom = _squares([legs])
    if not squares:
        return None
    return spread_of(squares, freedom, _measuring(legs), settings.coverage)


def _pair(estimate: Estimate | None) -> tuple[float, float] | None:
    return None if estimate is None else (estimate.value, estimate.error)


def _paces(one: AttemptShown) -> tuple[float, float] | None:
    if one.paces_per_100m is None or not one.paces_sd:
        return None
    return one.paces_per_100m, one.paces_sd


def _over(
    shown: Sequence[AttemptShown],
    figure: Callable[[AttemptShown], tuple[float, float] | None],
    settings: RecordsSettings,
) -> OverAttempts:
    told = [(one.number, pair) for one in shown if (pair := figure(one)) is not None]
    if len(told) < 2:
        return OverAttempts()
    places = np.array([float(number) for number, _ in told])
    values, errors = np.array([pair for _, pair in told]).T
    mean = mean_of(values, errors, settings.coverage)
    same_side = int((values * mean.value > 0.0).sum())
    over = OverAttempts(mean=mean, same_side=same_side, told=len(told))
    if len(told) < settings.least_attempts:
        return over
    step = change_of(places, values, errors, settings.coverage)
    first, last = ends_of(places, values, errors)
    change = Change(step=step, attempts=len(told), carried=False, first=first, last=last)
    return replace(over, change=change)


def _scatter_over(
    shown: Sequence[AttemptShown],
    figure: Callable[[AttemptShown], Spread | None],
    together: Spread | None,
    settings: RecordsSettings,
) -> OverAttempts:
    """Give how a scatter changes, by its logarithm; what it is, all attempts tell together."""
    logs = _over(
        shown, lambda one: None if (of := figure(one)) is None else log_spread(of), settings
    )
    change = logs.change and replace(
        logs.change, step=_as_share(logs.change.step), first=None, last=None
    )
    return OverAttempts(spread=together, change=change)


def _judged(one: TrendOfLight, questions: int, settings: RecordsSettings) -> TrendOfLight:
    """Call a change carried where chance makes one so large rarely enough, of all questions."""

    def judged(figure: OverAttempts) -> OverAttempts:
        if figure.change is None:
            return figure
        carried = figure.change.step.chance * questions < settings.false_alarm
        return replace(figure, change=replace(figure.change, carried=carried))

    return replace(
        one,
        heading=judged(one.heading),
        heading_scatter=judged(one.heading_scatter),
        distance=judged(one.distance),
        distance_scatter=judged(one.distance_scatter),
        paces=judged(one.paces),
    )


def _causes(legs: Sequence[LegOfAttempt]) -> tuple[CauseCount, ...]:
    expected: Counter[str] = Counter()
    variance: Counter[str] = Counter()
    for leg in legs:
        for cause, chance in leg.causes:
            expected[cause] += chance  # type: ignore[assignment]
            variance[cause] += chance * (1.0 - chance)  # type: ignore[assignment]
    told = [
        CauseCount(cause=cause, legs=float(count), error=math.sqrt(max(0.0, variance[cause])))
        for cause, count in expected.items()
    ]
    return tuple(sorted(told, key=lambda one: (-one.legs, one.cause)))


def _left_out(legs: Sequence[LegOfAttempt], settings: Settings) -> tuple[tuple[str, int], ...]:
    reasons = [
        sentence(f"trend-of-{what}", why=why)
        for leg in legs
        for what, why in (
            ("heading", why_not_heading(leg, settings)),
            ("distance", why_not_distance(leg, settings)),
        )
        if why
    ]
    return tuple(sorted(Counter(reasons).items()))
