"""Files made to harm: each is refused in one sentence, in little time and memory."""

from __future__ import annotations

import gzip
import resource
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from audit.errors import InputRefusedError
from audit.readers.areas_file import read_areas
from audit.readers.earlier_debriefs import read_earlier_debriefs
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.readers.punch_file import read_punches
from audit.readers.roster_file import read_roster
from audit.readers.standard_file import read_standard
from audit.readers.walkers_log_file import read_log
from audit.readers.words_file import read_words
from audit.settings import ReadingSettings, Settings

MOST_S = 20.0
"""A busy machine takes some seconds for what is refused after megabytes."""
HEAD = b'<gpx xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
TAIL = b"</trkseg></trk></gpx>"
FIX = b'<trkpt lat="36.5" lon="-84.2"/>'

# The constructions of the samples in the folder xmltestdata of the source package of
# defusedxml 0.7.1, written anew and set as GPX: cyclic.xml, dtd.xml, external.xml,
# external_file.xml, quadratic.xml, xmlbomb.xml, xmlbomb2.xml, and the two style sheets that
# run commands and write files (xalan_exec.xsl, xalan_write.xsl).
ROOT = "<gpx><trk><trkseg><trkpt lat='1' lon='2'><name>{}</name></trkpt></trkseg></trk></gpx>"
SAMPLES = {
    "cyclic": '<!DOCTYPE gpx [<!ENTITY a "&b;"><!ENTITY b "&a;">]>' + ROOT.format("&a;"),
    "dtd": '<!DOCTYPE gpx PUBLIC "-//EXAMPLE//Track//EN" "http://localhost/track.dtd">'
    + ROOT.format("x"),
    "external": '<!DOCTYPE gpx [<!ENTITY e SYSTEM "http://localhost:9/place.xml">]>'
    + ROOT.format("&e;"),
    "external_file": '<!DOCTYPE gpx [<!ENTITY e SYSTEM "file:///etc/passwd">]>'
    + ROOT.format("&e;"),
    "quadratic": f'<!DOCTYPE gpx [<!ENTITY a "{"ab" * 50_000}">]>' + ROOT.format("&a;" * 1000),
    "xmlbomb": "<!DOCTYPE gpx ["
    '<!ENTITY a "0123456789">'
    + "".join(f'<!ENTITY {x} "{f"&{y};" * 8}">' for y, x in zip("abcdefg", "bcdefgh", strict=True))
    + "]>"
    + ROOT.format("&h;"),
    "xmlbomb2": '<!DOCTYPE gpx [<!ENTITY pack "text"><!ENTITY b "&pack;&pack;">]>'
    "<gpx a='&b;'><rte><rtept lat='1' lon='2'><name>&b;&b;</name></rtept></rte></gpx>",
}
STYLE_SHEETS = {
    "xalan_exec": "http://xml.apache.org/xalan/java",
    "xalan_write": "http://exslt.org/common",
}


def refused(read: Callable[[Path], object], path: Path) -> str:
    """Give the one sentence that a reader refuses a file with."""
    began = time.process_time()
    with pytest.raises(InputRefusedError) as refusal:
        read(path)
    assert time.process_time() - began < MOST_S
    (problem,) = refusal.value.problems
    assert len(str(problem)) < 500
    return str(problem)


def written(folder: Path, name: str, data: bytes) -> Path:
    path = folder / name
    path.write_bytes(data)
    return path


@pytest.mark.parametrize("read", [read_plan, read_track], ids=["plan", "track"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
@pytest.mark.parametrize("name", SAMPLES)
def test_the_attacks_that_defusedxml_knows_are_refused(tmp_path, name, encoding, read):
    path = written(tmp_path, "walk.gpx", SAMPLES[name].encode(encoding))
    assert "declares a document type" in refused(read, path)


@pytest.mark.parametrize("name", STYLE_SHEETS)
def test_a_style_sheet_that_would_act_is_no_gpx(tmp_path, name):
    sheet = (
        '<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform" '
        f'xmlns:x="{STYLE_SHEETS[name]}"><xsl:template match="/"/></xsl:stylesheet>'
    )
    path = written(tmp_path, "walk.gpx", sheet.encode())
    for read in (read_plan, read_track):
        assert "GPX" in refused(read, path)


# Recordings


@pytest.mark.parametrize("name", [b"trk a='", b"", b"!--", b"?a "], ids=repr)
def test_a_tag_or_comment_without_end_is_not_gathered(tmp_path, name):
    # Parsers of before 2024 also take time with the square of it: 120 s for 4 MB.
    path = written(tmp_path, "walk.gpx", b"<gpx><" + name + b"x" * 5_000_000)
    assert "one tag or comment of more than 400,000 bytes" in refused(read_track, path)


def test_a_name_of_any_length_costs_no_walk_and_no_memory(tmp_path):
    text = HEAD.replace(b"<trkseg>", b"<name>" + b"x" * 60_000_000 + b"</name><trkseg>")
    path = written(tmp_path, "walk.gpx", text + FIX * 3 + TAIL)
    script = (
        "import resource, sys; from audit.readers.gpx_track import read_track\n"
        "def most(): return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "before = most(); fixes = len(read_track(sys.argv[1], keep_names=True))\n"
        "print(fixes, (most() - before) // 1024)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(path)], capture_output=True, text=True, check=True
    )
    fixes, grown_mb = map(int, done.stdout.split())
    assert fixes == 3
    assert grown_mb < 20


def test_a_packed_bomb_is_met_on_the_way(tmp_path):
    path = tmp_path / "walk.gpx.gz"
    with gzip.open(path, "wb", 9) as file:
        file.write(b"<gpx><trk><name>")
        for _ in range(80):
            file.write(b"x" * 1_000_000)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    assert "swells up more than 200 times" in refused(read_track, path)
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 50_000


def test_more_points_than_anyone_records_are_refused(tmp_path):
    path = written(tmp_path, "walk.gpx", HEAD + FIX * 1001 + TAIL)
    few = Settings(reading=ReadingSettings(most_fixes=1000))
    said = refused(lambda one: read_track(one, settings=few), path)
    assert said == "walk.gpx: holds more than 1,000 points. Cut it to the day of the walk."
    assert (
        len(read_track(path, settings=Settings(reading=ReadingSettings(most_fixes=1001)))) == 1001
    )


def test_elements_of_ever_new_names_are_refused(tmp_path):
    names = b"".join(b"<a%d/>" % number for number in range(3000))
    path = written(tmp_path, "walk.gpx", b"<gpx>" + names + b"</gpx>")
    assert "elements of more than 2,000 names" in refused(read_track, path)


# Plans and the other texts

LEGS = b"leg,from,to,distance_m\n"
POINT = b'{"type":"Feature","geometry":{"type":"Point","coordinates":%s},"properties":{}}'
COLLECTION = b'{"type":"FeatureCollection","features":[%s]}'
PLANS = {
    "elements.gpx": b"<gpx>" + b"<a/>" * 3_100_000 + b"</gpx>",
    "deep.gpx": b"<gpx>" + b"<a>" * 1_000_000,
    "waypoints.gpx": b"<gpx>" + b'<wpt lat="1" lon="1"/>' * 30_000 + b"</gpx>",
    "deep.toml": b"a=" + b"[" * 100_000,
    # 600 MB for a million attributes, and a fault on a number of a million hexadecimal digits.
    "attributes.gpx": b"<gpx" + b"".join(b' a%d="1"' % n for n in range(1_000_000)) + b"/>",
    "prefixes.gpx": b"<gpx" + b"".join(b' xmlns:p%d="u"' % n for n in range(200_000)) + b"/>",
    "nested-prefixes.gpx": b"".join(b'<p%d:a xmlns:p%d="u%d">' % (n, n, n) for n in range(9000)),
    "digits.toml": b"[course]\npaces_per_100m = " + b"9" * 1_000_000,
    "hexadecimal.toml": b"[course]\npaces_per_100m = 0x" + b"f" * 1_000_000,
    "binary.toml": b"[[leg]]\nvia = [{a = [0b1" + b"0" * 15_000 + b"]}]",
    "inline.toml": b"a=" + b"{a=" * 200_000,
    "dotted.toml": b"a" + b".a" * 50_000 + b"=1\n",
    "string.toml": b'[course]\nname="' + b"x" * 60_000_000 + b'"\n',
    "tables.toml": b"[[leg]]\n" * 1_000_000,
    "rows.csv": LEGS + b"1,a,b,x\n" * 6_000_000,
    "legs.csv": LEGS + b"1,a,b,5\n" * 450_000,
    "million-legs.csv": LEGS + b"1,a,b,5\n" * 1_000_000,
    "columns.csv": LEGS.strip() + b",zz" * 1_000_000 + b"\n",
    "digits.csv": LEGS + b"1,a,b," + b"1" * 200_000 + b"\n",
    "deep.geojson": b'{"type":"FeatureCollection","features":' + b"[" * 1_000_000,
    "digits.geojson": COLLECTION % (POINT % (b"[1," + b"1" * 5000 + b"]")),
    "nan.geojson": COLLECTION % (POINT % b"[NaN,1]"),
    "infinity.geojson": COLLECTION % (POINT % b"[1,-Infinity]"),
    "zeros.toml": b"[course]\n\0\0\0",
    "zeros.csv": LEGS + b"1,a\0,b,5\n",
    "zeros.gpx": b"<gpx>\0</gpx>",
    "zeros.geojson": b'{"type":\0}',
    "wide.gpx": "<?xml version='1.0' encoding='utf-32'?><gpx/>".encode("utf-32"),
    "odd.toml": b"\xff\xfea\0b",
}


@pytest.mark.parametrize("name", PLANS)
def test_a_plan_made_to_harm_is_one_sentence(tmp_path, name):
    assert refused(read_plan, written(tmp_path, name, PLANS[name])).startswith(name)


AREA = COLLECTION % (
    b'{"type":"Feature","geometry":{"type":%s,"coordinates":%s},"properties":{"kind":"no-go"}}'
)
OTHERS: dict[str, tuple[Callable[[Path], object], bytes]] = {
    "log.csv": (read_log, b"leg,note\n" + b"1,x\n" * 20_000),
    "log-large.csv": (read_log, b"leg,note\n" + b"1,x\n" * 2_000_000),
    "log-nul.csv": (read_log, b"leg,note\n1,\0\n"),
    "roster-large.csv": (read_roster, b"name,lane\n" + b"a,1\n" * 2_000_000),
    "roster-nul.csv": (read_roster, b"name,lane\na\0,1\n"),
    "punches.csv": (read_punches, b"point,code,attempt\n1,a," + b"1" * 5000),
    "punches-large.csv": (read_punches, b"point,code\n" + b"1,a\n" * 2_000_000),
    "areas-deep.geojson": (read_areas, b'{"type":"FeatureCollection","features":' + b"[" * 100_000),
    "areas-large.geojson": (read_areas, COLLECTION % (b"[]," * 2_000_000)),
    "areas-digits.geojson": (read_areas, AREA % (b'"Polygon"', b"[[[%s,1]]]" % (b"1" * 4000))),
    "areas-long.geojson": (read_areas, AREA % (b'"Polygon"', b"[[[%s,1]]]" % (b"1" * 5000))),
    "areas-nan.geojson": (read_areas, AREA % (b'"Polygon"', b"[[[NaN,1],[1,2],[2,2],[NaN,1]]]")),
    "areas-kind.geojson": (read_areas, AREA % (b"[]", b"[]")),
    "standard.toml": (read_standard, b"name=" + b"[" * 100_000),
    "standard-hexadecimal.toml": (read_standard, b"radius_m = 0x" + b"f" * 1_000_000),
    "standard-large.toml": (read_standard, b'name="' + b"x" * 5_000_000 + b'"'),
    "words.toml": (read_words, b"a=" + b"{a=" * 100_000),
    "words-large.toml": (read_words, b"#" * 5_000_000),
    "debrief.json": (lambda path: read_earlier_debriefs([path]), b"[" * 1_000_000),
    "debrief-numbers.json": (lambda path: read_earlier_debriefs([path]), b"1" * 5000),
}


@pytest.mark.parametrize("name", OTHERS)
def test_any_other_file_made_to_harm_is_one_sentence(tmp_path, name):
    read, data = OTHERS[name]
    assert refused(read, written(tmp_path, name, data)).startswith(name)


def test_problems_without_end_are_told_up_to_a_hundred(tmp_path):
    rows = b"".join(b"%d,a,b,zz\n" % number for number in range(390))
    path = written(tmp_path, "plan.csv", LEGS + rows)
    with pytest.raises(InputRefusedError) as refusal:
        read_plan(path)
    assert len(refusal.value.problems) == 101
    assert "holds more problems than these 100" in str(refusal.value.problems[-1])


def test_notes_without_end_are_refused(tmp_path):
    # 2000 unnamed legs in a log, each of which gets a note: more than a plan can have.
    path = written(tmp_path, "log.csv", b"leg,paces\n" + b",5\n" * 1001)
    assert "holds 1001 points or legs" in refused(read_log, path)
