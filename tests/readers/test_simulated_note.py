"""A recording that calls itself simulated is told as such; what else it says of itself is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from audit.readers.gpx_track import read_track

NOTE = "The recording says of itself that it is simulated."
POINT = '<trkpt lat="36.6" lon="-84.2"><time>2026-09-19T17:05:00Z</time></trkpt>'


def notes(folder: Path, head: str, in_track: str = "", in_point: str = "") -> tuple[str, ...]:
    point = POINT.replace("</trkpt>", f"{in_point}</trkpt>")
    text = f'<gpx version="1.1" creator="hand">{head}<trk>{in_track}<trkseg>{point}</trkseg></trk></gpx>'
    path = folder / "walk.gpx"
    path.write_text(text)
    return read_track(path).notes


@pytest.mark.parametrize(
    ("head", "in_track"),
    [
        ("<metadata><desc>Simulated walk of J. Doe</desc></metadata>", ""),
        ("<metadata><keywords>course, SIMULATED</keywords></metadata>", ""),
        ("<name>a simulated walk</name>", ""),  # GPX 1.0
        ("", "<name>simulated</name>"),
        ("", "<desc>not real, simulated</desc>"),
    ],
)
def test_it_is_told_and_nothing_else_is(tmp_path, head, in_track):
    assert notes(tmp_path, head, in_track) == (NOTE,)


@pytest.mark.parametrize(
    ("head", "in_track", "in_point"),
    [
        ("<metadata><desc>An evening walk</desc></metadata>", "<name>Evening</name>", ""),
        ("<metadata><author><name>Simulated Sam</name></author></metadata>", "", ""),
        ("<wpt lat='1' lon='2'><name>simulated</name></wpt>", "", ""),
        ("", "", "<name>simulated</name>"),
    ],
)
def test_a_recording_that_does_not_say_so_is_taken_as_real(tmp_path, head, in_track, in_point):
    assert NOTE not in notes(tmp_path, head, in_track, in_point)
