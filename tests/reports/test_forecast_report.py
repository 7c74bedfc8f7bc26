"""What the table of a forecast says that it takes of the walker."""

from __future__ import annotations

from dataclasses import replace

import pytest
from forecast.legs import made_card

from audit.forecast.course_forecast import forecast_course
from audit.forecast.walker_scatter import ordinary_scatter
from audit.reports.forecast_report import render_forecast


@pytest.mark.parametrize(
    ("log_ratio", "said"),
    [
        (None, "its distance is 1.0 % short on average and out by 6.4 %"),
        (0.03, "its distance is 3.0 % too far on average and out by 6.4 %"),
        (0.0, "its distance is out by 6.4 %"),
    ],
)
def test_the_walkers_line_says_how_far_he_goes_on_average(log_ratio, said):
    """Bug: every leg's middle lay 1 % short, and only the scatter of 6.4 % was told."""
    scatter = ordinary_scatter()
    if log_ratio is not None:
        scatter = replace(scatter, log_ratio=log_ratio)
    text = render_forecast(forecast_course(made_card((0.0, 600.0)), scatter))
    assert said in " ".join(text.split())
