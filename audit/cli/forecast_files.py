"""From the file of a plan, and what is known of the walker, to the forecast."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from pathlib import Path

from audit import words
from audit.cli.endings import WrongUseError
from audit.cli.messages import say_note, speak_as, tell
from audit.cli.right_plans import put_right_first
from audit.forecast.course_forecast import forecast_course
from audit.forecast.walker_scatter import WalkerScatter, ordinary_scatter, scatter_of_walker
from audit.leg_card import work_out_card
from audit.readers.course_settings import CourseOptions
from audit.readers.earlier_debriefs import read_earlier_debriefs
from audit.readers.plan_file import read_plan
from audit.reports.forecast_report import render_forecast, render_forecast_json
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What the command line says of the walker, the ground, and the wish to aim off."""

    walked: tuple[Path, ...] = ()
    heading_sd_deg: float | None = None
    pace_sd: float | None = None
    click_deg: float = 0.0
    sight_m: float | None = None
    aim_off_m: float = 0.0
    words: Path | None = None


def forecast_file(plan: Path, known: Known, *, as_json: bool, options: CourseOptions) -> None:
    """Tell the forecast of a plan.

    Raises
    ------
    InputRefusedError
        Where the plan or an earlier debrief cannot be read.
    WrongUseError
        Where an option is no finite number, or the order of the points is free: then there
        are no legs to forecast.
    """
    speak_as(known.words)
    figures = (known.heading_sd_deg, known.pace_sd, known.click_deg, known.sight_m, known.aim_off_m)
    if not all(math.isfinite(one) for one in figures if one is not None):
        message = "An option holds a figure that is no finite number. Give metres or degrees."
        raise WrongUseError(message)
    read = read_plan(plan, **options)
    if read.order == "free":
        message = f"{plan}: the points may be visited in any order, so no leg is known beforehand."
        raise WrongUseError(message)
    card = work_out_card(read)
    made = forecast_course(
        card, walker_scatter(known), sight_m=known.sight_m, aim_off_m=known.aim_off_m
    )
    first = put_right_first([(plan, read)])
    if as_json:
        for note in first:
            say_note(note)
        tell(render_forecast_json(made))
        return
    tell(render_forecast(made, first))
    for note in card.notes:
        say_note(note)


def walker_scatter(known: Known) -> WalkerScatter:
    """Give the walker's scatter: of earlier debriefs or of walkers at large, as the options say."""
    scatter = ordinary_scatter()
    if known.walked:
        legs = read_earlier_debriefs(known.walked)
        scatter = scatter_of_walker(legs)
        if not legs:
            say_note(words.say("forecast-no-legs"))
    said = known.heading_sd_deg is not None or known.pace_sd is not None
    heading, pace = known.heading_sd_deg, known.pace_sd
    return replace(
        scatter,
        turn_sd_deg=scatter.turn_sd_deg if heading is None else heading,
        log_ratio_sd=scatter.log_ratio_sd if pace is None else pace,
        click_deg=known.click_deg,
        source=sentence("forecast-changed", source=scatter.source) if said else scatter.source,
    )
