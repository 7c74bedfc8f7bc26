"""Whether a line bent to the side to which the leg ended off, and how it is practised."""

from __future__ import annotations

from audit.guide.cause_names import CANNOT_TELL, WITHIN_SKILL
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings


def bent_aside(one: LegMeasures) -> bool:
    """Tell whether a line drifted to the side of its error, by more than twice the drift's error.

    A line that did not bend is no veer: it was set, sighted or held otherwise.
    """
    thirds = None if one.details is None else one.details.thirds
    if thirds is None:
        return False
    surely = abs(thirds.drift_deg) > 2.0 * thirds.drift_sd_deg
    return surely and thirds.drift_deg * one.azimuth_error_deg > 0.0


def exercise_of_line(error_deg: float, settings: CoachingSettings, *, bends: bool) -> str:
    """Give the exercise for a line that was turned and has no mistake, by the name of its cause.

    Who was turned far did not wander off a line but held another one, and so did he, by less,
    whose line was straight: what he set he has to remember. A little is the drill for a heading.
    """
    if bends and abs(error_deg) <= settings.wandered_deg:
        return "veer"
    return WITHIN_SKILL if abs(error_deg) <= settings.drilled_deg else CANNOT_TELL
