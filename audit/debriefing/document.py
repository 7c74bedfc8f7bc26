"""The debrief as the plain document of debrief.json: nothing rounded, nothing not finite."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from audit.debriefing.coaching_entry import coaching_entry
from audit.debriefing.course_entry import (
    course_entry,
    plan_finding_entries,
    point_entries,
)
from audit.debriefing.detail_entries import paces_entry
from audit.debriefing.document_shape import (
    FORMAT,
    DebriefDocument,
    SpanEntry,
    StoryEntry,
    TrackEntry,
)
from audit.debriefing.leg_entry import leg_entry
from audit.moments import utc_if_known, utc_text

if TYPE_CHECKING:
    from audit.debriefing.finished_debrief import Debrief

__all__ = ["FORMAT", "DebriefDocument", "debrief_document"]


def debrief_document(debrief: Debrief) -> DebriefDocument:
    """Give the document, made of dicts, lists, strings and finite numbers only.

    Raises
    ------
    ValueError
        Naming the field, where the tree holds a number that is not finite: missing
        values are None in records, so that is a fault of the program.
    """
    document: DebriefDocument = {
        "format": FORMAT,
        "course": course_entry(debrief.card),
        "points": point_entries(debrief.card),
        "track": _track(debrief),
        "plan_findings": plan_finding_entries(debrief.card.findings),
        "spans": _spans(debrief),
        "coaching": coaching_entry(debrief.coaching),
        "legs": [leg_entry(leg, timed=debrief.clean.timed) for leg in debrief.legs],
        "stories": _stories(debrief),
        "paces": None if debrief.paces is None else paces_entry(debrief.paces),
    }
    _refuse_not_finite(document, "debrief")
    return document


def _track(debrief: Debrief) -> TrackEntry:
    quality, clean, noise = debrief.quality, debrief.clean, debrief.quality.noise
    return {
        "source": quality.source,
        "fixes": int(quality.fixes),
        "kept_fixes": len(clean),
        "start": utc_if_known(quality.start_s),
        "end": utc_if_known(quality.end_s),
        "median_interval_s": quality.median_interval_s,
        "noise_m": float(quality.noise_m),
        "noise_from": quality.noise_from,
        "noise_95_m": noise.interval_m if noise else None,
        "noise_correlation_s": noise.correlation_s if noise else None,
        "noise_correlation_95_s": noise.correlation_interval_s if noise else None,
        "gaps": [
            {"start": _time(debrief, gap.start_s), "end": _time(debrief, gap.end_s)}
            for gap in clean.gaps
        ],
        "cleaning": [
            {"what": done.what, "count": int(done.count), "detail": done.detail}
            for done in clean.cleaning
        ],
        "notes": [*quality.notes, *_of_the_whole(debrief)],
    }


def _of_the_whole(debrief: Debrief) -> list[str]:
    """Give what the head of the page says of the whole walk and no leg shows."""
    tries = (one.told for one in debrief.tried_before)
    return [said for said in (debrief.displaced, debrief.on_no_leg.doubt, *tries) if said]


def _spans(debrief: Debrief) -> list[SpanEntry]:
    clean = debrief.clean
    return [
        {
            "start": _time(debrief, span.start_s),
            "end": _time(debrief, span.end_s),
            "leg": None if span.leg is None else debrief.legs[span.leg].name,
            "kind": span.kind,
            "first_fix": int(clean.fix[span.first]),
            "last_fix": int(clean.fix[span.last]),
        }
        for span in debrief.spans
    ]


def _stories(debrief: Debrief) -> list[StoryEntry]:
    return [
        {
            "cause": story.cause,
            "probability": float(story.probability),
            "legs": [debrief.legs[leg].name for leg in story.legs],
            "begins_later": story.begins_later,
            "put_right": story.put_right,
            "size": story.size,
            "unit": story.unit,
        }
        for story in debrief.stories
    ]


def _time(debrief: Debrief, time_s: float) -> str | None:
    """Write a moment of the kept fixes, which mean nothing in a recording without times."""
    return utc_text(time_s) if debrief.clean.timed else None


def _refuse_not_finite(value: object, place: str) -> None:
    """Raise ValueError for the first number that is NaN or infinite."""
    if isinstance(value, float):
        if not math.isfinite(value):
            message = f"{place} is {value}, which is no finite number"
            raise ValueError(message)
    elif isinstance(value, dict):
        for key, part in value.items():
            _refuse_not_finite(part, f"{place}.{key}")
    elif isinstance(value, list):
        for index, part in enumerate(value):
            _refuse_not_finite(part, f"{place}[{index}]")
