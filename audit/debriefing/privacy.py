"""A debrief that tells no more of a person than the training needs."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.matching.leg_match import CleanTrack
from audit.moments import DAY_S, EARLIEST_MOMENT_S, utc_text
from audit.read_only import read_only
from audit.units import FloatArray
from audit.words import Sentence, says, sentence

Record = TypeVar("Record")

_MOMENT = re.compile(
    r"(?P<whole>\b\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?Z)"
    r"|(?<!\d)(?P<clock>\d\d:\d\d:\d\d)(?!\d)"
)
_TELLS_WHOSE = (
    "recording-called",
    "recording-other-day",
    "recording-walk-of-other-day",
    "recording-log-day",
)
"""What a track is called, and its day."""


def private_debrief(debrief: Debrief) -> Debrief:
    """Give the debrief without names of files and tracks, cropped, with times from the start.

    What the walker wrote beside his legs in words of his own may name anybody, and is left out.

    Kept is what was recorded from leaving for the first leg to the end of the last. All times
    count from the first fix that is kept, which becomes 1970-01-01T00:00:00Z; the day of the
    course stays, since the declination is for it.
    """
    first, last = _kept(debrief)
    start_s = float(debrief.clean.time_s[first]) if debrief.clean.timed else 0.0
    kept_s = float(debrief.clean.time_s[first]), float(debrief.clean.time_s[last])
    clean = _cropped(debrief.clean, first, last)
    spans = tuple(
        replace(
            span,
            start_s=max(span.start_s, kept_s[0]),
            end_s=min(span.end_s, kept_s[1]),
            first=min(max(span.first, first), last) - first,
            last=min(max(span.last, first), last) - first,
        )
        for span in debrief.spans
        if span.end_s > kept_s[0] and span.start_s < kept_s[1]
    )
    noted = any(leg.noted for leg in debrief.legs)
    cropped = replace(
        debrief,
        clean=clean,
        spans=spans,
        legs=tuple(replace(_earlier_fixes(leg, first), noted="") for leg in debrief.legs),
        quality=replace(
            debrief.quality,
            source="",
            fixes=len(clean),
            start_s=float(clean.time_s[0]) if clean.timed else None,
            end_s=float(clean.time_s[-1]) if clean.timed else None,
            notes=(
                *(note for note in debrief.quality.notes if not says(note, *_TELLS_WHOSE)),
                sentence("recording-private"),
                *([sentence("recording-private-log")] if noted else []),
            ),
        ),
    )
    shifted: Debrief = _shifted(cropped, start_s)
    return shifted


def _kept(debrief: Debrief) -> tuple[int, int]:
    """Give the first and the last kept fix: of the legs, from leaving to the end of the last.

    The way there and back is none of the course, however near it lies: a home may stand beside
    the start. Where no leg was walked only the two fixes nearest to the course are kept.
    """
    clean = debrief.clean
    of_legs = [span for span in debrief.spans if span.leg is not None]
    if of_legs:  # from the fix before the first leaving to the one after the last claim
        begin = int(np.searchsorted(clean.time_s, of_legs[0].start_s, side="right")) - 1
        end = int(np.searchsorted(clean.time_s, of_legs[-1].end_s))
        return begin, max(min(end, len(clean) - 1), begin + 1)
    import shapely  # noqa: PLC0415

    course = shapely.MultiLineString([leg.audit.card.line for leg in debrief.legs])
    apart_m = shapely.distance(shapely.points(clean.east_m, clean.north_m), course)
    begin = min(int(np.argmin(apart_m)), len(clean) - 2)
    return begin, begin + 1


def _cropped(clean: CleanTrack, first: int, last: int) -> CleanTrack:
    kept = clean.part(slice(first, last + 1))
    gaps = tuple(
        replace(gap, before=gap.before - first) for gap in clean.gaps if first <= gap.before < last
    )
    return replace(kept, gaps=gaps, fix=read_only(np.arange(len(kept), dtype=np.int64)))


def _earlier_fixes(leg: Record, by: int) -> Record:
    """Give the record with the fixes of its places counted from the first that is kept."""

    def moved(part: Any) -> Any:  # noqa: ANN401 (any part of a record)
        if isinstance(part, tuple):
            return tuple(moved(one) for one in part)
        if not is_dataclass(part) or isinstance(part, type):
            return part
        changes = {one.name: moved(getattr(part, one.name)) for one in fields(part)}
        if isinstance(changes.get("fix"), int):
            changes["fix"] -= by
        return replace(part, **changes)

    made: Record = moved(leg)
    return made


def _shifted(part: Any, by_s: float) -> Any:  # noqa: ANN401 (any part of the tree)
    """Count every moment in a tree of records from another start; durations stay."""
    if isinstance(part, str):
        return _told_from_start(part, by_s)
    if isinstance(part, float):
        return part - by_s if part > EARLIEST_MOMENT_S else part
    if isinstance(part, np.ndarray):
        return _shifted_array(part, by_s)
    if isinstance(part, tuple | list):
        return type(part)(_shifted(one, by_s) for one in part)
    if not is_dataclass(part) or isinstance(part, type):
        return part
    return replace(part, **{one.name: _shifted(getattr(part, one.name), by_s)
                            for one in fields(part) if one.init})  # fmt: skip


def _told_from_start(part: str, by_s: float) -> str:
    """Give a sentence with its moments counted from another start, and without clock advice."""
    if not isinstance(part, Sentence):
        return _said_from_start(part, by_s)
    values = {name: _shifted(value, by_s) for name, value in part.values.items()}
    return Sentence(part.ident, values | ({"settle": ""} if "settle" in values else {}))


def _said_from_start(words: str, by_s: float) -> str:
    """Count the moments in a text from another start."""

    def moved(found: re.Match[str]) -> str:
        if found["whole"]:
            return utc_text(dt.datetime.fromisoformat(found["whole"]).timestamp() - by_s)
        hours, minutes, seconds = (int(part) for part in found["clock"].split(":"))
        return utc_text((hours * 3600 + minutes * 60 + seconds - round(by_s)) % DAY_S)[11:19]

    return _MOMENT.sub(moved, words)


def _shifted_array(values: FloatArray, by_s: float) -> FloatArray:
    if values.dtype.kind != "f" or not np.any(values > EARLIEST_MOMENT_S):
        return values
    shifted = np.where(values > EARLIEST_MOMENT_S, values - by_s, values)
    return read_only(shifted)
