"""What the card says it assumed."""

from __future__ import annotations

import datetime as dt

import pytest
from leg_card.plans import DAY, A, B, grid_point, mgrs_point, place, plan

from audit.leg_card import work_out_card


def note(card_notes: tuple[str, ...], words: str) -> str:
    (found,) = [line for line in card_notes if words in line]
    return found


def test_the_tracks_day_stands_in_for_the_plans() -> None:
    card = work_out_card(plan((A, B), date=None), track_date=DAY)
    assert (card.date, card.date_source) == (DAY, "track")
    assert DAY.isoformat() in note(card.notes, "The plan has no date")


def test_the_plans_day_comes_first() -> None:
    card = work_out_card(plan((A, B)), track_date=dt.date(2026, 10, 4))
    assert (card.date, card.date_source) == (DAY, "plan")
    assert not [line for line in card.notes if "The plan" in line]


def test_a_plan_of_another_year_is_told() -> None:
    card = work_out_card(plan((A, B), date=dt.date(2021, 10, 3)), track_date=DAY)
    assert "changed by about" in note(card.notes, "The plan is for 2021-10-03")


def test_a_computed_angle_says_where_it_is_from() -> None:
    said = note(work_out_card(plan((A, B))).notes, "The grid-magnetic angle is computed")
    assert "WMM-2025" in said
    assert "west" in said
    assert "map in hand" in said


@pytest.mark.parametrize("date", [None, dt.date(2004, 1, 1)])
def test_an_angle_without_a_model_stands_unchecked(date: dt.date | None) -> None:
    card = work_out_card(plan((A, B), date=date, grid_magnetic_angle_deg=-4.0))
    assert note(card.notes, "stands unchecked")
    assert card.date == date
    assert (card.declination_deg, card.model_grid_magnetic_angle_deg, card.model) == (
        None,
        None,
        "",
    )
    assert card.angles.grid_magnetic_angle_deg == -4.0
    assert card.findings == ()


def test_a_small_course_has_one_angle() -> None:
    assert not [line for line in work_out_card(plan((A, B))).notes if "Over the course" in line]


def test_a_course_over_which_the_angle_changes_says_so() -> None:
    # Convergence grows by the sine of the latitude with each degree of longitude.
    far = place("B", A.position.longitude_deg + 0.6, A.position.latitude_deg)
    said = note(work_out_card(plan((A, far))).notes, "Over the course")
    assert "uses that of A" in said


def test_without_a_model_the_convergence_still_tells() -> None:
    far = place("B", A.position.longitude_deg + 0.6, A.position.latitude_deg)
    card = work_out_card(plan((A, far), date=None, grid_magnetic_angle_deg=-4.0))
    assert note(card.notes, "Over the course")


def test_a_coarse_reference_is_told() -> None:
    points = (mgrs_point("A", "16S GF 41 42"), mgrs_point("B", "16S GF 4450 4250"))
    said = note(work_out_card(plan(points)).notes, "names a square")
    assert "The reference of A names a square of 1000 m" in said


def test_a_weak_field_is_told() -> None:
    points = (place("A", 40.0, 85.0), place("B", 40.2, 85.01))
    assert note(work_out_card(plan(points)).notes, "magnetic field is weak")


def test_a_stretched_grid_is_told() -> None:
    # Mercator stretches by 1 / cos(latitude): half as much again at 48.2 degrees (exact sphere).
    points = (
        grid_point("A", 1_000_000.0, 6_140_000.0, "EPSG:3857"),
        grid_point("B", 1_000_000.0, 6_141_000.0, "EPSG:3857"),
    )
    said = note(work_out_card(plan(points, grid="EPSG:3857")).notes, "than on the ground")
    assert "longer" in said
    # A UTM zone, even at its edge, keeps to a thousandth.
    assert not [line for line in work_out_card(plan((A, B))).notes if "on the ground" in line]


def test_the_plans_own_notes_come_first() -> None:
    card = work_out_card(plan((A, B), notes=("The reader took this for that.",)))
    assert card.notes[0] == "The reader took this for that."


@pytest.mark.parametrize(
    ("rate", "noted"),
    # A double pace is two steps: 46 of them are steps of 1.09 m, 30 of 1.67 m.
    [(30.0, True), (46.0, False), (65.0, False), (130.0, False), (200.0, False), (205.0, True)],
)
def test_a_pace_count_that_nobody_walks_with_is_noted(rate: float, noted: bool) -> None:
    notes = work_out_card(plan((A, B), paces_per_100m=rate)).notes
    assert any("make a step of" in note for note in notes) is noted
