"""Odd, broken, packed and wrong files: a track with a note, or one clear sentence."""

from __future__ import annotations

import gzip
import re
import zlib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.errors import InputRefusedError
from audit.readers.gpx_track import read_track
from audit.settings import ReadingSettings, Settings
from audit.track import Track
from audit.words import Words

HEAD = '<?xml version="1.0"?>\n<gpx version="1.1">\n<trk><trkseg>\n'
TAIL = "</trkseg></trk>\n</gpx>\n"


def fix(number: int, inner: str = "") -> str:
    clock = f"2026-10-03T08:{number // 60:02d}:{number % 60:02d}Z"
    return (
        f'<trkpt lat="{46 + number / 1e5:.5f}" lon="7.5"><ele>{800 + number}</ele>'
        f"<time>{clock}</time>{inner}</trkpt>\n"
    )


def walk(fixes: int = 20) -> str:
    return HEAD + "".join(fix(number) for number in range(fixes)) + TAIL


def read(folder: Path, content: bytes | str, name: str = "walk.gpx", **options: object) -> Track:
    path = folder / name
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return read_track(path, **options)


def sentence(folder: Path, content: bytes | str, **options: object) -> str:
    with pytest.raises(InputRefusedError) as refusal:
        read(folder, content, **options)
    assert len(refusal.value.problems) == 1
    return str(refusal.value)


def assert_same(one: Track, other: Track) -> None:
    for name in ("time_s", "longitude_deg", "latitude_deg", "elevation_m", "segment"):
        np.testing.assert_array_equal(getattr(one, name), getattr(other, name))


# Encodings and packing


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "iso-8859-1", "cp1252", "ascii"]
)
def test_the_encoding_that_the_file_names_or_marks_is_used(tmp_path: Path, encoding: str) -> None:
    name = "Zurueck" if encoding == "ascii" else "Zurück"
    declared = {"utf-8-sig": "utf-8", "cp1252": "windows-1252"}.get(encoding, encoding)
    text = walk().replace('"1.0"', f'"1.0" encoding="{declared}"', 1)
    text = text.replace("<trkseg>", f"<name>{name}</name><trkseg>")
    track = read(tmp_path, text.encode(encoding), keep_names=True)
    assert_same(track, read(tmp_path, walk()))
    assert name in track.notes[0]


def test_letters_in_another_encoding_than_named_do_not_cost_the_walk(tmp_path: Path) -> None:
    text = walk().replace("<trkseg>", "<name>Zurück</name><trkseg>")
    track = read(tmp_path, text.encode("iso-8859-1"))
    assert_same(track, read(tmp_path, walk()))
    assert track.notes == (
        "The file's letters are not in the encoding that it names: read as ISO-8859-1.",
    )
    # Bug: it stood in English in a German document.
    assert "in der Kodierung" in Words(language="de").told(track.notes[0])


@pytest.mark.parametrize("encoding", ["klingon", "utf-7", "shift_jis"])
def test_an_encoding_that_cannot_be_read_is_one_sentence(tmp_path: Path, encoding: str) -> None:
    text = walk().replace('"1.0"', f'"1.0" encoding="{encoding}"', 1)
    assert sentence(tmp_path, text).endswith("Save it again in UTF-8.")


def test_gzip_is_known_by_its_content_whatever_the_name(tmp_path: Path) -> None:
    plain = read(tmp_path, walk())
    assert_same(read(tmp_path, gzip.compress(walk().encode())), plain)
    assert_same(read(tmp_path, gzip.compress(walk().encode()), name="walk.gpx.gz"), plain)


def test_gzip_in_several_members_and_padded_is_one_file(tmp_path: Path) -> None:
    # RFC 1952, 2.2: a gzip file is a series of members.
    data = walk().encode()
    members = gzip.compress(data[:500]) + gzip.compress(data[500:]) + b"\0" * 100
    track = read(tmp_path, members)
    assert_same(track, read(tmp_path, walk()))
    assert track.notes == ()


def test_a_packed_file_cut_short_gives_what_is_there(tmp_path: Path) -> None:
    packed = gzip.compress(walk(3000).encode())
    track = read(tmp_path, packed[: len(packed) // 2])
    judge = zlib.decompressobj(31).decompress(packed[: len(packed) // 2])
    assert len(track) == judge.count(b"</trkpt>")
    assert "breaks off" in track.notes[0]


def test_damaged_packing_gives_what_comes_before_the_damage(tmp_path: Path) -> None:
    packed = bytearray(gzip.compress(walk(3000).encode()))
    packed[-8:-4] = b"\xde\xad\xbe\xef"  # the checksum
    track = read(tmp_path, bytes(packed))
    assert len(track) > 2000
    assert "gzip packing is damaged after" in track.notes[0]
    assert "entpackten Bytes beschädigt" in Words(language="de").told(track.notes[0])


def test_a_file_that_unpacks_beyond_the_limit_is_refused_without_unpacking_it_all(
    tmp_path: Path,
) -> None:
    blanks = zlib.compressobj(9, zlib.DEFLATED, 31)
    bomb = blanks.compress(walk().encode()) + blanks.compress(b" " * 80_000_000) + blanks.flush()
    assert len(bomb) < 100_000
    limit = Settings(reading=ReadingSettings(largest_track_bytes=1_000_000))
    assert sentence(tmp_path, bomb, settings=limit) == (
        "walk.gpx: holds more than 1 MB. Cut it to the day of the walk."
    )
    assert len(read(tmp_path, walk(), settings=limit)) == 20


# Files that break off


def test_a_recording_that_broke_off_gives_every_whole_fix_wherever_it_is_cut(
    tmp_path: Path,
) -> None:
    whole = walk(4).encode()
    for end in range(len(whole)):
        cut = whole[:end]
        fixes = cut.count(b"</trkpt>")
        if fixes == 0:
            sentence(tmp_path, cut)
            continue
        track = read(tmp_path, cut)
        assert len(track) == fixes
        if end >= len(whole.rstrip()):
            assert track.notes == ()
            continue
        (note,) = track.notes
        assert "breaks off in line" in note
        open_point = cut.rpartition(b"</trkpt>")[2].partition(b"<trkpt")[2]
        assert ("being written" in note) == (b">" in open_point)


def test_it_is_said_where_a_file_breaks_off(tmp_path: Path) -> None:
    cut = (HEAD + fix(0) + fix(1))[:-20]
    track = read(tmp_path, cut)
    (note,) = track.notes
    assert note == (
        f"The file breaks off in line 5, after {len(cut)} bytes;"
        " 1 point before that kept, without the one being written there."
    )


@pytest.mark.parametrize("junk", [b"\0" * 64, b"\x01\x02" * 30, b"<<<<" + b"x" * 60])
def test_what_lies_beyond_a_break_is_counted_as_lost(tmp_path: Path, junk: bytes) -> None:
    good = (HEAD + fix(0) + fix(1)).encode()
    track = read(tmp_path, good + junk + (fix(2) + TAIL).encode())
    assert len(track) == 2
    total = len(good) + len(junk) + len(fix(2)) + len(TAIL)
    match = re.fullmatch(
        r"The file cannot be read beyond line 6 \(.+\), and what follows is lost,"
        rf" (\d+) of {total} bytes; 2 points before that kept\.",
        track.notes[0],
    )
    assert match is not None
    # expat names the beginning of the token that it cannot read, within a byte of the junk.
    assert int(match[1]) == pytest.approx(total - len(good), abs=1)


def test_two_files_stuck_together_give_the_first_and_say_what_is_lost(tmp_path: Path) -> None:
    second = walk(3)
    track = read(tmp_path, walk(5) + second)
    assert len(track) == 5
    assert f"{len(second)} of {len(walk(5)) + len(second)} bytes" in track.notes[0]


def test_tags_that_do_not_match_after_the_last_fix_cost_nothing(shared_tracks: Path) -> None:
    track = read_track(shared_tracks / "bad-unclosed-ext.gpx")
    assert len(track) == 2
    (note,) = track.notes
    assert note == (
        "The file cannot be read beyond line 39 (mismatched tag), and what follows is lost,"
        " 145 of 1,053 bytes; 2 points before that kept."
    )


# Values that cannot be used


def test_points_without_a_place_are_dropped_and_counted(tmp_path: Path) -> None:
    bad = [
        '<trkpt lat="91" lon="7.5"/>',
        '<trkpt lat="46" lon="180.1"/>',
        '<trkpt lat="NaN" lon="7.5"/>',
        '<trkpt lat="inf" lon="7.5"/>',
        '<trkpt lat="north" lon="7.5"/>',
        '<trkpt lat="" lon="7.5"/>',
        '<trkpt lon="7.5"/>',
        "<trkpt/>",
    ]
    track = read(tmp_path, HEAD + fix(0) + "".join(bad) + fix(1) + TAIL)
    assert_same(track, read(tmp_path, HEAD + fix(0) + fix(1) + TAIL))
    assert track.notes == (
        "8 points of 10 without a usable position left out (the first is point 2).",
    )


def test_the_poles_and_the_date_line_are_places(tmp_path: Path) -> None:
    text = '<trkpt lat="90" lon="-180"/><trkpt lat="-90" lon="180"/>'
    assert read(tmp_path, HEAD + text + TAIL).notes == ()


def test_values_that_are_no_numbers_are_missing_and_said(tmp_path: Path) -> None:
    text = HEAD + fix(0).replace("800", "n/a") + fix(1, "<hdop>good</hdop>") + fix(2) + TAIL
    track = read(tmp_path, text.replace("08:00:02Z", "noon"))
    np.testing.assert_array_equal(track.elevation_m, [np.nan, 801, 802])
    assert np.isnan(track.hdop).all()
    assert np.isnan(track.time_s).tolist() == [False, False, True]
    assert track.notes == (
        "1 time could not be read (the first is '2026-10-03Tnoon') and counted as missing.",
        "1 elevation could not be read (the first is 'n/a') and counted as missing.",
        "1 dilution of precision could not be read (the first is 'good') and counted as missing.",
    )


def test_empty_fields_are_missing_without_a_word(tmp_path: Path) -> None:
    track = read(tmp_path, HEAD + '<trkpt lat="46" lon="7"><ele/><time></time></trkpt>' + TAIL)
    assert np.isnan([track.elevation_m[0], track.time_s[0]]).all()
    assert track.notes == ()


def test_times_without_a_zone_are_said(tmp_path: Path) -> None:
    track = read(tmp_path, walk(3).replace("Z</time>", "</time>"))
    assert_same(track, read(tmp_path, walk(3)))
    assert track.notes == ("3 times without a zone taken as UTC.",)


def test_a_file_without_one_usable_place_is_refused_with_the_value(tmp_path: Path) -> None:
    text = HEAD + '<trkpt lat="46,5" lon="7,5"/><trkpt lat="46,6" lon="7,5"/>' + TAIL
    assert sentence(tmp_path, text) == (
        'walk.gpx, first point: lat="46,5" lon="7,5" is no place on the earth, nor is any of the'
        " 2 points. Export the recording with decimal degrees, written with a full stop."
    )


# Files of another kind


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "is empty"),
        (b"  \n ", "line 2, column 2: cannot be read as XML there"),
        (b"lat,lon\n46,7\n", "line 1, column 1: cannot be read as XML there"),
        (b"<!DOCTYPE html>\n<html><body>Log in</body></html>", "is a web page"),
        (b"<HTML><body>Log in</body></HTML>", "is a web page"),
        (b'<kml xmlns="http://www.opengis.net/kml/2.2"><Document/></kml>', "<kml> is another kind"),
        (b"<gpx/>", "holds no recorded track"),
        (b'<gpx><wpt lat="1" lon="1"/></gpx>', "holds waypoints and no recorded track"),
        (b"<gpx><trk/></gpx>", "holds a track without a single fix"),
        (b"PK\x03\x04rest of a zip", "is a zip archive"),
        (b"\x0e\x10d\x08\0\0\x10\0.FIT\0\0", "is a FIT file and no GPX"),
        (b"\x1f\x8brest that is no gzip", "cannot be read|is empty"),
        (b"\x89PNG\r\n\x1a\n", "cannot be read as XML"),
    ],
)
def test_each_other_kind_of_file_is_one_sentence(tmp_path: Path, content: bytes, said: str) -> None:
    text = sentence(tmp_path, content)
    assert re.search(said, text)
    assert text.startswith("walk.gpx")
    assert "\n" not in text


def test_a_plan_without_a_recording_is_named_as_one(shared_tracks: Path) -> None:
    with pytest.raises(InputRefusedError, match="holds a planned route and no recorded track"):
        read_track(shared_tracks / "rte-plan-only.gpx")


def test_a_folder_a_missing_and_a_locked_file_are_one_sentence_each(tmp_path: Path) -> None:
    with pytest.raises(InputRefusedError, match=r"is a folder\. Name one GPX file in it"):
        read_track(tmp_path)
    with pytest.raises(InputRefusedError, match=r"none\.gpx: does not exist"):
        read_track(tmp_path / "none.gpx")
    with pytest.raises(InputRefusedError, match="cannot be read"):
        read_track(tmp_path / "a\0b.gpx")


# Hostile files


@pytest.mark.parametrize(
    "declaration",
    [
        "<!DOCTYPE gpx>",
        '<!DOCTYPE gpx SYSTEM "file:///etc/hostname">',
        '<!DOCTYPE gpx PUBLIC "x" "http://localhost/x.dtd">',
        '<!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]>',
        '<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]>',
        '<!DOCTYPE gpx [<!ENTITY % p SYSTEM "file:///etc/hostname"> %p;]>',
    ],
)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_a_document_type_is_refused_whatever_it_declares(
    tmp_path: Path, declaration: str, encoding: str
) -> None:
    text = f'<?xml version="1.0" encoding="{encoding}"?>\n{declaration}{walk().partition("?>")[2]}'
    said = sentence(tmp_path, text.encode(encoding))
    assert said.startswith("walk.gpx, line 2: <!DOCTYPE gpx> declares a document type")


def test_an_entity_that_was_never_declared_ends_the_reading_there(tmp_path: Path) -> None:
    track = read(tmp_path, HEAD + fix(0) + fix(1, "<name>&bomb;</name>") + TAIL)
    assert len(track) == 1
    assert "undefined entity" in track.notes[0]


def test_elements_nested_without_end_are_refused(tmp_path: Path) -> None:
    assert "nests elements more than 100 deep" in sentence(tmp_path, HEAD + "<a>" * 1000)


SOUND = walk(6).encode()


@settings(max_examples=200, deadline=None)
@given(
    edits=st.lists(
        st.tuples(st.integers(0, len(SOUND) - 1), st.integers(0, 12), st.binary(max_size=12)),
        min_size=1,
        max_size=4,
    )
)
def test_no_damage_does_worse_than_one_sentence(
    tmp_path_factory: pytest.TempPathFactory, edits: list[tuple[int, int, bytes]]
) -> None:
    data = SOUND
    for place, length, new in edits:
        data = data[:place] + new + data[place + length :]
    try:
        track = read(tmp_path_factory.mktemp("damaged"), data)
    except InputRefusedError as refusal:
        sentences = str(refusal).splitlines()
    else:
        sentences = ["one"]
        assert np.isfinite(track.latitude_deg).all()
    assert len(sentences) == 1
