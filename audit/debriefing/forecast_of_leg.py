"""The forecast of a leg as the debrief has it: made, and written into the document."""

from __future__ import annotations

import math

from audit.debriefing.forecast_shape import EllipseEntry, ForecastEntry
from audit.forecast.leg_forecast import Ellipse, forecast_leg
from audit.forecast.place_of_miss import MissInForecast, place_miss
from audit.forecast.walker_scatter import ordinary_scatter
from audit.leg_card import CardLeg
from audit.measurement.leg_measures import LegMeasures
from audit.settings import ForecastSettings


def forecast_of_leg(
    leg: CardLeg, measures: LegMeasures, radius_m: float, settings: ForecastSettings
) -> MissInForecast:
    """Say where in the forecast of an ordinary walker the miss of a leg lies."""
    forecast = forecast_leg(leg, ordinary_scatter(settings), radius_m, settings=settings)
    ledger = measures.ledger
    return place_miss(
        forecast,
        miss_m=ledger.total,
        inherited_m=ledger.inherited,
        plan_m=ledger.plan,
        own_sd_m=measures.straight_sd_m,
        miss_sd_m=measures.miss_sd_m,
        start_sd_m=leg.start.half_square_m / math.sqrt(3.0),
    )


def forecast_entry(held: MissInForecast | None) -> ForecastEntry | None:
    """Give the entry of the document."""
    if held is None:
        return None
    forecast = held.forecast
    return {
        "along_m": forecast.along_m,
        "across_m": forecast.across_m,
        "along_sd_m": forecast.along_sd_m,
        "across_sd_m": forecast.across_sd_m,
        "ellipse_50": ellipse_entry(forecast.near),
        "ellipse_95": ellipse_entry(forecast.far),
        "chance_in_sight": forecast.chance_in_sight,
        "began_off_m": held.began_off_m,
        "quantile": held.quantile,
        "whole_quantile": held.whole_quantile,
        "where": held.where,
    }


def ellipse_entry(ellipse: Ellipse) -> EllipseEntry:
    """Give the entry of an ellipse, in this document and in that of a forecast."""
    return {
        "major_m": ellipse.major_m,
        "minor_m": ellipse.minor_m,
        "major_deg": ellipse.major_deg,
    }
