"""What is said of a walker's attempts: every figure with its error, and no trend that is none."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from audit.guide.cause_names import JUDGEMENTS
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.reports.wording import sided
from audit.school_records.estimates import Estimate, Spread
from audit.school_records.trend import AttemptShown, OverAttempts, Trend, TrendOfLight
from audit.words import in_force, say
from audit.words.figures import Number, Percent, Turn
from audit.words.in_other_units import METRES

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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moving:
    """How a figure moves: its step in words, and its sides below and above what is planned."""

    step: Wording
    sides: tuple[str, str] | None = None


def figure_rows(trend: Trend, light: TrendOfLight) -> list[FigureRow]:
    """Give the figures of one light, one row each."""
    rows = [
        _row(trend, "heading-bias", light.heading, _turn, _TURNING),
        _row(trend, "heading-scatter", light.heading_scatter, _size, _GROWING),
        _row(trend, "distance", light.distance, _share, _LENGTHENING),
        _row(trend, "distance-scatter", light.distance_scatter, _percent, _GROWING),
        _row(trend, "pace-count", light.paces, _paces, _COUNTING),
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
            heading=_of_legs(_with_error(one.heading_deg, _turn), one.heading_legs, one.legs),
            scatter=_spread_words(one.heading_scatter_deg, _size),
            distance=_of_legs(_with_error(one.distance, _share), one.distance_legs, one.legs),
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
            in_force().decimal(f"{one.legs:.1f} ± {one.error:.1f}"),
            digits.percent(one.legs / light.legs),
        )
        for one in light.causes
        if one.legs >= _LEAST_TOLD
    ]


def meaning(trend: Trend) -> list[str]:
    """Say what the figures mean, and when something is called a change."""
    coverage, alarm = digits.percent(trend.coverage), digits.percent(trend.false_alarm)
    means = say("trend-meaning", coverage=coverage)
    asked = say(
        "trend-meaning-change",
        alarm=alarm,
        questions=str(trend.questions),
        least=str(trend.least_attempts),
    )
    return [means, *([asked] if trend.questions else []), say("trend-meaning-legs")]


def _of_legs(figure: str, used: int, legs: int) -> str:
    """Say beside a figure on how many of the legs it rests, where it does not on all."""
    if used == legs:
        return figure
    return say("trend-of-legs", figure=figure, used=str(used), legs=str(legs))


def left_out_words(light: TrendOfLight) -> str:
    """Say which legs the figures do not rest on; "" where none is left out."""
    left_out = ", ".join(
        say("trend-left-out-one", count=str(number), reason=reason)
        for reason, number in light.left_out
    )
    return say("trend-left-out", told=left_out) if left_out else ""


def _row(
    trend: Trend, name: str, figure: OverAttempts, wording: Wording, moving: _Moving
) -> FigureRow | None:
    of = figure.mean or figure.spread
    if of is None:
        return None
    error = _error_of(of)
    value = wording(of.value, error)
    if figure.mean is not None:
        value += f" ± {_plain_error(figure.mean, wording)}"
        if moving.sides:
            side = say(f"trend-side-{moving.sides[of.value > 0.0]}")
            told = {"side": side, "same": str(figure.same_side), "told": str(figure.told)}
            value = say("trend-on-one-side", figure=value, **told)
    return FigureRow(
        name=say(f"trend-{name}"),
        value=value,
        interval=_range(of.low, of.high, error, wording),
        change=_change(trend, figure, wording, moving),
    )


def _change(trend: Trend, figure: OverAttempts, wording: Wording, moving: _Moving) -> str:
    change = figure.change
    if change is None:
        return say("trend-too-few", least=str(trend.least_attempts))
    error = change.step.error
    low, high = (moving.step(one, error) for one in (change.step.low, change.step.high))
    if not change.carried:
        return say("trend-no-change", low=low, high=high)
    attempts, moved = str(change.attempts), moving.step(change.step.value, error)
    if change.first is None or change.last is None:
        return say("trend-changes", moved=moved, low=low, high=high, attempts=attempts)
    toward = "none"
    if moving.sides:
        toward = "nearer" if abs(change.last) < abs(change.first) else "farther"
    ends = {"first": wording(change.first, error), "last": wording(change.last, error)}
    told = {"moved": moved, "low": low, "high": high, "attempts": attempts, "toward": toward}
    return say("trend-comes", **ends, **told)


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
    return f"{wording(spread.value, error)} ({_range(spread.low, spread.high, error, wording)})"


def _paces_of(one: AttemptShown) -> str:
    if one.paces_per_100m is None:
        return "-"
    error = f" ± {_paces(one.paces_sd, 0.0)}" if one.paces_sd is not None else ""
    return f"{_paces(one.paces_per_100m, 0.0)}{error}"


def _cause_list(one: AttemptShown) -> str:
    """List the mistakes that are more likely than not to have been made on a leg."""
    told = [
        in_force().decimal(f"{cause_words(cause)} ({legs:.1f})")
        for cause, legs in one.causes
        if legs >= 0.5 and cause not in JUDGEMENTS
    ]
    return ", ".join(told) or "-"


def _range(low: float, high: float, error: float, wording: Wording) -> str:
    return say("figure-range", low=wording(low, error), high=wording(high, error))


def _turn(degrees: float, _: float) -> str:
    if round(abs(degrees), 1) == 0.0:
        return _size(0.0, 0.0)
    return sided(_size(degrees, 0.0), degrees)


def _size(degrees: float, _: float) -> str:
    return Turn(degrees=degrees).shown(in_force())


def _share(share: float, error: float) -> str:
    percent = Percent(share=abs(share), decimals=1 if error < 0.05 else 0).shown(in_force())
    if not percent.strip("0., %"):
        return percent
    return say("figure-too-far" if share > 0.0 else "figure-short", size=percent)


def _percent(share: float, _: float) -> str:
    return Percent(share=share, decimals=1).shown(in_force())


def _share_of_growth(share: float, _: float) -> str:
    return f"{100.0 * share:+.0f} %"


def _paces(per_100m: float, _: float) -> str:
    unit_m = METRES[in_force().units.length]
    return Number(value=per_100m * unit_m, decimals=1).shown(in_force())


def _signed_share(share: float, _: float) -> str:
    return in_force().decimal(f"{100.0 * share:+.1f} %")


def _signed_paces(per_100m: float, _: float) -> str:
    unit_m = METRES[in_force().units.length]
    return in_force().decimal(f"{per_100m * unit_m:+.1f}")


_TURNING = _Moving(step=_turn, sides=("left", "right"))
_LENGTHENING = _Moving(step=_signed_share, sides=("short", "far"))
_COUNTING = _Moving(step=_signed_paces)
_GROWING = _Moving(step=_share_of_growth)
