"""Where in the forecast of its leg a miss lies, in words."""

from __future__ import annotations

from audit.debriefing.records import LegDebrief
from audit.reports import digits


def forecast_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give the fact as (name, words); none for a leg without a forecast."""
    held = leg.forecast
    if held is None:
        return []
    far = held.forecast.far
    size = f"{digits.whole(far.major_m)} by {digits.whole(far.minor_m)} m"
    words = f"{held.where} (the outer one {size}): {_nearer(held.quantile)}"
    if held.began_off_m > held.forecast.sight_m:
        words += (
            f". Counted from where the leg was begun, {digits.whole(held.began_off_m)} m from its "
            f"start; from the start itself {_nearer(held.whole_quantile)}"
        )
    return [("Forecast", words)]


def _nearer(quantile: float) -> str:
    return f"of ordinary walks {digits.percent(quantile)} end nearer"
