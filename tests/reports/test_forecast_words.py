"""What the page says of a miss against its forecast."""

from __future__ import annotations

from dataclasses import replace

from reports.sample_debrief import sample_debrief

from audit.debriefing.forecast_of_leg import forecast_of_leg
from audit.reports.forecast_words import forecast_facts
from audit.settings import ForecastSettings


def test_a_leg_says_where_among_ordinary_walks_it_ended():
    debrief = sample_debrief()
    leg = next(one for one in debrief.legs if one.audit.measures is not None)
    assert forecast_facts(leg) == []
    held = forecast_of_leg(leg.audit.card, leg.audit.measures, 30.0, ForecastSettings())
    [(name, words)] = forecast_facts(replace(leg, forecast=held))
    assert name == "Forecast"
    assert words.startswith(held.where)
    assert "of ordinary walks" in words
    aside = replace(held, began_off_m=80.0)
    [(_, words)] = forecast_facts(replace(leg, forecast=aside))
    assert "Counted from where the leg was begun, 80 m from its start" in words
