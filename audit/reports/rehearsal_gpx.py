"""Simulated tracks for teaching (GPX 1.1): each says in its name that nobody walked it."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from audit.leg_card import LegCard
from audit.rehearsal.finished_rehearsal import LegRehearsal, WayEnd
from audit.rehearsal.teaching_tracks import MadeTrack, course_track, leg_track
from audit.reports.cause_words import cause_words
from audit.reports.gpx_report import gpx_place, gpx_text
from audit.settings import RehearsalSettings
from audit.words import PLAIN_ENGLISH, spoken

if TYPE_CHECKING:
    import gpxpy.gpx

_SAYS = (
    "SIMULATED for teaching, without receiver noise and without ordinary error. Nobody walked it."
)


def leg_gpx(card: LegCard, leg: LegRehearsal, settings: RehearsalSettings) -> str:
    """Give the likeliest way of every mistake of a leg, each as a track of its own."""
    likeliest: dict[str, WayEnd] = {}
    for end in leg.ends:
        known = likeliest.get(end.way.cause)
        if known is None or end.way.share > known.way.share:
            likeliest[end.way.cause] = end
    gpx = _new(card, f"leg {leg.leg.name}")
    for end in likeliest.values():
        made = leg_track(card, end.way, settings)
        gpx.tracks.append(_track(card, f"leg {leg.leg.name}: {_words(end)}", made))
    return f"{gpx.to_xml(version='1.1')}\n"


def course_gpx(card: LegCard, number: int, end: WayEnd, settings: RehearsalSettings) -> str:
    """Give a walk of the whole course with one mistake on one leg."""
    title = f"leg {card.legs[number].name}: {_words(end)}"
    gpx = _new(card, title)
    gpx.tracks.append(_track(card, title, course_track(card, number, end.way, settings)))
    return f"{gpx.to_xml(version='1.1')}\n"


def _new(card: LegCard, title: str) -> gpxpy.gpx.GPX:
    from gpxpy.gpx import GPX  # noqa: PLC0415 (only where tracks are asked for)

    gpx = GPX()
    gpx.creator = "leg-audit"
    gpx.name = gpx_text(f"SIMULATED: {card.name}, {title}")
    gpx.description = _SAYS
    return gpx


def _track(card: LegCard, title: str, made: MadeTrack) -> gpxpy.gpx.GPXTrack:
    from gpxpy.gpx import GPXTrack, GPXTrackPoint, GPXTrackSegment  # noqa: PLC0415

    track = GPXTrack(name=gpx_text(f"SIMULATED {title}"), description=_SAYS)
    segment = GPXTrackSegment()
    longitude, latitude = card.grid.to_geographic(
        made.places[:, 0].copy(), made.places[:, 1].copy()
    )
    for east, north, second in zip(longitude, latitude, made.time_s.tolist(), strict=True):
        moment = dt.datetime.fromtimestamp(second, tz=dt.UTC)
        segment.points.append(GPXTrackPoint(*gpx_place(north, east), time=moment))
    track.segments.append(segment)
    return track


def _words(end: WayEnd) -> str:
    words = f" ({end.way.words})" if end.way.words else ""
    with spoken(PLAIN_ENGLISH):  # a file for programs
        return f"{cause_words(end.way.cause)}{words}"
