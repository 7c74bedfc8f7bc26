"""Which grid a place belongs to."""

from __future__ import annotations

import pytest
from truth.check_values import CheckValue, check_values

from audit.geodesy.grids import utm_code, utm_zone_code

_MGRS = [row for topic in ("mgrs_fgdc", "mgrs_nga", "mgrs_cross") for row in check_values(topic)]


@pytest.mark.parametrize("value", _MGRS, ids=[row.inputs for row in _MGRS])
def test_zones_are_those_of_the_published_grid_references(value: CheckValue) -> None:
    # The zone that FGDC-STD-011-2001, NGA and GeographicLib print for the place.
    head = value.expected.lstrip("0123456789")[0]
    zone = value.expected[: value.expected.index(head)]
    code = utm_code(float(value.given("lon")), float(value.given("lat")))
    if zone:
        assert code == utm_zone_code(int(zone), south=head < "N")
    else:
        assert code == ("EPSG:32761" if head in "AB" else "EPSG:32661")


@pytest.mark.parametrize(
    ("longitude_deg", "latitude_deg", "code"),
    [
        # Norway and Svalbard: edges of NGA.STND.0037, from memory; GeographicLib agrees.
        (2.999, 60.0, "EPSG:32631"),
        (3.0, 60.0, "EPSG:32632"),
        (3.0, 55.999, "EPSG:32631"),
        (3.0, 64.0, "EPSG:32631"),
        (0.0, 72.0, "EPSG:32631"),
        (9.0, 72.0, "EPSG:32633"),
        (21.0, 84.0, "EPSG:32635"),
        (33.0, 72.0, "EPSG:32637"),
        (41.999, 80.0, "EPSG:32637"),
        (42.0, 80.0, "EPSG:32638"),
        (-0.001, 80.0, "EPSG:32630"),
        # Date line, equator, poles
        (180.0, 10.0, "EPSG:32601"),
        (-180.0, 10.0, "EPSG:32601"),
        (179.999, 10.0, "EPSG:32660"),
        (-84.95, 0.0, "EPSG:32616"),
        (-84.95, -1e-9, "EPSG:32716"),
        (0.0, 84.0, "EPSG:32631"),
        (0.0, 84.001, "EPSG:32661"),
        (0.0, -80.0, "EPSG:32731"),
        (0.0, -80.001, "EPSG:32761"),
        (123.0, 90.0, "EPSG:32661"),
        (123.0, -90.0, "EPSG:32761"),
    ],
)
def test_zones_at_their_edges(longitude_deg: float, latitude_deg: float, code: str) -> None:
    assert utm_code(longitude_deg, latitude_deg) == code


@pytest.mark.parametrize("zone", [0, 61, -1])
def test_zones_run_from_1_to_60(zone: int) -> None:
    with pytest.raises(ValueError, match="no UTM zone"):
        utm_zone_code(zone, south=False)


@pytest.mark.parametrize(
    "place", [(180.5, 0.0), (-180.5, 0.0), (0.0, 90.5), (0.0, -90.5), (float("nan"), 0.0)]
)
def test_degrees_out_of_range_are_refused(place: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="out of range"):
        utm_code(*place)
