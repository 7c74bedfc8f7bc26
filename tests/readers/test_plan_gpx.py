"""Routes and waypoints as plans, hostile files, and the real recordings."""

from __future__ import annotations

import gpxpy
import pytest
from readers.plan_said import legs_of, refusal, stops_of

from audit.errors import InputRefusedError
from audit.readers.plan_file import read_plan

HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
ROUTE = (
    "<rte><name>Ridge</name>"
    '<rtept lat="36.50" lon="-84.30"><name>A</name></rtept>'
    '<rtept lat="36.51" lon="-84.30"><name>B</name></rtept>'
    '<rtept lat="36.51" lon="-84.29"><name>C</name></rtept></rte>'
)
WAYPOINTS = (
    '<wpt lat="36.50" lon="-84.30"><name>W</name></wpt>'
    '<wpt lat="36.52" lon="-84.30"><name>X</name></wpt>'
)
TRACK = '<trk><trkseg><trkpt lat="36.5" lon="-84.3"><fix>bogus</fix></trkpt></trkseg></trk>'


def gpx(inside, namespace=' xmlns="http://www.topografix.com/GPX/1/1" version="1.1"'):
    return f'{HEAD}<gpx{namespace} creator="test">{inside}</gpx>'


def read(tmp_path, text, **options):
    path = tmp_path / "lane.gpx"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_plan(path, **options)


def problems_of(tmp_path, text, **options):
    return refusal(read, tmp_path, text, **options)


@pytest.mark.parametrize(
    "namespace",
    [
        ' xmlns="http://www.topografix.com/GPX/1/1" version="1.1"',
        ' xmlns="http://www.topografix.com/GPX/1/0" version="1.0"',
        "",
    ],
)
def test_a_route_is_a_plan(tmp_path, namespace):
    plan = read(tmp_path, gpx(WAYPOINTS + ROUTE + TRACK, namespace))
    assert plan.name == "Ridge"
    assert plan.grid == "EPSG:32616"
    assert legs_of(plan) == [("1", "A", "B"), ("2", "B", "C")]
    assert plan.position("B").latitude_deg == 36.51
    assert plan.position("B").longitude_deg == -84.30
    notes = "\n".join(plan.notes)
    assert "2 waypoints beside the route were left out" in notes
    assert "recorded track, which is no part of the plan" in notes


def test_prefixed_names_are_read(tmp_path):
    text = (
        '<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"><g:rte>'
        '<g:rtept lat="1" lon="2"/><g:rtept lat="1.01" lon="2"/></g:rte></g:gpx>'
    )
    assert len(read(tmp_path, text).legs) == 1


def test_waypoints_in_file_order_where_there_is_no_route(tmp_path):
    plan = read(tmp_path, gpx("<metadata><name>Moor</name></metadata>" + WAYPOINTS + "<rte/>"))
    assert plan.name == "Moor"
    assert legs_of(plan) == [("1", "W", "X")]
    assert any("has no route; its waypoints" in note for note in plan.notes)
    assert any("A route without points was left out" in note for note in plan.notes)


TWO = ROUTE + ROUTE.replace("Ridge", "Valley").replace("36.51", "36.52")


@pytest.mark.parametrize(("route", "name"), [("Valley", "Valley"), ("2", "Valley"), (1, "Ridge")])
def test_of_several_routes_the_option_picks_one(tmp_path, route, name):
    assert read(tmp_path, gpx(TWO), route=route).name == name


@pytest.mark.parametrize(
    ("text", "options", "parts"),
    [
        (gpx(TWO), {}, ['holds 2 routes: 1 "Ridge", 2 "Valley"', "option route"]),
        (gpx(TWO), {"route": "Dale"}, ['option route: "Dale"', '1 "Ridge"']),
        (gpx(TWO), {"route": 3}, ["option route: 3"]),
        (gpx(ROUTE + ROUTE), {"route": "Ridge"}, ['"Ridge" is no one route']),
        (gpx(WAYPOINTS), {"route": 1}, ["holds no route"]),
        (gpx(TRACK), {}, ["holds a recorded track and no route", "as the track"]),
        (gpx(""), {}, ["holds no route and no waypoints"]),
        (gpx('<rte><rtept lat="1" lon="2"/></rte>'), {}, ["holds 1 point and no leg"]),
        ("<gpx><rte>", {}, ["not well-formed XML", "line 1"]),
        ("<kml></kml>", {}, ["root is <kml>"]),
        ("<html></html>", {}, ["root is <html>"]),
        ("<!DOCTYPE html><html></html>", {}, ["web page"]),
        (
            '<!DOCTYPE g [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><gpx>&b;</gpx>',
            {},
            ["document type"],
        ),
        ('<!DOCTYPE g [<!ENTITY a SYSTEM "file:///etc/hostname">]><gpx>&a;</gpx>', {}, ["document type"]),
        ('<!DOCTYPE g SYSTEM "http://example.org/g.dtd"><gpx/>', {}, ["document type"]),
        ("<gpx>&b;</gpx>", {}, ["not well-formed XML", "undefined entity"]),
        ('<?xml version="1.0" encoding="klingon"?><gpx/>', {}, ["cannot be read as XML"]),
        (b"<gpx>\xff\xfe</gpx>", {}, ["XML"]),
        (
            gpx('<rte><rtept lat="NaN" lon="2"/></rte>'),
            {},
            ['route 1, point 1, lat: "NaN" is no number'],
        ),
        (gpx('<rte><rtept lat="1" lon="inf"/></rte>'), {}, ['lon: "inf" is no number']),
        (gpx('<rte><rtept lat="36,5" lon="2"/></rte>'), {}, ['lat: "36,5" is no number', "point"]),
        (gpx('<rte><rtept lat="1_0" lon="2"/></rte>'), {}, ['lat: "1_0" is no number']),
        (gpx('<rte><rtept lat="" lon="2"/></rte>'), {}, ["is no number"]),
        (gpx('<wpt lon="2"><name>W</name></wpt>'), {}, ["waypoint 1 (W): has no latitude"]),
        (gpx('<wpt lat="91" lon="2"/>'), {}, ['lat: "91" is out of range', "exchanged"]),
        (gpx('<wpt lat="1" lon="181"/>'), {}, ['lon: "181" is out of range']),
    ],
)  # fmt: skip
def test_what_is_no_plan_is_told_in_one_sentence(tmp_path, text, options, parts):
    (problem,) = problems_of(tmp_path, text, **options)
    for part in ["lane.gpx", *parts]:
        assert part in problem
    assert "\n" not in problem


def test_all_bad_points_are_told_at_once(tmp_path):
    text = gpx('<rte><rtept lat="x" lon="181"/><rtept lon="1"/></rte><wpt lat="95" lon="1"/>')
    assert len(problems_of(tmp_path, text)) == 4


def test_points_met_again_named_twice_and_not_named(tmp_path):
    text = gpx(
        "<rte>"
        '<rtept lat="36.50" lon="-84.30"><name>A</name></rtept>'
        '<rtept lat="36.51" lon="-84.30"/>'
        '<rtept lat="36.51" lon="-84.30"><name>same place</name></rtept>'
        '<rtept lat="36.52" lon="-84.30"><name>A</name></rtept>'
        '<rtept lat="36.51" lon="-84.30"/>'
        '<rtept lat="36.50" lon="-84.30"><name>A</name></rtept></rte>'
    )
    plan = read(tmp_path, text)
    assert stops_of(plan) == ["A", "Point 2", "A (2)", "Point 2", "A"]
    assert [point.name for point in plan.points] == ["A", "Point 2", "A (2)"]
    notes = "\n".join(plan.notes)
    assert "point 3 (same place) lies where" in notes
    assert '"A" stands for several places' in notes
    assert "Points without a name are called by their order" in notes


def test_a_line_of_hundreds_of_points_is_a_track(tmp_path):
    points = "".join(f'<rtept lat="{n / 1000}" lon="1"/>' for n in range(401))
    (problem,) = problems_of(tmp_path, gpx(f"<rte>{points}</rte>"))
    assert "holds 401 points" in problem
    assert "turning points" in problem


def test_deep_nesting_is_refused_as_in_a_recording(tmp_path):
    depth = 200_000
    text = gpx(f"<extensions>{'<a>' * depth}{'</a>' * depth}</extensions>" + ROUTE)
    with pytest.raises(InputRefusedError, match="nests elements more than 100 deep"):
        read(tmp_path, text)


def test_older_encodings_are_read(tmp_path):
    text = gpx(ROUTE.replace("<name>A", "<name>Höhe"))
    plan = read(tmp_path, text.replace("UTF-8", "ISO-8859-1").encode("latin-1"))
    assert plan.points[0].name == "Höhe"
    plan = read(tmp_path, text.replace("UTF-8", "UTF-16").encode("utf-16"))
    assert plan.points[0].name == "Höhe"


@pytest.mark.parametrize(
    ("file", "route", "name", "legs"),
    [
        ("rte-plan-only", None, "BELLEVUE", 45),
        ("rte-trk-loop", "LONG LOOP", "LONG LOOP", 17),
        ("rte-trk-loop", 2, "SHORT LOOP", 7),
    ],
)
def test_real_routes(shared_tracks, file, route, name, legs):
    path = shared_tracks / f"{file}.gpx"
    plan = read_plan(path, route=route)
    assert (plan.name, len(plan.legs)) == (name, legs)
    # The reference reader of GPX, over the whole file.
    with path.open() as lines:
        routes = gpxpy.parse(lines).routes
    (wanted,) = [one for one in routes if one.name == name]
    stops = [plan.position(stop) for stop in stops_of(plan)]
    assert [(stop.latitude_deg, stop.longitude_deg) for stop in stops] == [
        (point.latitude, point.longitude) for point in wanted.points
    ]
    assert stops_of(plan)[0] == wanted.points[0].name


def test_real_routes_are_named_where_none_is_picked(shared_tracks):
    with pytest.raises(InputRefusedError, match='1 "LONG LOOP", 2 "SHORT LOOP"'):
        read_plan(shared_tracks / "rte-trk-loop.gpx")


def test_real_recordings_give_a_plan_or_one_sentence(shared_tracks):
    taken, sentences = set(), {}
    for path in sorted(shared_tracks.glob("*.gpx")):
        try:
            read_plan(path)
            taken.add(path.stem)
        except InputRefusedError as refused:
            sentences[path.stem] = str(refused)
    assert all(sentence.count("\n") == 0 for sentence in sentences.values())
    assert taken == {
        "hike-karst", "odd-latin1", "rte-plan-only", "run-phone", "walk-car-mix",
        "walk-logger-speed",
    }  # fmt: skip
    assert "far outside the course grid" in sentences["odd-artificial"]  # points on all continents
    assert "recorded track and no route" in sentences["walk-1hz-woods"]
    assert "recorded track and no route" in sentences["bad-fix-value"]
    assert "not well-formed XML" in sentences["bad-unclosed-ext"]
    assert "holds 2 routes" in sentences["odd-all-fields-10"]
