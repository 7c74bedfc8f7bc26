"""One name with two places: a finding that names both, and the slip that parts them."""

from __future__ import annotations

import pytest

from audit.leg_card.check_plan import check_plan
from audit.readers.plan_file import read_plan

HEADER = "leg,from,to,from_position,to_position\n"
ENDS = "16S GF 4265 4312"


def positions(tmp_path, given, ends=ENDS, start="B"):
    text = f'{HEADER}1,A,B,16S GF 4182 4279,"{ends}"\n2,{start},C,"{given}",16S GF 4300 4400\n'
    return positions_of(tmp_path / "lane.csv", text)


def positions_of(path, text):
    path.write_text(text, encoding="utf-8")
    checked = check_plan(read_plan(path, date="2026-10-03"))
    return [one for one in checked.findings if one.what == "position"]


@pytest.mark.parametrize(
    ("given", "slip", "said"),
    [
        ("16S GF 4625 4312", "digits-transposed", "two digits of its easting swapped"),
        ("16S GF 4265 4912", "digit-wrong", "one wrong digit in its northing (9 for 3)"),
        ("16S GF 4312 4265", "easting-northing-swapped", "easting and northing swapped"),
    ],
)
def test_the_slip_between_the_two_places_of_a_name_is_told(tmp_path, given, slip, said):
    """Bug: a leg that began 3.6 km from where the one before ended passed the check."""
    (one,) = positions(tmp_path, given)
    assert (one.leg, one.given, one.computed, one.slips) == ("2", given, ENDS, (slip,))
    assert f"The difference: {said}." in one.message


def test_degrees_are_compared_digit_by_digit_too(tmp_path):
    (one,) = positions(tmp_path, "36.503, -84.231", ends="36.530, -84.231")
    assert one.slips == ("digits-transposed",)


def test_two_places_that_no_slip_parts_are_told_without_one(tmp_path):
    (one,) = positions(tmp_path, "16S GF 4391 4207")
    assert one.slips == ()
    assert "The difference" not in one.message


@pytest.mark.parametrize("given", [ENDS, "16S GF 426 431", "16S GF 42650 43120"])
def test_one_place_written_finer_or_coarser_is_no_finding(tmp_path, given):
    assert positions(tmp_path, given) == []


def test_two_places_of_a_name_in_other_capitals_are_a_finding(tmp_path):
    """Bug: "B" at one place and "b" at another passed the check."""
    (one,) = positions(tmp_path, "16S GF 4625 4312", start="b")
    assert (one.leg, one.slips) == ("2", ("digits-transposed",))
    assert "The names B and b differ in capitals only and stand for two places" in one.message
    assert f'"{ENDS}" in leg 1 and "16S GF 4625 4312" in leg 2' in one.message
    assert positions(tmp_path, ENDS, start="b") == []


def test_points_of_a_full_plan_that_differ_in_capitals_only_are_a_finding(tmp_path):
    """Bug: so did two points of a TOML plan; one that is on no leg is only noted."""
    points = "".join(
        f'[[point]]\nname = "{name}"\nposition = "{place}"\n'
        for name, place in (("A", "16S GF 4182 4279"), ("B", ENDS), ("b", "16S GF 4300 4400"))
    )
    (one,) = positions_of(tmp_path / "lane.toml", points)
    assert "The names B and b differ in capitals only" in one.message
    on_no_leg = points + '[[leg]]\nfrom = "A"\nto = "B"\n'
    assert positions_of(tmp_path / "lane.toml", on_no_leg) == []
