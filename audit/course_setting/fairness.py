"""Which lane stands out from the others, and in what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from audit.course_setting.checked_lanes import LaneFigures, LaneFinding
from audit.settings import CourseSettingSettings
from audit.statistics.spread import robust_sd
from audit.words import sentence
from audit.words.figures import Figure, Length, Percent


@dataclass(frozen=True, slots=True, kw_only=True)
class _Compared:
    """One figure of all lanes, and from what difference on it is uneven."""

    kind: str
    name: str
    unit: str
    values: tuple[float, ...]
    share: float = 0.0
    least: float = 0.0
    rule: str = ""


def uneven_lanes(
    names: Sequence[str], figures: Sequence[LaneFigures], settings: CourseSettingSettings
) -> Iterator[LaneFinding]:
    """Give each figure in which a lane with legs stands out from the middle of the others.

    From five lanes on it must also lie beyond three robust standard deviations of them all,
    so that lanes which all differ a little are not all told. Of two lanes a difference is
    told of the one that has more.
    """
    with_legs = [(name, one) for name, one in zip(names, figures, strict=True) if one.times_s]
    names, figures = [name for name, _ in with_legs], [one for _, one in with_legs]
    if len(names) < 2:
        return
    for compared in _compared(figures, settings):
        for number, value in enumerate(compared.values):
            others = np.delete(np.array(compared.values), number)
            middle = float(np.median(others))
            off = value - middle
            if abs(off) <= max(compared.share * abs(middle), compared.least):
                continue
            if len(names) == 2 and off < 0.0:
                # Each is the other's measure: one difference, told once.
                continue
            if len(names) >= settings.robust_least_lanes and not _robustly(value, others, settings):
                continue
            yield LaneFinding(
                kind="uneven",
                lane=names[number],
                what=compared.name,
                message=_message(names[number], compared, value, middle),
            )


def _compared(
    figures: Sequence[LaneFigures], settings: CourseSettingSettings
) -> Iterator[_Compared]:
    share = settings.uneven_share
    rule = figures[0].times_s[0][0]
    yield _Compared(
        kind="length",
        name="length",
        unit="m",
        values=tuple(f.length_m for f in figures if f.length_m is not None),
        share=share,
    )
    yield _Compared(
        kind="legs",
        name="number of legs",
        unit="",
        values=tuple(float(f.legs) for f in figures if f.legs is not None),
        least=settings.uneven_least_legs,
    )
    climbs = tuple(f.climb_m for f in figures if f.climb_m is not None)
    if len(climbs) == len(figures):
        yield _Compared(
            kind="climb",
            name="climb",
            unit="m",
            values=climbs,
            share=settings.uneven_climb_share,
            least=settings.uneven_least_climb_m,
        )
        # On the level it says no more than the length.
        minutes = tuple(f.times_s[0][1] / 60.0 for f in figures)
        yield _Compared(
            kind="time", rule=rule, name=f"time ({rule})", unit="min", values=minutes, share=share
        )
    yield _Compared(
        kind="chance",
        name="mean chance to end in sight",
        unit="%",
        values=tuple(100.0 * f.mean_chance for f in figures if f.mean_chance is not None),
        least=100.0 * settings.uneven_chance,
    )


def _robustly(value: float, others: np.ndarray, settings: CourseSettingSettings) -> bool:
    middle = float(np.median(others))
    spread = robust_sd(others - middle)
    return abs(value - middle) > settings.robust_sds * spread


def _message(lane: str, compared: _Compared, value: float, middle: float) -> str:
    share, more = abs(value / middle - 1.0) if middle else 0.0, "none"
    if middle and compared.unit != "%":
        more = "more" if value > middle else "less"
    return sentence(
        "lanes-uneven",
        lane=lane,
        what=compared.kind,
        rule=compared.rule,
        others=len(compared.values) - 1,
        value=_figure(compared, value),
        middle=_figure(compared, middle),
        more=more,
        share=Percent(share=share),
    )


def _figure(compared: _Compared, value: float) -> Figure | str:
    if compared.kind == "length":
        return Length(metres=value)
    return f"{value:.0f} {compared.unit}".rstrip()
