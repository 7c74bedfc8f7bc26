"""The demo's files, as text: plan, recording, log."""

from __future__ import annotations

import csv
import datetime as dt
import io
from itertools import pairwise

import gpxpy.gpx
import numpy as np
from walks.random_drift import drift
from walks.receivers import Receiver, noise_m

from audit.units import FloatArray
from demo.course import (
    GRID_MAGNETIC_ANGLE_DEG,
    NOTES,
    ORDER,
    PACES_PER_100M,
    POINTS,
    SQUARE,
    card,
    to_geographic,
)
from demo.ground import Ground
from demo.story import Story

NAME = "Fernbank Plateau, compass afternoon"
BEGIN = dt.datetime(2026, 9, 19, 17, 5, tzinfo=dt.UTC)
SIMULATED = (
    "Simulated walk of an invented course, made for the demo of leg-audit. Nobody walked it. "
    "The heights are of the real ground."
)
RECEIVER = Receiver(
    noise_m=3.0,
    correlation_s=40.0,
    slow_m=1.0,
    smoothing_s=4.0,
    white_m=0.2,
    interval_s=3.0,
    moved_m=0.0,
    decimals=7,
)
SILENCE_S = (4_780, 4_850)
"""Seconds in which the receiver has no fix."""
SPIKES = ((700, 75.0, 20.0), (1_420, -40.0, 110.0))
"""Number of a fix, and how far it jumps east and north in metres."""


def plan_text() -> str:
    """Give plan.toml."""
    course = (
        "# An invented course on real ground, for the demo of leg-audit.\n"
        "[course]\n"
        f'name = "{NAME}"\n'
        f"date = {BEGIN.date().isoformat()}\n"
        'grid = "auto"\n'
        f"grid_magnetic_angle_deg = {GRID_MAGNETIC_ANGLE_DEG}  # as printed on the map, east positive\n"
        f"paces_per_100m = {PACES_PER_100M}\n"
        "arrival_radius_m = 30\n"
    )
    points = [
        f'[[point]]\nname = "{name}"\nposition = "{SQUARE} {east} {north}"\n'
        for name, (east, north) in POINTS.items()
    ]
    ends = pairwise(ORDER)
    legs = [
        f'[[leg]]\nfrom = "{start}"\nto = "{end}"\n'
        f"grid_azimuth_deg = {leg['grid']}\n"
        f"magnetic_azimuth_deg = {leg['magnetic']}\n"
        f"distance_m = {leg['distance']:.0f}\n"
        f"paces = {leg['paces']:.0f}\n" + (f'note = "{note}"\n' if note else "")
        for (start, end), leg, note in zip(ends, card(), NOTES, strict=True)
    ]
    return "\n".join([course, *points, *legs])


def log_text(story: Story) -> str:
    """Give log.csv."""
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(["leg", "magnetic_azimuth_deg", "paces", "arrived", "note"])
    for number, leg in enumerate(story.log, start=1):
        arrived = f"{BEGIN + dt.timedelta(seconds=leg.arrived):%H:%M}Z"
        table.writerow([number, leg.magnetic_deg, f"{leg.paces:.0f}", arrived, leg.note])
    return text.getvalue()


def gpx_text(story: Story, ground: Ground, rng: np.random.Generator) -> str:
    """Give walk.gpx: the walk as a receiver would have recorded it."""
    places, _ = story.trail.arrays()
    seen = places + noise_m(rng, RECEIVER, len(places))
    heights = ground.heights_m(*to_geographic(places)) + drift(rng, len(places), 4.0, 120.0)
    seconds = np.arange(0, len(places), int(RECEIVER.interval_s))
    seconds = seconds[(seconds < SILENCE_S[0]) | (seconds > SILENCE_S[1])]
    seen, heights = seen[seconds], heights[seconds]
    for fix, east, north in SPIKES:
        seen[fix] += (east, north)
    return _gpx(seconds, *to_geographic(seen), heights)


def _gpx(
    seconds: np.ndarray, longitude_deg: FloatArray, latitude_deg: FloatArray, height_m: FloatArray
) -> str:
    document = gpxpy.gpx.GPX()
    document.creator = "leg-audit, tests/make_demo.py"
    document.name = f"{NAME} (simulated)"
    document.description = SIMULATED
    segment = gpxpy.gpx.GPXTrackSegment()
    document.tracks.append(gpxpy.gpx.GPXTrack(name="simulated walk"))
    document.tracks[0].segments.append(segment)
    for second, longitude, latitude, height in zip(
        seconds.tolist(), longitude_deg, latitude_deg, height_m, strict=True
    ):
        segment.points.append(
            gpxpy.gpx.GPXTrackPoint(
                latitude=round(float(latitude), RECEIVER.decimals),
                longitude=round(float(longitude), RECEIVER.decimals),
                elevation=round(float(height), 1),
                time=BEGIN + dt.timedelta(seconds=second),
            )
        )
    return str(document.to_xml(prettyprint=True)) + "\n"
