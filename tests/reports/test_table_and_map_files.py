"""legs.csv (RFC 4180) and debrief.geojson (RFC 7946), read back by other libraries."""

from __future__ import annotations

import csv
import io
import json
import math
from itertools import pairwise

import numpy as np
import pytest
import shapely
from geographiclib.geodesic import Geodesic
from hypothesis import given
from hypothesis import strategies as st
from reports.sample_debrief import sample_debrief

from audit.reports.csv_report import FORMULA_STARTS, render_csv
from audit.reports.date_line import line_geometry
from audit.reports.geojson_report import render_geojson


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


@pytest.fixture(scope="module")
def features(debrief):
    return json.loads(render_geojson(debrief))["features"]


def of_kind(features, kind):
    return [one for one in features if one["properties"]["kind"] == kind]


def test_csv_reads_back_exactly(debrief):
    text = render_csv(debrief)
    frame = debrief.legs_frame()
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    assert list(rows[0]) == list(frame.columns)
    for name in frame.select_dtypes("float").columns:
        read = [float(row[name]) if row[name] else math.nan for row in rows]
        np.testing.assert_array_equal(read, frame[name].to_numpy(float))
    assert rows[0]["claim_time"] == debrief.to_dict()["legs"][0]["end"]["time"]
    assert rows[0]["found"] == "True"
    assert rows[3]["miss_m"] == ""


def test_csv_is_rfc_4180():
    odd = sample_debrief(names={"Post 7": 'Post "7", by\nthe stream'})
    text = render_csv(odd)
    assert text.endswith("\r\n")
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert len({len(row) for row in rows}) == 1
    assert rows[1][2] == 'Post "7", by\nthe stream'


@pytest.mark.parametrize("start", FORMULA_STARTS)
def test_csv_runs_no_formula(start):
    name = f"{start}HYPERLINK(1)"
    text = render_csv(sample_debrief(names={"Post 7": name}))
    row = list(csv.reader(io.StringIO(text, newline="")))[1]
    assert row[2] == f"'{name}"


def test_csv_leaves_negative_numbers_alone(debrief):
    row = next(csv.DictReader(io.StringIO(render_csv(debrief))))
    assert float(row["azimuth_error_deg"]) < 0


def test_geojson_kinds(features):
    count = {"point": 5, "planned-leg": 4, "walked-portion": 3, "claim": 3, "miss": 3}
    assert {kind: len(of_kind(features, kind)) for kind in count} == count
    assert len(features) == sum(count.values())


def test_geojson_is_rfc_7946(debrief):
    collection = json.loads(render_geojson(debrief))
    assert set(collection) == {"type", "features"}  # no crs member: section 4
    for feature in collection["features"]:
        assert set(feature) == {"type", "geometry", "properties"}
        shape = shapely.geometry.shape(feature["geometry"])  # refuses what is no geometry
        west, south, east, north = shape.bounds
        assert -84.4 < west <= east < -84.2  # longitude first
        assert 36.4 < south <= north < 36.6
        flat = shapely.get_coordinates(shape)
        assert np.all(np.round(flat, 7) == flat)


def test_geojson_lines_join(debrief, features):
    walked, claims, misses = (of_kind(features, k) for k in ("walked-portion", "claim", "miss"))
    points = {one["properties"]["name"]: one for one in of_kind(features, "point")}
    for portion, claim, miss, leg in zip(walked, claims, misses, debrief.legs, strict=False):
        assert portion["geometry"]["coordinates"][-1] == claim["geometry"]["coordinates"]
        assert miss["geometry"]["coordinates"][-1] == claim["geometry"]["coordinates"]
        point = points[leg.audit.card.end.name]["geometry"]["coordinates"]
        assert miss["geometry"]["coordinates"][0] == point


def test_geojson_geodesic_lengths_are_those_of_the_record(debrief, features):
    # Geodesics on WGS 84 by GeographicLib; the grid stretches by its scale factor.
    lon, lat = debrief.points[0].longitude_deg, debrief.points[0].latitude_deg
    scale = debrief.card.grid.scale_factor(lon, lat)
    for feature, leg in zip(of_kind(features, "miss"), debrief.legs, strict=False):
        (lon1, lat1), (lon2, lat2) = feature["geometry"]["coordinates"]
        ground_m = Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2)["s12"]
        assert ground_m * scale == pytest.approx(leg.audit.measures.miss_m, abs=0.05)  # metres


def test_geojson_leg_not_walked_is_only_planned(features):
    fourth = [one for one in features if one["properties"].get("leg") == "4"]
    assert [one["properties"]["kind"] for one in fourth] == ["planned-leg"]
    assert fourth[0]["properties"]["status"] == "skipped"


def test_geojson_across_the_date_line():
    # UTM zone 60 south, a course that crosses 180 degrees at 17 degrees south.
    from audit.geodesy.grids import course_grid

    east, north = course_grid("EPSG:32760").to_grid(179.9975, -17.0)
    debrief = sample_debrief(grid="EPSG:32760", origin=np.array([east, north]))
    features = json.loads(render_geojson(debrief))["features"]
    leg = of_kind(features, "planned-leg")[0]
    assert leg["geometry"]["type"] == "MultiLineString"
    west, east_side = leg["geometry"]["coordinates"]
    assert west[-1][0] == 180.0
    assert east_side[0][0] == -180.0
    assert west[-1][1] == east_side[0][1]
    total_m = sum(
        Geodesic.WGS84.Inverse(a[1], a[0], b[1], b[0])["s12"]
        for part in (west, east_side)
        for a, b in pairwise(part)
    )
    whole = debrief.legs[0].audit.card
    scale = debrief.card.grid.scale_factor(180.0, -17.0)
    assert total_m * scale == pytest.approx(np.hypot(*np.diff(whole.line, axis=0)[0]), abs=0.1)
    for feature in features:
        for part in shapely.get_parts(shapely.geometry.shape(feature["geometry"])):
            steps = np.abs(np.diff(shapely.get_coordinates(part)[:, 0]))
            assert np.all(steps < 180.0)  # no part runs round the world


@given(
    st.lists(
        st.tuples(st.floats(-0.5, 0.5), st.floats(-80, 80)).map(
            lambda p: (round(p[0], 6), round(p[1], 6))
        ),
        min_size=1,
        max_size=12,
    )
)
def test_cut_line_is_the_same_line(places):
    """Unrolled about the date line, the parts are the line with the crossings put in."""
    offset, latitude = np.array(places).T
    longitude = np.where(offset <= 0, 180.0 + offset, -180.0 + offset)
    geometry = line_geometry(longitude, latitude)
    parts = geometry["coordinates"]
    parts = [parts] if geometry["type"] == "LineString" else parts
    assert all(len(part) >= 2 for part in parts)
    unrolled = []
    for part in parts:
        side = [lon for lon, _ in part]
        assert max(side) <= 0.0 or min(side) >= 0.0  # each part keeps to one side
        unrolled += [(lon - 180.0 if min(side) >= 0 and max(side) > 0 else lon + 180.0, lat)
                     for lon, lat in part]  # fmt: skip
    for place in zip(offset, latitude, strict=True):
        assert any(np.allclose(place, one, atol=2e-7) for one in unrolled)  # degrees
