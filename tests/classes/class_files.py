"""A made class as the files an instructor has: plans, roster, recordings."""

from __future__ import annotations

import csv
import datetime as dt
import io
from dataclasses import dataclass
from pathlib import Path

from audit.track import Track
from classes.made_class import MadeClass

SIMULATED = "Simulated walk of an invented course, made for tests of leg-audit. Nobody walked it."


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassFiles:
    """Where the files of a class are."""

    plans: tuple[Path, ...]
    roster: Path
    tracks: tuple[Path, ...]


def write_class(made: MadeClass, folder: Path) -> ClassFiles:
    """Write a class into a folder."""
    recordings = folder / "recordings"
    recordings.mkdir(parents=True, exist_ok=True)
    date = made.walks[0].member.start.date().isoformat()
    plans = []
    for lane in made.lanes:
        path = folder / f"{lane.name.lower().replace(' ', '-')}.toml"
        path.write_text(lane.plan_text(date), encoding="utf-8")
        plans.append(path)
    by_file = {walk.member.file: walk for walk in made.walks}
    tracks = []
    for walk in made.walks:
        member = walk.member
        text = gpx_text(by_file[member.holds or member.file].track)
        path = recordings / member.file
        path.write_text(text[: len(text) // 3] if member.broken else text, encoding="utf-8")
        tracks.append(path)
    roster = folder / "roster.csv"
    roster.write_text(roster_text(made), encoding="utf-8")
    return ClassFiles(plans=tuple(plans), roster=roster, tracks=tuple(tracks))


def roster_text(made: MadeClass) -> str:
    """Give roster.csv."""
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(["name", "lane", "device", "file", "start", "attempt", "compass"])
    for walk in made.walks:
        one = walk.member
        start = f"{one.start:%Y-%m-%dT%H:%M:%SZ}"
        lane = made.lanes[one.lane].name
        table.writerow([one.name, lane, one.device, one.file, start, one.attempt, one.compass])
    return text.getvalue()


def gpx_text(track: Track) -> str:
    """Give a recording as GPX 1.1."""
    begin = dt.datetime.fromtimestamp(0, dt.UTC)
    fixes = [
        f'<trkpt lat="{latitude:.7f}" lon="{longitude:.7f}">'
        f"<time>{begin + dt.timedelta(seconds=second):%Y-%m-%dT%H:%M:%SZ}</time></trkpt>\n"
        for second, longitude, latitude in zip(
            track.time_s.tolist(),
            track.longitude_deg.tolist(),
            track.latitude_deg.tolist(),
            strict=True,
        )
    ]
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<gpx version="1.1" creator="leg-audit tests" '
        'xmlns="http://www.topografix.com/GPX/1/1">\n'
        f"<metadata><desc>{SIMULATED}</desc></metadata>\n<trk><trkseg>\n"
        + "".join(fixes)
        + "</trkseg></trk>\n</gpx>\n"
    )
