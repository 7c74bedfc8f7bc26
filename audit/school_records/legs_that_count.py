"""Which legs say something of a walker's ordinary error, and which attempts are one walk."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence

from audit.guide.cause_names import CAUSE_KINDS, JUDGEMENTS
from audit.moments import calendar_moment
from audit.school_records.attempt import Attempt, LegOfAttempt
from audit.settings import DiagnosisSettings, RecordsSettings, Settings
from audit.words import sentence

_STEADY = frozenset({"steady-bias", "pace-long", "pace-short"})
"""Named as causes, and yet what the bias and the pace are made of."""
_DIRECTION = frozenset(CAUSE_KINDS["Direction"] + CAUSE_KINDS["Holding the line"])
_DISTANCE = frozenset(CAUSE_KINDS["Distance"])

UNSURE = sentence("trend-unsure")
MISTAKEN = sentence("trend-mistaken")
FAR_OFF = sentence("trend-far-off")


def why_not_heading(leg: LegOfAttempt, settings: Settings) -> str:
    """Say why a walked leg tells nothing of the walker's heading; "" where it does."""
    error = leg.heading_error_deg
    far = error is None or abs(error) > settings.records.largest_turn_deg
    return _why_not(leg, _DISTANCE, settings, far=far)


def why_not_distance(leg: LegOfAttempt, settings: Settings) -> str:
    """Say why a walked leg tells nothing of the walker's distances; "" where it does."""
    ratio = leg.distance_ratio
    far = ratio is None or ratio <= 0.0 or abs(math.log(ratio)) > settings.records.largest_log_ratio
    return _why_not(leg, _DIRECTION, settings, far=far)


def _why_not(leg: LegOfAttempt, beside_it: frozenset[str], settings: Settings, *, far: bool) -> str:
    if leg.confidence < settings.quality.unsure:
        return UNSURE
    if _mistake_named(leg, {*JUDGEMENTS, *_STEADY, *beside_it}, settings.diagnosis):
        return MISTAKEN
    return FAR_OFF if far else ""


def _mistake_named(leg: LegOfAttempt, harmless: set[str], settings: DiagnosisSettings) -> bool:
    """Tell whether a mistake is named on a leg, or one of two, and neither is harmless here.

    To leave out where one is only likelier than the rest would leave out the legs that lean
    most, and make the lean of the others look smaller than the walker's.
    """
    chances = [(chance, cause not in harmless) for cause, chance in leg.causes[:2]]
    if not chances or not chances[0][1]:
        return False
    both = sum(chance for chance, _ in chances)
    one_of_two = len(chances) == 2 and chances[1][1] and both >= settings.either_named
    return chances[0][0] >= settings.named or one_of_two


def once_each(
    attempts: Sequence[Attempt], settings: RecordsSettings | None = None
) -> tuple[Attempt, ...]:
    """Give each walk once, in order of time, by the result that was kept last.

    A walker walks one walk at a time: results over the same hours are of the same walk,
    done again with another standard, log or version. Where one has no times they are of the
    same walk where course and day are the same, and most legs were walked on one heading.
    """
    chosen = settings or RecordsSettings()
    kept: list[Attempt] = []
    for attempt in reversed(attempts):
        if not any(_same_walk(attempt, other, chosen) for other in kept):
            kept.append(attempt)
    kept.reverse()
    return tuple(sorted(kept, key=_moment))


def results_of(
    walk: Attempt, attempts: Sequence[Attempt], settings: RecordsSettings | None = None
) -> tuple[int, ...]:
    """Give the places of all results of one walk, that which counts among them."""
    chosen = settings or RecordsSettings()
    return tuple(
        place for place, one in enumerate(attempts) if one == walk or _same_walk(one, walk, chosen)
    )


def _same_walk(one: Attempt, other: Attempt, settings: RecordsSettings) -> bool:
    if one.begun_s is None or one.ended_s is None or other.begun_s is None or other.ended_s is None:
        same = (one.course_print, one.walked_on) == (other.course_print, other.walked_on)
        return same and _alike(one, other, settings)
    return one.begun_s < other.ended_s and other.begun_s < one.ended_s


def _alike(one: Attempt, other: Attempt, settings: RecordsSettings) -> bool:
    """Tell whether most legs of two results were walked on one heading; so where none tells."""
    of = {leg.name: leg.heading_error_deg for leg in other.legs}
    both = [
        abs(leg.heading_error_deg - theirs)
        for leg in one.legs
        if leg.heading_error_deg is not None and (theirs := of.get(leg.name)) is not None
    ]
    return 2 * sum(off <= settings.same_heading_deg for off in both) >= len(both)


def _moment(attempt: Attempt) -> tuple[dt.date, float]:
    """Give what to sort by: the day, then when it was begun; else they stay as they were kept.

    The day is by the clock put right, and when it was begun by the recorder's own.
    """
    begun_s, day = attempt.begun_s or 0.0, attempt.walked_on
    if day is None:
        day = calendar_moment(begun_s).date()
    return day, begun_s
