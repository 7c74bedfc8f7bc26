"""The project's own matching, from plan and track to one portion a leg."""

from __future__ import annotations

import importlib.util
from collections.abc import Sequence

from walks import Walk

from accuracy.scoring import Portion
from audit.matching.pins import Pin
from audit.settings import Settings


def is_present() -> bool:
    """Say whether the matching stands in the package."""
    return importlib.util.find_spec("audit.matching.match_walk") is not None


def match_of(walk: Walk, settings: Settings | None = None, pins: Sequence[Pin] = ()):
    """Give the Match of a made walk, around the ends that are pinned."""
    import datetime as dt

    from audit.leg_card import work_out_card
    from audit.matching.clean_track import clean_track
    from audit.matching.match_walk import match_walk

    used = settings or Settings()
    day = dt.datetime.fromtimestamp(float(walk.track.time_s[0]), dt.UTC).date()
    card = work_out_card(walk.plan, track_date=day)
    return match_walk(clean_track(walk.track, card.grid, used.cleaning), card, used.matching, pins)


def portions_of(match) -> list[Portion | None]:
    """Give one portion a leg, None for a leg that is not called walked or unfinished."""
    return portions_of_legs(match.legs)


def portions_of_legs(legs) -> list[Portion | None]:
    """Give the same of the legs of a match."""
    return [
        (leg.start_s, leg.claim_s)
        if leg.status in ("walked", "unfinished") and leg.start_s is not None
        else None
        for leg in legs
    ]


def project(walk: Walk) -> list[Portion | None]:
    """Give the portions that the project finds."""
    return portions_of(match_of(walk))
