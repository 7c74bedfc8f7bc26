"""Tracks read from GPX give what gpxpy, a general-purpose library, gives; differences are listed.

On purpose the reader takes more than gpxpy 1.6 does:
  * one value that is no number, or a <fix> outside of the standard, does not cost the file;
  * elements with a prefix (<gpx:trkpt>) and times with blanks around them are read;
  * a file that breaks off gives what came before.
"""

from __future__ import annotations

import datetime as dt
import io
from pathlib import Path

import gpxpy
import gpxpy.gpx
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from real.recordings import MENDED, REAL

from audit.errors import InputRefusedError
from audit.readers.gpx_track import read_track
from audit.track import Track

POINT = '<trkpt lat="46.5" lon="7.25"><ele>812.5</ele><time>2026-10-03T08:00:00Z</time></trkpt>'


def gpx(*points: str, root: str = '<gpx version="1.1">') -> str:
    return f"<?xml version='1.0'?>{root}<trk><trkseg>{''.join(points)}</trkseg></trk></gpx>"


def read(folder: Path, content: str | bytes, **options: bool) -> Track:
    path = folder / "walk.gpx"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return read_track(path, **options)


def judged_by_gpxpy(text: str) -> dict[str, list[float]]:
    """Columns of the track as gpxpy has them; NaN for none, naive times as UTC."""
    columns: dict[str, list[float]] = {
        name: [] for name in ("lon", "lat", "ele", "time", "hdop", "segment")
    }
    number = -1
    for track in gpxpy.parse(io.StringIO(text)).tracks:
        for segment in track.segments:
            number += 1
            for point in segment.points:
                moment = point.time
                if moment is not None and moment.tzinfo is None:
                    moment = moment.replace(tzinfo=dt.UTC)
                columns["lon"].append(point.longitude)
                columns["lat"].append(point.latitude)
                columns["ele"].append(np.nan if point.elevation is None else point.elevation)
                columns["time"].append(np.nan if moment is None else moment.timestamp())
                hdop = point.horizontal_dilution
                columns["hdop"].append(np.nan if hdop is None else hdop)
                columns["segment"].append(number)
    return columns


def assert_same(track: Track, judge: dict[str, list[float]]) -> None:
    # Bit for bit: both turn the same text into the same double; times to the microsecond.
    np.testing.assert_array_equal(track.longitude_deg, judge["lon"])
    np.testing.assert_array_equal(track.latitude_deg, judge["lat"])
    np.testing.assert_array_equal(track.elevation_m, judge["ele"])
    np.testing.assert_array_equal(track.hdop, judge["hdop"])
    np.testing.assert_array_equal(track.segment, judge["segment"])
    np.testing.assert_allclose(track.time_s, judge["time"], rtol=0, atol=1e-6)


@pytest.mark.parametrize("name", REAL)
def test_a_real_recording_reads_as_gpxpy_reads_it(shared_tracks: Path, name: str) -> None:
    path = shared_tracks / f"{name}.gpx"
    assert_same(read_track(path), judged_by_gpxpy(path.read_text(encoding="utf-8")))


def test_every_real_recording_is_in_one_of_the_lists(shared_tracks: Path) -> None:
    refused = {"odd-latin1", "odd-trk-no-seg", "odd-unicode", "rte-plan-only"}
    present = {path.stem for path in shared_tracks.glob("*.gpx")}
    assert present == {*REAL, *MENDED} | refused
    for name in refused:
        with pytest.raises(InputRefusedError):
            read_track(shared_tracks / f"{name}.gpx")


def test_a_fix_value_outside_of_the_standard_costs_gpxpy_the_file_but_not_us(
    shared_tracks: Path,
) -> None:
    path = shared_tracks / "bad-fix-value.gpx"
    text = path.read_text(encoding="utf-8")
    with pytest.raises(gpxpy.gpx.GPXException):
        gpxpy.parse(text)
    assert_same(
        read_track(path),
        judged_by_gpxpy(text.replace("<fix>", "<src>").replace("</fix>", "</src>")),
    )


def test_ways_of_writing_that_gpxpy_takes_for_nothing(tmp_path: Path) -> None:
    prefixed = gpx(POINT, POINT).replace("<", "<g:").replace("<g:/", "</g:").replace("<g:?", "<?")
    prefixed = prefixed.replace("<g:gpx", '<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"')
    assert judged_by_gpxpy(prefixed)["lat"] == []
    assert_same(read(tmp_path, prefixed), judged_by_gpxpy(gpx(POINT, POINT)))
    blanks = gpx(POINT.replace("<time>", "<time>\n  ").replace("</time>", "\n</time>"))
    assert np.isnan(judged_by_gpxpy(blanks)["time"]).all()
    assert_same(read(tmp_path, blanks), judged_by_gpxpy(gpx(POINT)))


def test_a_prefix_that_was_never_declared_costs_nothing(tmp_path: Path) -> None:
    extension = "<extensions><tpx:hr>99</tpx:hr></extensions></trkpt>"
    track = read(tmp_path, gpx(POINT.replace("</trkpt>", extension)))
    assert_same(track, judged_by_gpxpy(gpx(POINT)))
    assert track.notes == ()


numbers = st.floats(allow_nan=False, allow_infinity=False, min_value=-9000, max_value=9000)
points = st.builds(
    gpxpy.gpx.GPXTrackPoint,
    latitude=st.floats(min_value=-90, max_value=90),
    longitude=st.floats(min_value=-180, max_value=180),
    elevation=st.none() | numbers,
    time=st.none()
    | st.datetimes(
        min_value=dt.datetime.fromisoformat("1901-01-01"),
        max_value=dt.datetime.fromisoformat("2100-01-01"),
        timezones=st.just(dt.UTC)
        | st.none()
        | st.builds(
            lambda minutes: dt.timezone(dt.timedelta(minutes=minutes)),
            st.integers(min_value=-14 * 60, max_value=14 * 60),
        ),
    ),
    horizontal_dilution=st.none() | st.floats(min_value=0, max_value=99),
    name=st.none() | st.text(alphabet=st.characters(codec="utf-8", exclude_categories=("C",))),
)


@settings(max_examples=60, deadline=None)
@given(
    tracks=st.lists(st.lists(st.lists(points, max_size=5), max_size=3), min_size=1, max_size=3),
    version=st.sampled_from(["1.0", "1.1"]),
)
def test_whatever_gpxpy_writes_is_read_as_gpxpy_reads_it(
    tmp_path_factory: pytest.TempPathFactory, tracks: list, version: str
) -> None:
    document = gpxpy.gpx.GPX()
    for segments in tracks:
        document.tracks.append(gpxpy.gpx.GPXTrack())
        for fixes in segments:
            document.tracks[-1].segments.append(gpxpy.gpx.GPXTrackSegment(fixes))
    text = document.to_xml(version=version)
    judge = judged_by_gpxpy(text)
    path = tmp_path_factory.mktemp("written")
    if not judge["lat"]:
        with pytest.raises(InputRefusedError, match=r"without a single fix|no recorded track"):
            read(path, text)
    else:
        assert_same(read(path, text), judge)


def test_cadence_is_found_in_anyones_extensions(tmp_path: Path) -> None:
    def point(inner: str) -> str:
        return f'<trkpt lat="46" lon="7">{inner}</trkpt>'

    track = read(
        tmp_path,
        gpx(
            point("<extensions><a:TPX><a:hr>1</a:hr><a:cad>58</a:cad></a:TPX></extensions>"),
            point("<extensions><cadence>59.5</cadence></extensions>"),
            point(
                "<extensions><x:deep><x:er><ns3:RunCadence>61</ns3:RunCadence></x:er></x:deep></extensions>"
            ),
            point("<cadence>62</cadence>"),
            point("<extensions><hr>63</hr></extensions>"),
        ),
    )
    np.testing.assert_array_equal(track.cadence_per_min, [58, 59.5, 61, 62, np.nan])


def test_the_hike_with_cadence_shows_its_double_paces(shared_tracks: Path) -> None:
    # shared/tracks/README.md: 59 double paces per 100 m over 60.4 km.
    track = read_track(shared_tracks / "hike-watch-60km.gpx")
    interval_s = np.diff(track.time_s)
    paces = np.nansum(track.cadence_per_min[1:] * interval_s) / 60.0
    assert paces / 604.0 == pytest.approx(59.0, abs=1.0)  # double paces per 100 m


def test_elements_of_the_same_name_deeper_down_are_not_the_points_own(tmp_path: Path) -> None:
    inside = "<extensions><log><ele>1</ele><time>1999-01-01T00:00:00Z</time></log></extensions>"
    text = gpx(POINT.replace("<ele>", inside + "<ele>"))
    assert_same(read(tmp_path, text), judged_by_gpxpy(text))


def test_points_inside_of_points_are_not_the_tracks(tmp_path: Path) -> None:
    inner = '<extensions><seen><trkpt lat="1" lon="2"><ele>9</ele></trkpt></seen></extensions>'
    text = gpx(POINT.replace("<ele>", inner + "<ele>"), POINT)
    assert_same(read(tmp_path, text), judged_by_gpxpy(text))


def test_of_a_field_given_twice_the_first_counts(tmp_path: Path) -> None:
    text = gpx(POINT.replace("</ele>", "</ele><ele>1</ele>"))
    assert_same(read(tmp_path, text), judged_by_gpxpy(text))


def test_segments_are_counted_through_the_file_empty_ones_too(tmp_path: Path) -> None:
    text = (
        "<gpx><trk><trkseg/><trkseg>" + POINT + "</trkseg></trk>"
        "<trk><trkseg>" + POINT + POINT + "</trkseg></trk></gpx>"
    )
    assert read(tmp_path, text).segment.tolist() == [1, 2, 2]


def test_names_makers_and_devices_are_not_copied_unless_asked_for(tmp_path: Path) -> None:
    text = (
        '<gpx creator="Receiver 7 of J. Doe"><metadata><name>J. Doe</name></metadata>'
        "<trk><name>Evening of J. Doe</name><src>device 4711</src><trkseg>"
        f"{POINT.replace('</trkpt>', '<name>J. Doe</name></trkpt>')}</trkseg></trk></gpx>"
    )
    assert "Doe" not in repr(read(tmp_path, text))
    assert read(tmp_path, text, keep_names=True).notes == (
        "The track that begins at point 1 is called 'Evening of J. Doe'.",
    )


def test_the_arrays_cannot_be_changed(tmp_path: Path) -> None:
    track = read(tmp_path, gpx(POINT))
    with pytest.raises(ValueError, match="read-only"):
        track.time_s[0] = 0.0
