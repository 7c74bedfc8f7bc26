"""debrief.gpx: plan as a route, portions as tracks, claims and points as waypoints (GPX 1.1)."""

from __future__ import annotations

import datetime as dt
import re
from typing import TYPE_CHECKING

import numpy as np

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.measurement.leg_measures import LegMeasures, Place
from audit.moments import calendar_moment
from audit.reports import digits, wording
from audit.reports.printable import printable
from audit.words import PLAIN_ENGLISH, spoken

if TYPE_CHECKING:
    import gpxpy.gpx

_DECIMALS = 7
_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def render_gpx(debrief: Debrief) -> str:
    """Give the text of debrief.gpx.

    In plain English, degrees and metres, whatever words are in force: it is for programs.
    ``<rte>`` is the plan, one ``<trk>`` a leg that was walked, from leaving to the claim;
    ``<wpt>`` are the points, the claims, and what each missed by. Times only where the
    recording has them.
    """
    with spoken(PLAIN_ENGLISH):
        gpx = _document(debrief)
    text: str = gpx.to_xml(version="1.1")
    return f"{text}\n"


def _document(debrief: Debrief) -> gpxpy.gpx.GPX:
    from gpxpy.gpx import GPX, GPXRoute  # noqa: PLC0415

    gpx = GPX()
    gpx.creator = "leg-audit"
    gpx.name = gpx_text(debrief.card.name)
    route = GPXRoute(name=gpx_text(debrief.card.name))
    route.points = _planned(debrief)
    gpx.routes.append(route)
    gpx.waypoints = [*_points(debrief), *_claims(debrief)]
    gpx.tracks = [
        _walked(debrief, leg, measures)
        for leg in debrief.legs
        if (measures := leg.audit.measures) is not None
    ]
    return gpx


def _planned(debrief: Debrief) -> list[gpxpy.gpx.GPXRoutePoint]:
    from gpxpy.gpx import GPXRoutePoint  # noqa: PLC0415

    points = []
    for number, leg in enumerate(debrief.legs):
        card = leg.audit.card
        names = [card.start.name, *[None] * (len(card.line) - 2), card.end.name]
        begin = 0 if number == 0 or debrief.legs[number - 1].audit.card.end != card.start else 1
        longitude, latitude = debrief.card.grid.to_geographic(
            np.ascontiguousarray(card.line[:, 0]), np.ascontiguousarray(card.line[:, 1])
        )
        for place in range(begin, len(card.line)):
            point = GPXRoutePoint(*gpx_place(latitude[place], longitude[place]))
            name = names[place]
            if name is None:
                point.type = "via"
            else:
                point.name = gpx_text(name)
            points.append(point)
    return points


def _points(debrief: Debrief) -> list[gpxpy.gpx.GPXWaypoint]:
    from gpxpy.gpx import GPXWaypoint  # noqa: PLC0415

    made = []
    for point in debrief.points:
        one = GPXWaypoint(*gpx_place(point.latitude_deg, point.longitude_deg))
        one.name, one.type = gpx_text(point.name), "point"
        made.append(one)
    return made


def _claims(debrief: Debrief) -> list[gpxpy.gpx.GPXWaypoint]:
    from gpxpy.gpx import GPXWaypoint  # noqa: PLC0415

    made = []
    for leg in debrief.legs:
        measures = leg.audit.measures
        if measures is None:
            continue
        claim = measures.claim
        one = GPXWaypoint(
            *gpx_place(claim.latitude_deg, claim.longitude_deg), time=_time(debrief, claim)
        )
        one.name, one.type = gpx_text(f"Claim of leg {leg.name}"), "claim"
        end = leg.audit.card.end.name
        one.description = gpx_text(f"Miss: {wording.miss(measures)} of {end}. {_why(leg)}".strip())
        made.append(one)
    return made


def _why(leg: LegDebrief) -> str:
    said = wording.cause_told(leg)
    return f"Consistent with {said}." if said else ""


def _walked(debrief: Debrief, leg: LegDebrief, measures: LegMeasures) -> gpxpy.gpx.GPXTrack:
    from gpxpy.gpx import GPXTrack, GPXTrackPoint, GPXTrackSegment  # noqa: PLC0415

    clean = debrief.clean
    track = GPXTrack(name=gpx_text(f"Leg {leg.name}"))
    half_deg = wording.half_interval_deg(measures)
    azimuth_error = wording.azimuth_error(measures, leg.settings.quality)
    track.description = gpx_text(
        f"Walked {digits.azimuth(measures.heading.azimuth.degrees, half_deg)} grid, "
        f"{azimuth_error}; {wording.distance_error(measures)}"
    )
    part = slice(measures.start.fix, measures.claim.fix + 1)
    longitude, latitude = debrief.card.grid.to_geographic(clean.east_m[part], clean.north_m[part])
    breaks = {gap.before + 1 for gap in clean.gaps}
    segment = GPXTrackSegment()
    for offset, (lon, lat) in enumerate(zip(longitude, latitude, strict=True)):
        place = measures.start.fix + offset
        if place in breaks and segment.points:
            track.segments.append(segment)
            segment = GPXTrackSegment()
        height = float(clean.elevation_m[place])
        point = GPXTrackPoint(
            *gpx_place(lat, lon),
            elevation=None if np.isnan(height) else round(height, 1),
            time=calendar_moment(float(clean.time_s[place])) if clean.timed else None,
        )
        segment.points.append(point)
    track.segments.append(segment)
    return track


def gpx_place(latitude_deg: float, longitude_deg: float) -> tuple[float, float]:
    """Give latitude and longitude; GPX 1.1 has longitudes up to, but not including, 180."""
    longitude = round(float(longitude_deg), _DECIMALS)
    latitude = round(float(latitude_deg), _DECIMALS)
    return latitude, -180.0 if longitude >= 180.0 else longitude


def _time(debrief: Debrief, place: Place) -> dt.datetime | None:
    timed = debrief.clean.timed and place.time_s is not None
    return calendar_moment(place.time_s) if timed and place.time_s is not None else None


def gpx_text(words: str) -> str:
    """Leave out of a name what XML cannot hold, and control characters."""
    return _NOT_XML.sub(" ", printable(words))
