"""What is said of a walker's attempts: every figure with its error, and no trend that is none."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from audit.guide.cause_names import JUDGEMENTS
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.school_records.attempt import Light
from audit.school_records.estimates import Estimate, Spread
from audit.school_records.trend import AttemptShown, OverAttempts, Trend, TrendOfLight

LIGHT_WORDS: dict[Light, str] = {
    "day": "By day",
    "twilight": "In twilight",
    "night": "By night",
    "unknown": "Light not known",
}
_LEAST_TOLD = 0.05
"""Of a leg; causes expected on less are not listed for people."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureRow:
    """One figure over all attempts: what it is, with its interval, and how it changes."""

    name: str
    value: str
    interval: str
    change: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AttemptRow:
    """One attempt in a table."""

    number: str
    day: str
    course: str
    legs: str
    heading: str
    scatter: str
    distance: str
    paces: str
    causes: str


Wording = Callable[[float, float], str]


def figure_rows(trend: Trend, light: TrendOfLight) -> list[FigureRow]:
    """Give the figures of one light, one row each."""
    rows = [
        _row(trend, "heading bias", light.heading, _turn, "{} an attempt"),
        _row(trend, "heading scatter", light.heading_scatter, _size, "by {} an attempt"),
        _row(trend, "distance", light.distance, _share, "{} an attempt"),
        _row(trend, "distance scatter", light.distance_scatter, _percent, "by {} an attempt"),
        _row(trend, "pace count", light.paces, _paces, "{} an attempt"),
    ]
    return [row for row in rows if row is not None]


def attempt_rows(light: TrendOfLight) -> list[AttemptRow]:
    """Give the attempts of one light, one row each, in order of time."""
    return [
        AttemptRow(
            number=str(one.number),
            day="-" if one.walked_on is None else one.walked_on.isoformat(),
            course=one.course,
            legs=str(one.legs),
            heading=_with_error(one.heading_deg, _turn),
            scatter=_spread_words(one.heading_scatter_deg, _size),
            distance=_with_error(one.distance, _share),
            paces=_paces_of(one),
            causes=_cause_list(one),
        )
        for one in light.attempts
    ]


def cause_rows(light: TrendOfLight) -> list[tuple[str, str, str]]:
    """Give (cause, legs to be expected with it, of all legs)."""
    return [
        (
            cause_words(one.cause),
            f"{one.legs:.1f} ± {one.error:.1f}",
            digits.percent(one.legs / light.legs),
        )
        for one in light.causes
        if one.legs >= _LEAST_TOLD
    ]


def meaning(trend: Trend) -> list[str]:
    """Say what the figures mean, and when something is called a change."""
    coverage, alarm = digits.percent(trend.coverage), digits.percent(trend.false_alarm)
    means = (
        "Bias is the mean over attempts, scatter the standard deviation from leg to leg within an "
        f"attempt. In brackets: {coverage} intervals, which count how attempts differ; ± is one "
        "standard error."
    )
    asked = (
        f"A change is claimed only where chance would show one so large in fewer than {alarm} of "
        f"walkers who do not change, all {trend.questions} figures asked here together, and never "
        f"with fewer than {trend.least_attempts} attempts."
    )
    legs = (
        "Legs with a mistake named, or not surely matched, say nothing of bias and scatter and "
        "are left out of these. The causes count all walked legs, each by its probability."
    )
    return [means, *([asked] if trend.questions else []), legs]


def counted(number: int, what: str) -> str:
    """Write a count of things: 1 attempt, 2 attempts."""
    return f"{number} {what}{'' if number == 1 else 's'}"


def left_out_words(light: TrendOfLight) -> str:
    """Say which legs the figures do not rest on; "" where none is left out."""
    told = ", ".join(f"{number} for {reason}" for reason, number in light.left_out)
    return f"Legs left out: {told}." if told else ""


def _row(
    trend: Trend, name: str, figure: OverAttempts, wording: Wording, step: str
) -> FigureRow | None:
    of = figure.mean or figure.spread
    if of is None:
        return None
    error = _error_of(of)
    value = wording(of.value, error)
    if figure.mean is not None:
        value += f" ± {_plain_error(figure.mean, wording)}"
    return FigureRow(
        name=name,
        value=value,
        interval=f"{wording(of.low, error)} to {wording(of.high, error)}",
        change=_change(trend, figure, wording if figure.mean else _share_of_growth, step),
    )


def _change(trend: Trend, figure: OverAttempts, wording: Wording, step: str) -> str:
    change = figure.change
    if change is None:
        return f"too few attempts to speak of change (from {trend.least_attempts} on)"
    moved = step.format(wording(change.step.value, change.step.error))
    low, high = (wording(one, change.step.error) for one in (change.step.low, change.step.high))
    if change.carried:
        return f"changes: {moved} ({low} to {high}) over {change.attempts} attempts"
    return f"no change that the numbers carry ({low} to {high} an attempt)"


def _error_of(one: Estimate | Spread) -> float:
    return one.error if isinstance(one, Estimate) else (one.high - one.low) / 4.0


def _plain_error(estimate: Estimate, wording: Wording) -> str:
    return wording(estimate.error, estimate.error).split(" ")[0].lstrip("+")


def _with_error(estimate: Estimate | None, wording: Wording) -> str:
    if estimate is None:
        return "-"
    return f"{wording(estimate.value, estimate.error)} ± {_plain_error(estimate, wording)}"


def _spread_words(spread: Spread | None, wording: Wording) -> str:
    if spread is None:
        return "-"
    error = _error_of(spread)
    low, high = wording(spread.low, error), wording(spread.high, error)
    return f"{wording(spread.value, error)} ({low} to {high})"


def _paces_of(one: AttemptShown) -> str:
    if one.paces_per_100m is None:
        return "-"
    error = f" ± {one.paces_sd:.1f}" if one.paces_sd is not None else ""
    return f"{one.paces_per_100m:.1f}{error}"


def _cause_list(one: AttemptShown) -> str:
    """List the mistakes that are more likely than not to have been made on a leg."""
    told = [
        f"{cause_words(cause)} ({legs:.1f})"
        for cause, legs in one.causes
        if legs >= 0.5 and cause not in JUDGEMENTS
    ]
    return ", ".join(told) or "-"


def _turn(degrees: float, _: float) -> str:
    size = f"{abs(degrees):.1f}"
    side = "" if float(size) == 0.0 else " right" if degrees > 0.0 else " left"
    return f"{size}°{side}"


def _size(degrees: float, _: float) -> str:
    return f"{degrees:.1f}°"


def _share(share: float, error: float) -> str:
    percent = f"{abs(100.0 * share):.{1 if error < 0.05 else 0}f}"
    way = "" if float(percent) == 0.0 else " too far" if share > 0.0 else " short"
    return f"{percent} %{way}"


def _percent(share: float, _: float) -> str:
    return f"{100.0 * share:.1f} %"


def _share_of_growth(share: float, _: float) -> str:
    return f"{100.0 * share:+.0f} %"


def _paces(paces: float, _: float) -> str:
    return f"{paces:.1f}"
