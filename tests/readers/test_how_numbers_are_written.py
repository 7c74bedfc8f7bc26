"""How a plan writes its numbers, which the check has to know: their steps, and mils."""

from __future__ import annotations

import pytest
from readers.test_plan_toml import POINTS, read

from audit.errors import InputRefusedError


def test_a_half_step_belongs_to_a_number(tmp_path):
    """A step without its number would be dropped without a word."""
    text = POINTS + '[[leg]]\nfrom = "Start"\nto = "Post 7"\ndistance_half_step_m = 5\n'
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, text)
    assert "belongs to distance_m" in refused.value.problems[0].rule


def test_it_is_known_which_azimuths_are_in_mils(tmp_path):
    """The check tells them as the plan has them."""
    text = POINTS + '[[leg]]\nfrom = "Start"\nto = "Post 7"\ngrid_azimuth_mil = 1214\n'
    (first,) = read(tmp_path, text + "magnetic_azimuth_deg = 75.3\n").legs
    assert first.in_mils == ("grid",)
