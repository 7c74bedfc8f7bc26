"""What part of a walk its recording shows: what it begins too late for, and ends too early for."""

from __future__ import annotations

import math

import numpy as np

from audit.classroom.setting_out import away_since_s, numbers_walked, start_seen
from audit.debriefing.finished_debrief import Debrief
from audit.geodesy.along_line import off_line_m
from audit.leg_card import CardLeg, CardPoint
from audit.settings import GradingSettings


def not_recorded(debrief: Debrief, number: int, settings: GradingSettings) -> bool:
    """Tell whether a leg may have been walked before the recording began or after it ended.

    A recording that ends, or begins, out on the course says nothing of what came after,
    or before; nor does one that ends, or begins, where the course comes by its own finish,
    or start, in between. One that begins near the start but not at it shows what came after,
    unless a skipped leg comes by there. One that never leaves the start says nothing at all.
    """
    walked = numbers_walked(debrief)
    after = not walked or number > walked[-1]
    before = not walked or number < walked[0]
    begins_late = _out(debrief, 0, settings) or _joins(debrief, settings)
    ends_early = _out(debrief, -1, settings) or _breaks_off(debrief, settings)
    stayed = not walked and away_since_s(debrief, settings) is None
    return stayed or (after and ends_early) or (before and begins_late)


def still_coming(
    debrief: Debrief, number: int, nearest_m: float, settings: GradingSettings
) -> bool:
    """Tell whether the recording ends on the way to a leg's end: walking, never so near before.

    Nobody is on the way to a point when a later leg is walked, nor when the debrief calls it
    missed, unless the walker was heading straight for it: then only the recorded part ends.
    """
    leg, walked = debrief.legs[number], numbers_walked(debrief)
    measures, clean, place = leg.audit.measures, debrief.clean, leg.audit.card.end
    details = None if measures is None else measures.details
    missed = details is not None and details.point.verdict == "missed"
    if (walked and number < walked[-1]) or (missed and not _heads_for(debrief, place, settings)):
        return False
    last_m = math.hypot(clean.east_m[-1] - place.east_m, clean.north_m[-1] - place.north_m)
    return last_m <= nearest_m + debrief.quality.noise_m and not _ends_at_rest(debrief)


def begins_at(debrief: Debrief, number: int, radius_m: float, settings: GradingSettings) -> bool:
    """Tell whether the recording begins at the end of a leg, before any leg that was walked."""
    clean, end = debrief.clean, debrief.legs[number].audit.card.end
    walked = numbers_walked(debrief)
    first_m = math.hypot(clean.east_m[0] - end.east_m, clean.north_m[0] - end.north_m)
    earlier = bool(walked) and number < walked[0]
    return first_m <= radius_m and earlier and not start_seen(debrief, settings)


def _joins(debrief: Debrief, settings: GradingSettings) -> bool:
    """Tell whether the recording may begin on a later leg than the first.

    A start that the course comes by on a skipped leg tells nothing. One that was not seen
    leaves it open far from there, where the first walked leg begins with the recording, and
    where it begins about the line of a skipped leg.
    """
    clean, legs, walked = debrief.clean, debrief.card.legs, numbers_walked(debrief)
    first = walked[0] if walked else len(legs)
    start, within_m = legs[0].start, settings.course_ends_m
    origin = complex(start.east_m, start.north_m)
    between = legs[1:-1][: max(first - 1, 0)]  # the last leg may well end at the start
    if any(_from_line_m(origin, leg) <= settings.start_m for leg in between):
        return True
    if start_seen(debrief, settings):
        return False
    here = complex(clean.east_m[0], clean.north_m[0])
    if abs(here - origin) > within_m:
        return True
    begun = debrief.legs[first].portion if walked else None
    if begun is not None and begun.start_s is not None:
        fix = clean.index_at(begun.start_s)
        if abs(complex(clean.east_m[fix], clean.north_m[fix]) - here) <= within_m:
            return True
    return any(_from_line_m(here, leg) <= within_m for leg in legs[1:first])


def _from_line_m(place: complex, leg: CardLeg) -> float:
    """Give how far a place, east and north in metres, lies from the line of a leg, bends too."""
    return off_line_m(np.array([place.real, place.imag]), leg.line)


def _breaks_off(debrief: Debrief, settings: GradingSettings) -> bool:
    """Tell whether the recording ends about where its last leg does, as on the way.

    Who gave up and went home with the recorder running left that place, or came back to
    the start or to the finish.
    """
    if any(_ends_within(debrief, end, settings.start_m) for end in _ends(debrief, -1)):
        return False
    clean = debrief.clean
    claims = [
        leg.portion.claim_s
        for leg in debrief.legs
        if leg.portion is not None and leg.portion.claim_s is not None
    ]
    start = debrief.card.legs[0].start
    east_m, north_m = start.east_m, start.north_m
    if claims:
        last = clean.index_at(max(claims))
        east_m, north_m = float(clean.east_m[last]), float(clean.north_m[last])
    gone_m = math.hypot(clean.east_m[-1] - east_m, clean.north_m[-1] - north_m)
    return gone_m <= settings.course_ends_m


def _heads_for(debrief: Debrief, place: CardPoint, settings: GradingSettings) -> bool:
    """Tell whether straight on from where the recording ends lies a point, within its circle."""
    clean = debrief.clean
    gone = clean.east_m + 1j * clean.north_m - complex(clean.east_m[-1], clean.north_m[-1])
    before = np.flatnonzero(np.abs(gone) >= settings.heading_m)
    if not len(before):
        return False
    way = -complex(gone[before[-1]])
    left = complex(place.east_m - clean.east_m[-1], place.north_m - clean.north_m[-1])
    ahead = left * way.conjugate() / abs(way)
    error_m = settings.coverage_factor * debrief.quality.noise_m
    return ahead.real > 0.0 and abs(ahead.imag) <= debrief.card.arrival_radius_m + error_m


def _ends_within(debrief: Debrief, place: CardPoint, within_m: float) -> bool:
    clean = debrief.clean
    return (
        math.hypot(clean.east_m[-1] - place.east_m, clean.north_m[-1] - place.north_m) <= within_m
    )


def _ends(debrief: Debrief, fix: int) -> list[CardPoint]:
    """Give start and finish, less what the course comes by before its first walked leg, or after.

    ``fix`` is 0 for where the recording begins, -1 for where it ends.
    """
    legs, walked = debrief.card.legs, numbers_walked(debrief)
    first, last = (walked[0], walked[-1]) if walked else (len(legs) - 1, 0)
    between = [leg.start for leg in legs[1 : first + 1]]
    if fix:
        between = [leg.end for leg in legs[last:-1]]
    on_the_way = {(point.east_m, point.north_m) for point in between}
    ends = (legs[0].start, legs[-1].end)
    return [end for end in ends if (end.east_m, end.north_m) not in on_the_way]


def _out(debrief: Debrief, fix: int, settings: GradingSettings) -> bool:
    """Tell whether the first or last fix lies far from start and finish."""
    clean = debrief.clean
    return all(
        math.hypot(clean.east_m[fix] - end.east_m, clean.north_m[fix] - end.north_m)
        > settings.course_ends_m
        for end in _ends(debrief, fix)
    )


def _ends_at_rest(debrief: Debrief) -> bool:
    """Tell whether the walker rested when the recording ended."""
    halts, clean = debrief.match.halts, debrief.clean
    within_s = 2.0 * (clean.median_interval_s or 0.0)
    return bool(len(halts)) and float(halts[:, 1].max()) >= float(clean.time_s[-1]) - within_s
