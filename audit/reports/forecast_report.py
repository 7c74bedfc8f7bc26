"""The forecast of a course: a table for people, a document for programs."""

from __future__ import annotations

import json
import math

from audit.debriefing.course_entry import course_entry
from audit.forecast.course_forecast import CourseForecast
from audit.forecast.leg_forecast import Ellipse, LegForecast
from audit.forecast.walker_scatter import WalkerScatter
from audit.leg_card import CardLeg
from audit.reports import digits
from audit.reports.printable import printable

FORECAST_FORMAT = 1
"""Number of the shape of the document of a forecast."""

_HEADS = ("leg", "", "metres", "along", "across", "50 % within", "95 % within", "in sight",
          "sure offset")  # fmt: skip


def render_forecast(forecast: CourseForecast) -> str:
    """Give plain text that ends with a line feed: what was taken, then one line a leg."""
    rows = [_HEADS, *(_row(*pair) for pair in zip(forecast.card.legs, forecast.legs, strict=True))]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEADS))]
    lines = [forecast.card.name, *_taken(forecast), ""]
    for row in rows:
        words = [
            word.ljust(width) if place < 2 else word.rjust(width)
            for place, (word, width) in enumerate(zip(row, widths, strict=True))
        ]
        lines.append("  ".join(words).rstrip())
    lines += ["", *_meaning(forecast), *_aimed_off(forecast)]
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
            {"name": leg.name, "from": leg.start.name, "to": leg.end.name, **leg_entry(one)}
            for leg, one in zip(forecast.card.legs, forecast.legs, strict=True)
        ],
    }
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def leg_entry(leg: LegForecast) -> dict[str, object]:
    """Give the forecast of one leg for a document."""
    off = leg.aimed_off
    return {
        "toward_deg": leg.toward_deg,
        "along_m": leg.along_m,
        "across_m": leg.across_m,
        "along_sd_m": leg.along_sd_m,
        "across_sd_m": leg.across_sd_m,
        "ellipse_50": _ellipse_entry(leg.near),
        "ellipse_95": _ellipse_entry(leg.far),
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


def _ellipse_entry(ellipse: Ellipse) -> dict[str, float]:
    return {
        "major_m": ellipse.major_m,
        "minor_m": ellipse.minor_m,
        "major_deg": ellipse.major_deg,
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


def _taken(forecast: CourseForecast) -> list[str]:
    scatter = forecast.scatter
    side = "right" if scatter.turn_deg > 0 else "left"
    turned = f", {abs(scatter.turn_deg):.1f}° {side} on average" if scatter.turn_deg else ""
    ordinary = (
        f"Walker: {scatter.source}. A leg is turned by {scatter.turn_sd_deg:.1f}°{turned}, and its "
        f"distance is out by {100 * scatter.log_ratio_sd:.1f} % (standard deviations)."
    )
    words = [ordinary]
    if scatter.click_deg:
        words.append(
            f"Azimuths are set in clicks of {scatter.click_deg:g}°: each straight leg is turned by "
            "what rounding leaves."
        )
    return words


def _row(card: CardLeg, leg: LegForecast) -> tuple[str, ...]:
    return (
        leg.leg,
        f"{card.start.name} to {card.end.name}",
        digits.whole(card.distance_m),
        _middle_and_sd(leg.along_m, leg.along_sd_m),
        _middle_and_sd(leg.across_m, leg.across_sd_m),
        _axes(leg.near),
        _axes(leg.far),
        digits.percent(leg.chance_in_sight),
        f"{digits.whole(leg.sure_offset_m)} m",
    )


def _middle_and_sd(middle_m: float, sd_m: float) -> str:
    return f"{round(middle_m) or 0:+d} ± {digits.whole(sd_m)} m"


def _axes(ellipse: Ellipse) -> str:
    return f"{digits.whole(ellipse.major_m)} by {digits.whole(ellipse.minor_m)} m"


def _meaning(forecast: CourseForecast) -> list[str]:
    sight = digits.whole(forecast.sight_m)
    return [
        "Along and across: middle and standard deviation of where walks of the leg end, beyond",
        "(+) and right (+) of the point, each begun at the start of the leg. Within: semi-axes of",
        f"the ellipse that holds so many walks. In sight: within {sight} m of the point at the",
        "end of the count. Sure offset: aimed off by so much, 95 walks in 100 end on that side.",
        f"All {len(forecast.legs)} points in sight: {digits.percent(forecast.chance_of_all)}.",
    ]


def _aimed_off(forecast: CourseForecast) -> list[str]:
    told = [(leg.leg, leg.aimed_off) for leg in forecast.legs if leg.aimed_off is not None]
    if not told:
        return []
    side = "right" if told[0][1].offset_m > 0 else "left"
    lines = ["", f"Aimed off {digits.whole(abs(told[0][1].offset_m))} m to the {side}:"]
    lines += [
        f"leg {name}: {abs(off.offset_deg):.1f}° {side}; ends {side} of the point "
        f"{digits.percent(off.chance_of_side)}; in sight at once "
        f"{digits.percent(off.chance_in_sight)}"
        for name, off in told
    ]
    return lines
