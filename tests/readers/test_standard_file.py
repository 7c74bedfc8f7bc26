"""Standards as files: the shipped ones say where each figure is from; slips are refused."""

from __future__ import annotations

import pytest

from audit.errors import InputRefusedError
from audit.readers.standard_file import SHIPPED_STANDARDS, read_standard


@pytest.mark.parametrize("name", SHIPPED_STANDARDS)
def test_every_figure_of_a_shipped_standard_has_its_source(name):
    standard = read_standard(name)
    assert standard.notes == ()
    assert len(standard.sources) >= 8
    assert all(source.strip() for _, source in standard.sources)


def test_the_published_figures_stand_as_published():
    day, night = read_standard("day-course"), read_standard("night-course")
    # Expert Infantry Badge: day 4 of 5; night 2 of 3 in two hours; 3 hours in recent rules.
    assert (day.points_to_find, day.time_limit_s) == (4, 3 * 3600.0)
    assert (night.points_to_find, night.time_limit_s) == (2, 2 * 3600.0)
    # STP 21-1-SMCT: 3 degrees with compass-to-cheek, 10 with centre-hold, distance 5 per cent.
    assert (day.azimuth_tolerance_deg, night.azimuth_tolerance_deg) == (3.0, 10.0)
    assert day.distance_tolerance == pytest.approx(0.05)


def written(tmp_path, text):
    path = tmp_path / "own.toml"
    path.write_text(text, encoding="utf-8")
    return read_standard(path)


def test_a_figure_without_source_is_told(tmp_path):
    standard = written(tmp_path, 'name = "x"\nradius_m = 25\n')
    assert standard.radius_m == 25.0
    assert standard.notes == ("The standard names no source for: the radius.",)


def test_all_slips_are_told_at_once(tmp_path):
    text = (
        'nam = "x"\nradius_m = -3\npoints_to_find = 2.5\norder = "any"\nroad_rule = 3\n'
        '[weights]\npoints = "much"\n[sources]\nradius = "y"\n'
    )
    with pytest.raises(InputRefusedError) as refused:
        written(tmp_path, text)
    told = str(refused.value)
    for piece in ("nam", "radius_m", "points_to_find", "order", "road_rule", "weights", "sources"):
        assert piece in told, piece
    assert 'Perhaps "name" is meant' in told


def test_a_name_that_is_none_names_those_that_are():
    with pytest.raises(InputRefusedError, match="day-course, night-course, practice-circuit"):
        read_standard("dawn-course")
