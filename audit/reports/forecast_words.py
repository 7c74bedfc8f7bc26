"""Where in the forecast of its leg a miss lies, in words."""

from __future__ import annotations

from audit.debriefing.finished_debrief import LegDebrief
from audit.forecast.place_of_miss import WhereInForecast
from audit.reports import digits
from audit.words import say

_WHERE: dict[WhereInForecast, str] = {
    "inside the 50 % ellipse": "inside",
    "between the 50 % and the 95 % ellipse": "between",
    "outside the 95 % ellipse": "outside",
}


def forecast_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give the fact as (name, words); none for a leg without a forecast."""
    held = leg.forecast
    if held is None:
        return []
    far = held.forecast.far
    words = say(
        "fact-forecast-said",
        where=say(f"fact-forecast-{_WHERE[held.where]}"),
        major=digits.stated_metres(far.major_m),
        minor=digits.stated_metres(far.minor_m),
        nearer=digits.percent(held.quantile),
    )
    if held.began_off_m > held.forecast.sight_m:
        words = say(
            "fact-forecast-began",
            said=words,
            off=digits.stated_metres(held.began_off_m),
            whole=digits.percent(held.whole_quantile),
        )
    return [(say("fact-forecast"), words)]
