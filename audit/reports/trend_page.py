"""trend.html: one page on one walker's attempts that needs nothing else."""

from __future__ import annotations

from audit.reports.cautions import cautions
from audit.reports.figure_trend import drawn_figures, is_cut, trend_key, trend_specification
from audit.reports.html_report import page_templates
from audit.reports.picture import draw
from audit.reports.shown_paces import counting, hundred
from audit.reports.trend_words import (
    attempt_rows,
    cause_rows,
    figure_rows,
    left_out_words,
    meaning,
)
from audit.reports.version import program_version
from audit.school_records.trend import Trend
from audit.words import in_force, say


def render_trend_page(trend: Trend) -> str:
    """Give the whole page: it fetches nothing and runs nothing."""
    with counting(trend.pace_unit):
        return _page(trend)


def _note(trend: Trend) -> str:
    figures = [say(f"trend-drawn-{name}", length=hundred()) for name in drawn_figures(trend)]
    cut = "yes" if is_cut(trend) else "no"
    return say("trend-figure-note", figures="; ".join(figures), cut=cut)


def _page(trend: Trend) -> str:
    made = trend_specification(trend)
    title = say("trend-picture")
    return (
        page_templates()
        .get_template("trend.html.j2")
        .render(
            walker=trend.walker,
            attempts=say("trend-attempts", count=trend.attempts),
            notes=trend.notes,
            signs=trend_key(trend),
            note=_note(trend),
            picture=None if made is None else draw(made, "trend", title, say("trend-picture-said")),
            lights=[
                {
                    "title": say(f"trend-{one.light}"),
                    "attempts": say("trend-attempts", count=len(one.attempts)),
                    "legs": say("trend-legs", count=one.legs),
                    "figures": figure_rows(trend, one),
                    "rows": attempt_rows(one),
                    "causes": cause_rows(one),
                    "left_out": left_out_words(one),
                }
                for one in trend.lights
            ],
            meaning=meaning(trend),
            cautions=cautions(),
            language=in_force().language,
            length=hundred(),
            version=program_version(),
        )
    )
