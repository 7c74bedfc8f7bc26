"""The angle between norths as maps print it: with minutes, with a side, or as a declination."""

from __future__ import annotations

import pytest

import audit
from audit.readers.degrees_text import written_angle

PLAN = """
[course]
name = "Ridge"
date = 2026-12-12
{angle}
[[point]]
name = "Hut"
position = "47.20292, 11.30611"
[[point]]
name = "Saddle"
position = "47.21111, 11.31389"
"""


def read(tmp_path, angle, **options):
    path = tmp_path / "plan.toml"
    path.write_text(PLAN.format(angle=angle), encoding="utf-8")
    return audit.read_plan(path, **options)


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("2°48'", 2.8),
        ("2°48'W", -2.8),
        ("4°30'E", 4.5),
        ("-2° 48'", -2.8),
        ("4.5° W", -4.5),
        ("2 deg 48 min", 2.8),
        ("2.8", None),
        ("2,8", None),
        ("2°68'", None),
        ("-2°48'W", None),
        ("3°N", None),
        ("west", None),
    ],
)
def test_an_angle_with_minutes_or_a_side_is_read(text, degrees):
    """Bug: "2°48'" was text where a number is wanted."""
    assert written_angle(text) == (None if degrees is None else pytest.approx(degrees))


def test_a_plan_may_give_its_angle_with_minutes(tmp_path):
    plan = read(tmp_path, 'grid_magnetic_angle_deg = "2°48\'"')
    assert plan.grid_magnetic_angle_deg == pytest.approx(2.8)


def test_a_declination_is_another_way_to_state_the_angle(tmp_path):
    """Bug: it was refused without help, though the convergence is known."""
    plan = read(tmp_path, 'declination_deg = "4°30\'E"')
    assert plan.grid_magnetic_angle_deg == pytest.approx(4.5 - 1.69, abs=0.006)
    assert any("less the grid convergence of 1.69°" in str(note) for note in plan.notes)
    option = read(tmp_path, "declination_deg = 4.5", grid_magnetic_angle_deg=2.0)
    assert option.grid_magnetic_angle_deg == 2.0
    both = "declination_deg = 4.5\ngrid_magnetic_angle_deg = 2.8"
    with pytest.raises(audit.InputRefusedError, match="Give one of the two"):
        read(tmp_path, both)


def test_a_column_of_directions_is_asked_from_which_north(tmp_path):
    """Bug: "bearing" was no column, with a list of all others."""
    path = tmp_path / "plan.csv"
    path.write_text("leg,from,to,bearing\n1,A,B,33\n", encoding="utf-8")
    with pytest.raises(audit.InputRefusedError) as refused:
        audit.read_plan(path)
    assert "Say from which north" in " ".join(str(one) for one in refused.value.problems)
