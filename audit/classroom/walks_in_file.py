"""The walks that one recording holds: usually one, sometimes two, each with the lane it fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from audit.classroom.lane import Lane
from audit.classroom.lane_fit import fit_lanes
from audit.classroom.parting import Stretch, parted
from audit.classroom.walker_result import LaneFit
from audit.errors import InputRefusedError
from audit.geodesy.along_line import even_places
from audit.matching.clean_track import clean_track
from audit.matching.leg_match import CleanTrack
from audit.settings import GradingSettings, Settings
from audit.track import Track
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundWalk:
    """One walk of a recording.

    Attributes
    ----------
    part : (float, float) or None
        From when to when of the recording; None where it is the whole.
    fits : tuple of LaneFit
        The best first.
    left_s : tuple of (str, float)
        By lane, when its start was left for the first time.
    begins, ends : (float, float) or None
        East and north of the first and the last fix, on the grid of the first lane.
    perhaps_two : bool
        Whether it may also be two walks of one lane.
    """

    part: tuple[float, float] | None
    fits: tuple[LaneFit, ...]
    left_s: tuple[tuple[str, float], ...]
    span_s: tuple[float, float] | None
    begins: tuple[float, float]
    ends: tuple[float, float]
    perhaps_two: bool = False

    def left(self, lane: str) -> float | None:
        """Give when the start of a lane was left."""
        return dict(self.left_s).get(lane)


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """A file that was handed in: its track and walks, or why there are none.

    ``digest`` is of its content; "" where nobody asked.
    """

    file: str
    track: Track | None = None
    walks: tuple[FoundWalk, ...] = ()
    problem: str | None = None
    digest: str = ""


def look_through(file: str, track: Track, lanes: Sequence[Lane], settings: Settings) -> Recording:
    """Find the walks of a recording, and how well each fits the lanes."""
    try:
        clean = clean_track(track, lanes[0].card.grid, settings.cleaning)
    except InputRefusedError as refused:
        return Recording(file=file, problem=str(refused))
    if len(clean) < 2:
        return Recording(file=file, problem=sentence("recording-one-fix", file=file))
    walks = [Stretch(clean=clean)]
    if clean.timed:
        walks = parted(clean, lanes, settings.grading)
    found = tuple(_found(walk, lanes, settings.grading, whole=len(walks) == 1) for walk in walks)
    return Recording(file=file, track=track, walks=found)


def _found(
    stretch: Stretch, lanes: Sequence[Lane], settings: GradingSettings, *, whole: bool
) -> FoundWalk:
    clean = stretch.clean
    places = even_places(clean.places(), settings.path_step_m)
    span = (float(clean.time_s[0]), float(clean.time_s[-1])) if clean.timed else None
    left = [(lane.name, _start_left(clean, lane, settings)) for lane in lanes]
    return FoundWalk(
        part=None if whole else span,
        fits=fit_lanes(places, lanes, settings),
        left_s=tuple((name, at) for name, at in left if at is not None) if clean.timed else (),
        span_s=span,
        begins=(float(clean.east_m[0]), float(clean.north_m[0])),
        ends=(float(clean.east_m[-1]), float(clean.north_m[-1])),
        perhaps_two=stretch.perhaps_two,
    )


def _start_left(clean: CleanTrack, lane: Lane, settings: GradingSettings) -> float | None:
    """Give when the start was left: the last moment at it before the first one well away.

    Less the time to walk from the start to there.
    """
    away_m = np.hypot(clean.east_m - lane.points[0, 0], clean.north_m - lane.points[0, 1])
    at_start = np.flatnonzero(away_m <= settings.start_m)
    if len(at_start) == 0:
        return None
    gone = np.flatnonzero(away_m[at_start[0] :] > settings.start_left_m)
    if len(gone) == 0:
        return None
    before = at_start[at_start < at_start[0] + gone[0]]
    last = before[-1]
    return float(clean.time_s[last]) - float(away_m[last]) / settings.walking_m_s


def part_of(track: Track, part: tuple[float, float] | None) -> Track:
    """Give a part of a recording by its times, the ends included."""
    if part is None:
        return track
    inside = (track.time_s >= part[0]) & (track.time_s <= part[1])
    return taken(track, np.flatnonzero(inside))


def taken(track: Track, index: NDArray[np.int64]) -> Track:
    """Give some fixes of a track."""
    columns = ("time_s", "longitude_deg", "latitude_deg", "elevation_m", "hdop", "cadence_per_min",
               "segment")  # fmt: skip
    return replace(track, **{name: getattr(track, name)[index] for name in columns})


def put_forward(track: Track, by_s: float) -> Track:
    """Give a track with its clock put forward by so many seconds."""
    return track if by_s == 0.0 else replace(track, time_s=track.time_s + by_s)


def put_together(tracks: Sequence[Track]) -> Track:
    """Give the parts of one walk as one recording, in order of their first times."""
    if len(tracks) == 1:
        return tracks[0]
    first_s = [float(np.nanmin(one.time_s)) if np.isfinite(one.time_s).any() else np.inf
               for one in tracks]  # fmt: skip
    parts = [tracks[place] for place in np.argsort(first_s, kind="stable")]
    segments, number = [], 0
    for part in parts:
        segments.append(part.segment + number)
        number += int(part.segment.max()) + 1
    columns = ("time_s", "longitude_deg", "latitude_deg", "elevation_m", "hdop", "cadence_per_min")
    return Track(
        **{name: np.concatenate([getattr(part, name) for part in parts]) for name in columns},
        segment=np.concatenate(segments),
        notes=tuple(dict.fromkeys(note for part in parts for note in part.notes)),
        source=" + ".join(part.source for part in parts),
    )
