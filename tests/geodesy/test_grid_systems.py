"""What PROJ knows of grids, where the other tests do not come."""

from __future__ import annotations

from types import SimpleNamespace

import pyproj
import pytest

from audit.geodesy import grid_systems
from audit.geodesy.utm_bands import BANDS, band_at, band_limits


@pytest.mark.parametrize(
    ("crs", "middle"),
    [
        (pyproj.CRS("EPSG:32616"), (-87.0, 42.0)),
        # Across the date line: 98.69 E to 68 W is 193.31 degrees wide.
        (pyproj.CRS("EPSG:3832"), (-164.655, 3.335)),
        (pyproj.CRS("EPSG:32661"), (0.0, 75.0)),
        (pyproj.CRS("+proj=utm +zone=16"), (0.0, 0.0)),  # of which no area is known
    ],
)
def test_a_datum_is_asked_for_in_the_middle_of_its_grid(monkeypatch, crs, middle) -> None:
    """By the areas of the EPSG register."""
    asked = []

    def transformer(_: str) -> SimpleNamespace:
        return SimpleNamespace(
            transform=lambda *place: asked.append(place),
            get_last_used_operation=lambda: SimpleNamespace(accuracy=3.0),
        )

    monkeypatch.setattr(grid_systems, "degrees_to_grid", transformer)
    assert grid_systems.datum_uncertainty_m("any", crs) == 3.0
    assert asked == [pytest.approx(middle)]


@pytest.mark.parametrize("accuracy", [-1.0, -0.1])
def test_a_datum_that_cannot_be_tied_is_refused(monkeypatch, accuracy) -> None:
    transformer = SimpleNamespace(
        transform=lambda *_: None,
        get_last_used_operation=lambda: SimpleNamespace(accuracy=accuracy),
    )
    monkeypatch.setattr(grid_systems, "degrees_to_grid", lambda _: transformer)
    with pytest.raises(ValueError, match="cannot tie the datum"):
        grid_systems.datum_uncertainty_m("EPSG:32616", pyproj.CRS("EPSG:32616"))


def test_bands_are_eight_degrees_high_and_the_last_one_twelve() -> None:
    """NGA.STND.0037: C from 80 S, X from 72 N to 84 N; beyond the ends the last letter holds."""
    assert [band_at(-80.0 + 8.0 * n) for n in range(20)] == list(BANDS)
    assert [band_at(-72.001 + 8.0 * n) for n in range(20)] == list(BANDS)
    assert [band_at(one) for one in (-89.0, 83.9, 84.0, 89.0)] == ["C", "X", "X", "X"]
    assert [band_limits(one) for one in "CMNWX"] == [
        (-80.0, -72.0), (-8.0, 0.0), (0.0, 8.0), (64.0, 72.0), (72.0, 84.0),
    ]  # fmt: skip
