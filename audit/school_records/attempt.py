"""One attempt of one walker as the records keep it: frozen, without names, keyed by content."""

from __future__ import annotations

import dataclasses
import datetime as dt
import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, Protocol

Light = Literal["day", "twilight", "night", "unknown"]
"""By the height of the sun; unknown where the recording carries no times."""
LIGHTS: tuple[Light, ...] = ("day", "twilight", "night", "unknown")
PaceUnit = Literal["double", "single"]


@dataclass(frozen=True, slots=True, kw_only=True)
class LegOfAttempt:
    """One leg. None where it was not walked, or nothing can be told.

    Attributes
    ----------
    status : str
        As in the debrief: "walked", "skipped", "unfinished" or "not-started".
    confidence : float
        That the right part of the recording was matched.
    point : str or None
        The standard's verdict of the point; None where no standard was applied.
    heading_error_deg, heading_sd_deg : float or None
        Walked less planned azimuth, right positive, and its standard error.
    distance_ratio, ratio_sd : float or None
        Walked over planned distance, and its standard error.
    miss_along_m, miss_across_m, miss_sd_m : float or None
        From the point to the claim, beyond and right positive; standard error per axis.
    causes : tuple of (str, float)
        With their probabilities, the likeliest first.
    """

    name: str
    status: str
    light: Light
    confidence: float
    point: str | None = None
    heading_error_deg: float | None = None
    heading_sd_deg: float | None = None
    distance_ratio: float | None = None
    ratio_sd: float | None = None
    miss_along_m: float | None = None
    miss_across_m: float | None = None
    miss_sd_m: float | None = None
    causes: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """One walk of one walker over one course.

    Attributes
    ----------
    walker : str
        The pseudonym; the records never hold a name.
    begun_s, ended_s : float or None
        From leaving for the first walked leg to the last claim, by the recorder's clock as
        it stood: the same walk keeps them when a later run puts the clock right. None of a
        private result, and in a recording without times.
    light : str
        At the middle of the walk; each leg has its own.
    course_print, standard_print : str or None
        Fingerprints of the points of the course, and of plan, standard and version.
    paces_per_100m, paces_sd : float or None
        As counted over the whole course, in the walker's own pace; with standard error.
    """

    walker: str
    walked_on: dt.date | None
    begun_s: float | None
    ended_s: float | None
    light: Light
    course: str
    lane: str
    course_print: str
    standard_print: str | None
    version: str
    verdict: str | None
    noise_m: float | None
    paces_per_100m: float | None
    paces_sd: float | None
    pace_unit: PaceUnit
    simulated: bool
    legs: tuple[LegOfAttempt, ...]

    @property
    def without_clock(self) -> Attempt:
        """Give what is kept of a private result: its day and light, and no time of the day."""
        return dataclasses.replace(self, begun_s=None, ended_s=None)

    @property
    def content_key(self) -> str:
        """Give the key of all that is kept but the clock: the same result has the same key.

        With its times or without, as a private one is kept, it is the same result.
        """
        return fingerprint(dataclasses.asdict(self.without_clock))


def fingerprint(content: object) -> str:
    """Give the key of plain data; what is equal has an equal one on every machine."""
    text = json.dumps(content, sort_keys=True, ensure_ascii=True, default=str)
    return hashlib.sha256(text.encode()).hexdigest()


class NamedPlace(Protocol):
    """A point of a course, whoever's record of it."""

    @property
    def name(self) -> str: ...  # noqa: D102 (what it says)
    @property
    def longitude_deg(self) -> float: ...  # noqa: D102
    @property
    def latitude_deg(self) -> float: ...  # noqa: D102


def course_print(points: Iterable[NamedPlace]) -> str:
    """Give the fingerprint of the points of a course, to some 0.1 m."""
    return fingerprint(
        [(p.name, round(p.longitude_deg, 6), round(p.latitude_deg, 6)) for p in points]
    )
