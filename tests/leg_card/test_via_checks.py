"""A wrong reference in a via position is found as one in a point is."""

from __future__ import annotations

import pytest
from leg_card.plans import grid_point, leg, mgrs_point, plan

from audit.leg_card import work_out_card
from audit.leg_card.check_plan import check_plan

FORD, SPRING = mgrs_point("A", "16S GF 4908 5915"), mgrs_point("B", "16S GF 4925 5990")


def checked(*references: str, **stated):
    vias = tuple(mgrs_point("via", one).position for one in references)
    return check_plan(plan((FORD, SPRING), (leg(via=vias, **stated),))).findings


@pytest.mark.parametrize(
    ("reference", "slip"),
    [
        ("16S GF 9916 5953", "digit-wrong"),
        ("16S GF 9416 5953", "digits-transposed"),
        ("16S GF 5953 4916", "easting-northing-swapped"),
        ("16S GG 4916 5953", "wrong-100km-square"),
    ],
)
def test_a_via_position_far_out_of_the_way_is_found_with_its_slip(reference, slip):
    """Bug: a line of 99993 m for a leg of 769 m had nothing to put right."""
    named, astray = checked(reference)
    assert (named.what, named.slips, named.computed) == ("position", (slip,), "16S GF 4916 5953")
    assert f'The reference of via 1 of leg 1, "{reference}", has' in named.message
    assert (astray.leg, astray.what, astray.given) == ("1", "via", reference)
    assert "past it 769 m" in astray.message


def test_of_two_slips_that_bring_the_line_back_none_is_named():
    # 4816 and 4916 are as likely for 4416: both lie beside the leg.
    (astray,) = checked("16S GF 4416 5953")
    assert (astray.what, astray.slips) == ("via", ())


def test_the_distance_of_the_plan_shows_a_slip_among_nearer_ones():
    # By 4880 5953 it is 469 + 583 m; swapped as 4808 5953 it would be 1070 + 1228 m.
    named, _ = checked("16S GF 4808 5953", distance_m=1052.0)
    assert (named.computed, named.slips) == ("16S GF 4880 5953", ("digits-transposed",))


@pytest.mark.parametrize("references", [("16S GF 4860 5953",), ("16S GF 4916 5953",),
                                        ("16S GF 4860 5930", "16S GF 4870 5990")])  # fmt: skip
def test_a_line_that_goes_round_something_is_let_pass(references):
    assert checked(*references) == ()


def test_a_round_that_ends_near_where_it_began_is_noted_and_no_finding():
    corners = tuple(grid_point("c", 749_085.0 + east, 4_059_155.0 + north).position
                    for east, north in ((1500, 0), (1500, 1500), (0, 1500)))  # fmt: skip
    near = grid_point("B", 749_085.0, 4_059_755.0)
    card = check_plan(plan((FORD, near), (leg(via=corners),))).card
    assert card.findings == ()
    assert any("If no round is meant, check their references" in note for note in card.notes)


def test_a_via_position_off_the_sheet_is_found():
    vias = (mgrs_point("via", "16S GF 4860 5953").position,)
    sheet = tuple(mgrs_point("s", one).position for one in ("16S GF 49 50", "16S GF 55 65"))
    found = check_plan(plan((FORD, SPRING), (leg(via=vias),), sheet=sheet)).findings
    (one,) = (one for one in found if one.what == "sheet")
    assert one.message.startswith("via 1 of leg 1 lies 395 m west of the map sheet. ")


@pytest.mark.parametrize(
    ("corners", "said"),
    [
        (("16S GF 55 65", "16S GF 40 50"), "The corners of the sheet are swapped"),
        (("16S GF 40 65", "16S GF 55 50"), "are not its south-west and its north-east"),
    ],
)
def test_corners_of_a_sheet_in_another_order_are_told_as_that(corners, said):
    """Bug: every point was told as kilometres west and east of a sheet with swapped corners."""
    sheet = tuple(mgrs_point("s", one).position for one in corners)
    (one,) = check_plan(plan((FORD, SPRING), sheet=sheet)).findings
    assert said in one.message


def test_a_via_reference_is_held_against_the_stated_distance() -> None:
    """Bug: two digits of a via swapped were missed at nearly three times the stated way."""
    points = (mgrs_point("A", "16S GF 4865 5865"), mgrs_point("B", "16S GF 4908 5915"))
    for text, wrong in (("16S GF 4890 5980", True), ("16S GF 4890 5890", False)):
        bent = leg(distance_m=662.0, via=(mgrs_point("", text).position,))
        told = work_out_card(plan(points, (bent,))).findings
        assert any("4890 5890 would make" in one.message for one in told) == wrong
        assert any(one.what == "via" for one in told) == wrong
