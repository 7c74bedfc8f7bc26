"""Runs of points read at once: the same as point by point, whatever the file holds.

The judge is the parser (expat), which hears every point when nothing is read at once;
test_gpx_track.py holds the whole reader against gpxpy.
"""

from __future__ import annotations

import gzip
import re
from pathlib import Path
from unittest import mock

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.errors import InputRefusedError
from audit.readers import gpx_passage
from audit.readers.gpx_passage import pass_over
from audit.readers.gpx_points import GatheredPoints
from audit.readers.gpx_runs import GpxRuns
from audit.readers.gpx_track import read_track
from audit.readers.xml_guard import guarded_parser
from audit.settings import ReadingSettings, Settings

HEAD = '<?xml version="1.0"?>\n<gpx version="1.1">\n<trk><name>A</name><trkseg>\n'
TAIL = "</trkseg></trk>\n</gpx>\n"
COLUMNS = ("time_s", "longitude_deg", "latitude_deg", "elevation_m", "hdop", "cadence_per_min")


class Singly(GpxRuns):
    """Lets the parser hear every point."""

    def __init__(self, parser: object, points: object, *, singly: bool) -> None:  # noqa: ARG002
        super().__init__(parser, points, singly=True)


def told(path: Path) -> object:
    """All that reading gives, or its refusal."""
    try:
        track = read_track(path, keep_names=True)
    except InputRefusedError as refusal:
        return str(refusal)
    columns = [getattr(track, name).tobytes() for name in COLUMNS]
    return columns, track.segment.tolist(), track.notes


def told_singly(path: Path) -> object:
    with mock.patch.object(gpx_passage, "GpxRuns", Singly):
        return told(path)


def heard_and_read(path: Path) -> tuple[int, int]:
    """How many points a file has, and how many of them the parser did not hear."""
    parser = guarded_parser(path.name)
    points = GatheredPoints(parser, path.name, ReadingSettings(), keep_names=False)
    runs = GpxRuns(parser, points, singly=False)
    content = path.read_bytes()
    for begin in range(0, len(content), 1 << 18):
        runs.feed(content[begin : begin + (1 << 18)])
    runs.feed(b"")
    return points.complete, runs.at_once


def test_every_recording_at_hand_reads_the_same(shared_tracks: Path) -> None:
    paths = sorted(shared_tracks.glob("*.gpx"))
    assert len(paths) > 20
    for path in paths:
        assert told(path) == told_singly(path), path.name


@pytest.mark.parametrize("cut", [100_000, 1_000_001, 1_500_123])
def test_a_large_recording_that_breaks_off_is_told_with_the_same_line_and_bytes(
    shared_tracks: Path, tmp_path: Path, cut: int
) -> None:
    path = tmp_path / "walk.gpx"
    path.write_bytes((shared_tracks / "hike-watch-60km.gpx").read_bytes()[:cut])
    assert told(path) == told_singly(path)
    assert "breaks off in line" in str(told(path))


@pytest.mark.parametrize(
    ("name", "share"),
    [
        ("walk-1hz-woods", 0.97),
        ("run-watch-hr", 0.97),
        ("trek-hr-temp", 0.97),
        ("hike-watch-60km", 0.97),
        ("hike-handheld-gaps", 0.9),
        ("phone-hdop", 0.9),
        ("logger-years", 0.9),
    ],
)
def test_what_recorders_write_is_read_at_once(shared_tracks: Path, name: str, share: float) -> None:
    points, at_once = heard_and_read(shared_tracks / f"{name}.gpx")
    assert at_once >= share * points


def test_a_large_packed_recording_is_read_at_once(shared_tracks: Path, tmp_path: Path) -> None:
    path = tmp_path / "large.gpx"
    path.write_bytes(gzip.decompress((shared_tracks / "large-walk.gpx.gz").read_bytes()))
    points, at_once = heard_and_read(path)
    assert points == 204_540
    assert at_once >= 0.99 * points


def point(number: int, inner: str = "", end: str = "Z") -> str:
    return (
        f'<trkpt lat="{46 + number / 1e5:.5f}" lon="7.5"><ele>{800 + number}.5</ele>'
        f"<time>2026-10-03T08:{number // 60 % 60:02d}:{number % 60:02d}{end}</time>{inner}</trkpt>\n"
    )


def run(count: int, inner: str = "", end: str = "Z") -> str:
    return "".join(point(number, inner, end) for number in range(count))


ODD = [
    run(40),
    run(40, end=".500Z"),
    run(40, end=".1234567Z"),
    run(40, end=".Z"),
    run(40, end=".12-Z"),
    run(30, end="+02:00"),
    run(30).replace("2026-10-03T", ""),
    run(30).replace("2026-10-03T08:", "1"),
    re.sub("<time>[^<]*", "<time>5", run(30)),
    re.sub("<time>[^<]*", "<time>", run(30)),
    re.sub("<time>[^<]*", "<time>Z", run(30)),
    run(30, end=""),
    run(30).replace('lat="', 'lon="', 30).replace('lon="7.5"', 'lat="7.5"'),
    run(30).replace("08:00:1", "08:00:7"),
    run(30).replace("2026-10-03T08", "2026-13-03T08"),
    run(30).replace("2026-10-03T08", "1601-10-03T24"),
    run(30).replace("2026-10-03T", "20261003T08"),
    run(30).replace("T08:00:2", "T8:00:20"),
    run(30).replace("80", "8.0.", 3),
    run(30).replace(">80", ">--80"),
    run(30).replace(">80", ">9999999999999980"),
    run(30).replace(">80", ">" + "8" * 400),
    run(30).replace('lat="46', 'lat="96'),
    run(30).replace('lat="46', "lat='46").replace('" lon', "' lon"),
    run(30).replace(' lon="7.5"', ""),
    run(30).replace("<ele>", "<ele> ").replace("</ele>", "\n</ele>"),
    run(30).replace("<ele>", "<ele>1</ele><ele>"),
    run(30).replace("<ele>", "<ele/><ele>"),
    run(30).replace("800.5", "<b>800.5</b>"),
    run(30).replace("800.5", "80<!-- 7 -->0.5"),
    run(30).replace("800.5", "<![CDATA[800.5]]>"),
    run(30).replace("800.5", "&#56;00.5"),
    run(30).replace("800.5", "&amp;"),
    run(30).replace("trkpt", "g:trkpt"),
    run(30).replace("\n", "x\n"),
    run(30).replace("\n", "5\n"),
    run(30).replace("\n", "\x01"),
    run(30).replace("\n", "\r\n"),
    run(30).replace("800", "8\x010"),
    "<!-- " + run(30) + "-->",
    "<![CDATA[" + run(30) + "]]>",
    "<?note " + run(30) + "?>",
    "<deeper>" + run(30) + "</deeper>",
    '<trkpt lat="1" lon="2">' + run(30) + "</trkpt>",
    "</trkseg><trkseg>" + run(30),
    "</trkseg></trk><trk><name>simulated</name><trkseg>" + run(30),
    run(30, "<sat>7</sat><hdop>1.2</hdop>"),
    run(30, "<hdop>good</hdop>"),
    run(30, "<hdop></hdop>"),
    run(30, "<hdop>-</hdop>"),
    run(30, "<name>TP0001</name>"),
    run(30, "<extensions><n3:T><n3:hr>147</n3:hr><n3:cad>77</n3:cad></n3:T></extensions>"),
    run(30, "<extensions><cad>1</cad><cad>2</cad></extensions>"),
    run(30, "<extensions><x><cad>1</cad><ele>2</ele></x></extensions>"),
    run(30, '<extensions><x xmlns:y="http://example.org/1"><y:cad>1</y:cad></x></extensions>'),
    run(30, '<extensions><x a="1" a="2"/></extensions>'),
    run(30, "<extensions><x></extensions></x>"),
    run(30, "<desc>5 > 4</desc>"),
    run(30, "<desc>]]></desc>"),
    run(30, "<desc>\u00fc 5</desc>"),
    "".join(point(number, "<speed>1</speed>" * (number % 2)) for number in range(60)),
    "".join(point(number, f"<x{number % 7}/>") for number in range(60)),
    '<trkpt lat="1" lon="2"/>' * 30,
    "<rtept/>" * 3,
]


@pytest.mark.parametrize("number", range(len(ODD)))
@pytest.mark.parametrize("around", [0, 50])
def test_every_oddity_reads_the_same(tmp_path: Path, number: int, around: int) -> None:
    path = tmp_path / "walk.gpx"
    path.write_text(HEAD + run(around) + ODD[number] + run(around) + TAIL, encoding="utf-8")
    assert told(path) == told_singly(path)


@settings(max_examples=150, deadline=None)
@given(
    parts=st.lists(st.sampled_from(ODD), min_size=1, max_size=4),
    edits=st.lists(
        st.tuples(st.floats(0, 1), st.integers(0, 12), st.sampled_from(
            [b"", b"<", b">", b"-->", b"<!--", b"\x01", b"]]>", b"<![CDATA[", b"&", b"\xff", b"9",
             b"</trkpt>", b"<trkpt ", b'"', b".", b"Z", b"T", b"\0"])),
        max_size=3,
    ),
    piece=st.sampled_from([64, 1000, 5000, 1 << 18]),
)  # fmt: skip
def test_whatever_is_damaged_reads_the_same(
    tmp_path_factory: pytest.TempPathFactory,
    parts: list[str],
    edits: list[tuple[float, int, bytes]],
    piece: int,
) -> None:
    content = (HEAD + run(30) + "".join(parts) + run(30) + TAIL).encode()
    for share, length, new in edits:
        place = int(share * len(content))
        content = content[:place] + new + content[place + length :]
    path = tmp_path_factory.mktemp("damaged") / "walk.gpx"
    path.write_bytes(content)
    with mock.patch("audit.readers.gpx_bytes.PIECE_BYTES", piece):
        assert told(path) == told_singly(path)


def test_no_more_points_are_read_at_once_than_are_allowed(tmp_path: Path) -> None:
    path = tmp_path / "walk.gpx"
    path.write_text(HEAD + run(200) + TAIL, encoding="utf-8")
    with pytest.raises(InputRefusedError, match="holds more than 150 points"):
        read_track(path, settings=Settings(reading=ReadingSettings(most_fixes=150)))
    assert len(read_track(path, settings=Settings(reading=ReadingSettings(most_fixes=200)))) == 200


@pytest.mark.parametrize("encoding", ["iso-8859-1", "utf-16", "cp1252", "koi8-r"])
def test_other_encodings_read_the_same(tmp_path: Path, encoding: str) -> None:
    text = (HEAD + run(100) + TAIL).replace('"1.0"', f'"1.0" encoding="{encoding}"', 1)
    path = tmp_path / "walk.gpx"
    path.write_bytes(text.encode(encoding))
    assert told(path) == told_singly(path)
    np.testing.assert_equal(len(read_track(path)), 100)


def test_a_file_whose_points_are_all_unlike_is_hardly_slower(tmp_path: Path) -> None:
    # By what is done, not by the clock: few points are looked at for a form.
    path = tmp_path / "walk.gpx"
    unlike = "".join(point(number, f"<x{number % 7}/>") for number in range(20_000))
    path.write_text(HEAD + unlike + TAIL, encoding="utf-8")
    with mock.patch("audit.readers.gpx_runs.form_of", return_value=None) as looked:
        pass_over(path, ReadingSettings())
    assert looked.call_count < 100
