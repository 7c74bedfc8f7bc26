"""The forecast of a course: a table for people, a document for programs."""

from __future__ import annotations

import json
import math
from collections.abc import Sequence

from audit.debriefing.course_entry import course_entry
from audit.debriefing.forecast_of_leg import ellipse_entry
from audit.forecast.course_forecast import CourseForecast
from audit.forecast.leg_forecast import Ellipse, LegForecast
from audit.forecast.walker_scatter import WalkerScatter
from audit.leg_card import CardLeg
from audit.leg_card.leg_pieces import walked_m
from audit.reports import digits
from audit.reports.printable import printable
from audit.reports.wrapped import wrapped
from audit.words import in_force, say
from audit.words.figures import Length, Percent, Turn

FORECAST_FORMAT = 1
"""Number of the shape of the document of a forecast."""

_HEADS = ("leg", "", "length", "along", "across", "near", "far", "sight", "offset")


def render_forecast(forecast: CourseForecast, first: Sequence[str] = ()) -> str:
    """Give plain text that ends with a line feed: what was taken, then one line a leg.

    ``first`` are sentences on the plan, before all else.
    """
    rows = [
        _heads(),
        *(_row(*pair) for pair in zip(forecast.card.legs, forecast.legs, strict=True)),
    ]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEADS))]
    lines = [*first, forecast.card.name, *wrapped(_taken(forecast)), ""]
    for row in rows:
        words = [
            word.ljust(width) if place < 2 else word.rjust(width)
            for place, (word, width) in enumerate(zip(row, widths, strict=True))
        ]
        lines.append("  ".join(words).rstrip())
    lines += ["", *wrapped(_meaning(forecast)), *_aimed_off(forecast)]
    return "\n".join(printable(line) for line in lines) + "\n"


def render_forecast_json(forecast: CourseForecast) -> str:
    """Give the document of a forecast; nothing rounded."""
    document = {
        "format": FORECAST_FORMAT,
        "course": course_entry(forecast.card),
        "walker": _walker_entry(forecast.scatter),
        "sight_m": forecast.sight_m,
        "chance_of_all": forecast.chance_of_all,
        "legs": [
            {
                "name": leg.name,
                "from": leg.start.name,
                "to": leg.end.name,
                **leg_forecast_entry(one),
            }
            for leg, one in zip(forecast.card.legs, forecast.legs, strict=True)
        ],
    }
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def leg_forecast_entry(leg: LegForecast) -> dict[str, object]:
    """Give the forecast of one leg for a document."""
    off = leg.aimed_off
    return {
        "toward_deg": leg.toward_deg,
        "along_m": leg.along_m,
        "across_m": leg.across_m,
        "along_sd_m": leg.along_sd_m,
        "across_sd_m": leg.across_sd_m,
        "ellipse_50": ellipse_entry(leg.near),
        "ellipse_95": ellipse_entry(leg.far),
        "chance_in_sight": leg.chance_in_sight,
        "sure_offset_m": leg.sure_offset_m,
        "aimed_off": off
        and {
            "offset_m": off.offset_m,
            "offset_deg": off.offset_deg,
            "chance_in_sight": off.chance_in_sight,
            "chance_of_side": off.chance_of_side,
        },
    }


def _walker_entry(scatter: WalkerScatter) -> dict[str, object]:
    return {
        "turn_deg": scatter.turn_deg,
        "turn_sd_deg": scatter.turn_sd_deg,
        "distance_ratio": math.exp(scatter.log_ratio),
        "distance_sd": scatter.log_ratio_sd,
        "click_deg": scatter.click_deg,
        "source": scatter.source,
    }


def _heads() -> tuple[str, ...]:
    unit = in_force().units.length
    return tuple(say(f"forecast-head-{name}", unit=unit) if name else "" for name in _HEADS)


def _taken(forecast: CourseForecast) -> list[str]:
    scatter = forecast.scatter
    words = [
        say(
            "forecast-taken",
            source=scatter.source,
            turn=Turn(degrees=scatter.turn_sd_deg),
            side=_side(scatter.turn_deg) if scatter.turn_deg else "none",
            mean=Turn(degrees=scatter.turn_deg),
            far=_far(scatter.log_ratio),
            size=Percent(share=abs(math.expm1(scatter.log_ratio)), decimals=1),
            ratio=Percent(share=scatter.log_ratio_sd, decimals=1),
        )
    ]
    if scatter.click_deg:
        click = in_force().decimal(f"{scatter.click_deg:g}")
        words.append(say("forecast-clicks", click=click))
    return words


def _far(log_ratio: float) -> str:
    """Say which way distances are out on average, where that shows at the place that is told."""
    if abs(math.expm1(log_ratio)) < 0.0005:
        return "none"
    return "far" if log_ratio > 0 else "short"


def _side(signed: float) -> str:
    return "right" if signed > 0 else "left"


def _row(card: CardLeg, leg: LegForecast) -> tuple[str, ...]:
    return (
        leg.leg,
        say("figure-range", low=card.start.name, high=card.end.name),
        Length(metres=walked_m(card), bare=True).shown(in_force()),
        _middle_and_sd(leg.along_m, leg.along_sd_m),
        _middle_and_sd(leg.across_m, leg.across_sd_m),
        _axes(leg.near),
        _axes(leg.far),
        digits.percent(leg.chance_in_sight),
        digits.stated_metres(leg.sure_offset_m),
    )


def _middle_and_sd(middle_m: float, sd_m: float) -> str:
    units = in_force().units
    middle = f"{round(units.length_from(middle_m)) or 0:+d}"
    return say("forecast-middle", middle=middle, error=digits.stated_metres(sd_m))


def _axes(ellipse: Ellipse) -> str:
    major = Length(metres=ellipse.major_m, bare=True)
    return say("forecast-axes", major=major, minor=digits.stated_metres(ellipse.minor_m))


def _meaning(forecast: CourseForecast) -> list[str]:
    sight = digits.stated_metres(forecast.sight_m)
    chance = digits.percent(forecast.chance_of_all)
    explained = [
        say("forecast-meaning-places"),
        say("forecast-meaning-within"),
        say("forecast-meaning-sight", sight=sight),
        say("forecast-meaning-offset"),
    ]
    return [*explained, say("forecast-all", count=len(forecast.legs), share=chance)]


def _aimed_off(forecast: CourseForecast) -> list[str]:
    told = [(leg.leg, leg.aimed_off) for leg in forecast.legs if leg.aimed_off is not None]
    if not told:
        return []
    offset_m = told[0][1].offset_m
    side = _side(offset_m)
    lines = ["", say("forecast-off", size=digits.stated_metres(abs(offset_m)), side=side)]
    lines += [
        say(
            "forecast-off-leg",
            leg=name,
            turn=Turn(degrees=off.offset_deg),
            side=side,
            chance=digits.percent(off.chance_of_side),
            sight=digits.percent(off.chance_in_sight),
        )
        for name, off in told
    ]
    return lines
