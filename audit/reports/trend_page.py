"""trend.html: one page on one walker's attempts that needs nothing else."""

from __future__ import annotations

from audit.reports.cautions import CAUTIONS
from audit.reports.figure_trend import trend_specification
from audit.reports.html_report import page_templates
from audit.reports.picture import draw
from audit.reports.trend_words import (
    LIGHT_WORDS,
    attempt_rows,
    cause_rows,
    counted,
    figure_rows,
    left_out_words,
    meaning,
)
from audit.reports.version import program_version
from audit.school_records.trend import Trend

_SAID = (
    "One sign an attempt, with its 95 % interval: heading bias, heading scatter, distance, and "
    "pace count where it was kept. The tables below hold the same figures."
)


def render_trend_page(trend: Trend) -> str:
    """Give the whole page: it fetches nothing and runs nothing."""
    made = trend_specification(trend)
    title = "Figures over attempts"
    return (
        page_templates()
        .get_template("trend.html.j2")
        .render(
            walker=trend.walker,
            attempts=counted(trend.attempts, "attempt"),
            notes=trend.notes,
            picture=None if made is None else draw(made, "trend", title, _SAID),
            lights=[
                {
                    "title": LIGHT_WORDS[one.light],
                    "attempts": counted(len(one.attempts), "attempt"),
                    "legs": counted(one.legs, "leg"),
                    "figures": figure_rows(trend, one),
                    "rows": attempt_rows(one),
                    "causes": cause_rows(one),
                    "left_out": left_out_words(one),
                }
                for one in trend.lights
            ],
            meaning=meaning(trend),
            cautions=CAUTIONS,
            version=program_version(),
        )
    )
