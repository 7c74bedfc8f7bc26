"""The card on paper, as a page and as text: all it must say, in black on white."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import replace

import pytest
from leg_card.plans import A, B, grid_point, leg, plan

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.leg_card.carried_card import carried_card
from audit.reports.card_page import render_card_page
from audit.reports.card_paper import render_card_pdf
from audit.reports.card_text import render_card_text
from audit.reports.cautions import CAUTIONS
from audit.reports.paper_sizes import CARD_PAPERS, card_sheet
from audit.words import Words, spoken
from audit.words.in_other_units import Units

MIRE = plan(
    (A, B),
    (leg(note="wall on the left"),),
    grid_magnetic_angle_deg=-6.5,
    grid_magnetic_angle_date=dt.date(2026, 1, 1),
    paces_per_100m=65.0,
    safety_azimuth=GridAzimuth(180.0),
    safety_note="to the boundary road, then east",
)


def flat(text: str) -> str:
    return " ".join(text.replace("\N{NO-BREAK SPACE}", " ").split())


def test_the_text_says_all_that_is_set_and_counted():
    text = flat(render_card_text(carried_card(MIRE)))
    for said in (
        "magnetic 066.5°", "grid 060.0°", "back magnetic 246.5°", "distance 1000 m",
        "double paces 650", "bezel clicks 22 left", "climb ________", "note: wall on the left",
        "paces walked ________", "22 clicks left set 066.0°, 0.5° left: ends 9 m left of B; look right",
        "186.5° magnetic (grid 180.0° − (−6.50°) = 186.5°)",
        "to the boundary road, then east", "Leg 1: 60.00° − (−6.50°) = 66.50°", "of 2026-01-01",
        "The ground is taken for level", "3 clicks left set 069.0°, 2.5° right: ends 44 m right",
    ):  # fmt: skip
        assert said in text, said
    assert all(caution in text for caution in CAUTIONS[:4])


def test_the_whole_distance_is_the_sum_of_the_legs_shown():
    """Bug: legs of 500, 659, 769 and 570 m stood under a head of 2499 m."""
    points = [
        grid_point(name, 700_000.0 + 100.4 * at, 3_580_000.0) for at, name in enumerate("ABCD")
    ]
    legs = [leg("1", "A", "B"), leg("2", "B", "C"), leg("3", "C", "D")]
    text = flat(render_card_text(carried_card(plan(points, legs))))
    assert text.count("distance 100 m") == 3
    assert "3 legs, 300 m" in text
    assert "300 m; climb" in text


@pytest.mark.parametrize("name", ["Mire", "A name that goes on and on " * 5])
def test_no_line_of_the_text_is_wider_than_a_terminal(name):
    lines = render_card_text(carried_card(replace(MIRE, name=name))).splitlines()
    assert max(map(len, lines)) <= 80
    assert all(line.isprintable() for line in lines)


def test_an_angle_without_a_year_and_a_plan_with_findings_are_warned_of():
    bad = plan((A, B), (leg(magnetic_azimuth=MagneticAzimuth(55.0)),), grid_magnetic_angle_deg=-5.0)
    text = flat(render_card_text(carried_card(bad)))
    assert "does not say of what year the angle is" in text
    assert "Not to be carried yet: " in text
    assert "055.0" in text
    old = plan((A, B), grid_magnetic_angle_deg=-5.0, grid_magnetic_angle_date=dt.date(2016, 6, 1))
    text = flat(render_card_text(carried_card(old)))
    assert "10 years old: do not go by it" in text
    fine = flat(render_card_text(carried_card(MIRE)))
    assert "Not to be carried" not in fine
    assert "!" not in fine


def test_what_an_angle_to_be_put_right_has_turned_is_marked():
    """Bug: the card warned of an old angle, and looked as if it had another one in its sums."""
    legs = (
        leg("1", "A", "B"),
        leg("2", "B", "A", magnetic_azimuth=MagneticAzimuth(245.4)),
    )
    course = plan((A, B), legs, grid_magnetic_angle_deg=-5.0, safety_azimuth=GridAzimuth(180.0),
                  grid_magnetic_angle_date=dt.date(2016, 6, 1))  # fmt: skip
    carried = carried_card(course)
    assert carried.angle_too_old
    text = flat(render_card_text(carried))
    assert (
        "Everything marked ! is worked out with the angle as the plan gives it, 5.0° west" in text
    )
    assert "magnetic ! 065.0° grid 060.0° back magnetic ! 245.0°" in text
    assert "magnetic 245.4° grid ! 240.4° back magnetic 065.4°" in text
    assert "! 185.0° magnetic" in text


def test_a_plan_without_a_safety_bearing_leaves_room_for_one():
    assert "none in the plan. Ask for it: ______" in render_card_text(carried_card(plan((A, B))))


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_the_page_has_its_paper_and_no_colour(paper):
    page = render_card_page(carried_card(MIRE), paper)
    sheet = card_sheet(paper)
    assert f"size: {sheet.width_mm}mm {sheet.height_mm}mm" in page
    # By red light and on grey paper only black on white carries meaning.
    assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b", page)) <= {"#000", "#fff"}
    assert not re.search(r"\b(?:rgb|hsl|red|orange|grey|gray|blue)\b\s*[(;]", page)
    assert not re.search(r"(?:src|href)=", page)
    for said in ("066.5°", "186.5° magnetic", "wall on the left", "paces walked"):
        assert said in page


def test_a_figure_and_its_unit_stay_on_one_line_of_the_page():
    """Bug: a line of the card ended in "ends 9", and the next began with "m left of B"."""
    page = render_card_page(carried_card(MIRE), "a6")
    assert "ends 9\N{NO-BREAK SPACE}m left of B" in page


def test_sizes_are_those_of_iso_216_and_ansi():
    # ISO 216: A4 210 by 297 mm, A5 148 by 210, A6 105 by 148; ANSI/ASME Y14.1 A: 8.5 by 11 inch.
    sizes = {paper: (card_sheet(paper).width_mm, card_sheet(paper).height_mm)
             for paper in CARD_PAPERS}  # fmt: skip
    wanted = {"a6": (105.0, 148.0), "a5": (148.0, 210.0), "a4": (210.0, 297.0),
                     "letter": (8.5 * 25.4, 11 * 25.4)}  # fmt: skip
    assert sizes.keys() == wanted.keys()
    for paper, size in wanted.items():
        assert sizes[paper] == pytest.approx(size)


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_the_pdf_is_of_that_size_and_comes_out_the_same_twice(paper):
    carried = carried_card(MIRE)
    made = render_card_pdf(carried, paper)
    assert made.startswith(b"%PDF")
    assert made == render_card_pdf(carried, paper)
    box = re.search(rb"/MediaBox ?\[ ?0 0 ([\d.]+) ([\d.]+) ?\]", made)
    sheet = card_sheet(paper)
    points = [float(one) for one in box.groups()]
    assert points == pytest.approx([sheet.width_mm / 25.4 * 72, sheet.height_mm / 25.4 * 72], abs=1)


def card_in(**chosen) -> str:
    with spoken(Words(language="de", **chosen)):
        return flat(render_card_text(carried_card(MIRE)))


@pytest.mark.parametrize(
    ("unit", "magnetic", "back"),
    # 66.5 degrees by the definitions of the units: mils to the circle 6400 (FM 21-26, 6-1b),
    # 6300 and 6000 (common practice, no source); the gon is a hundredth of a right angle
    # (ISO 80000-3:2019).
    [
        ("degrees", "magnetisch 066,5°", "zurück (magn.) 246,5°"),
        ("mil6400", "magnetisch, Strich 1182", "zurück (magn.), Strich 4382"),
        ("mil6300", "magnetisch, Strich 1164", "zurück (magn.), Strich 4314"),
        ("mil6000", "magnetisch, Strich 1108", "zurück (magn.), Strich 4108"),
        ("gon", "magnetisch, gon 073,9", "zurück (magn.), gon 273,9"),
    ],
)
def test_the_card_is_told_in_the_angles_that_are_chosen(unit, magnetic, back):
    text = card_in(units=Units(angle=unit))
    assert magnetic in text
    assert back in text


def test_the_card_is_told_in_the_lengths_and_paces_that_are_chosen():
    # 1000 m are 1093.6 yd and 650 double paces are 1300 single ones; 65 double paces to
    # 100 m are 130 single ones, and to 100 yd (91.44 m) 118.9.
    text = card_in(units=Units(length="yards", paces="single"))
    for said in ("Entfernung 1094 yd", "Einfachschritte 1300", "118,9 Einfachschritte auf 100 yd"):
        assert said in text


ROUND = replace(MIRE, legs=(leg(via=(grid_point("c", 700_000.0, 3_580_500.0).position,)),))


@pytest.mark.parametrize("made", [render_card_text, lambda card: render_card_page(card, "a6")])
def test_a_leg_along_via_positions_has_a_row_for_each_piece(made):
    """Bug: one azimuth and one distance stood for a leg with a corner."""
    text = flat(re.sub(r"<[^>]+>", " ", made(carried_card(ROUND))))
    for said in ("A to via 1: ", "via 1 to B: ", "006.5°", "096.5°", "500 m", "866 m",
                 "in all: distance 1366 m", "in all: double paces 888"):  # fmt: skip
        assert said in text, said
    assert "066.5°" not in text  # the straight azimuth, on which nobody walks that far
    assert "Leg 1: 0.00° − (−6.50°) = 6.50°" in text


def test_a_leg_of_pieces_has_the_sum_of_its_rows_and_what_the_plan_gives():
    """Bug: rows of 500 m and 866 m stood above "in all: distance 1330 m"."""
    (bent,) = ROUND.legs
    stated = replace(ROUND, legs=(replace(bent, distance_m=1330.0, paces=865.0),))
    text = flat(render_card_text(carried_card(stated)))
    assert "in all: distance ! 1366 m (plan 1330 m) in all: double paces 888 (plan 865)" in text
    assert "1 leg, 1366 m" in text


def test_a_long_leg_of_many_pieces_is_typeset():
    corners = tuple(grid_point("c", 700_000.0 + 50.0 * n, 3_580_000.0).position for n in range(9))
    long = replace(MIRE, legs=(leg(via=corners),))
    assert render_card_pdf(carried_card(long), "a6").startswith(b"%PDF")


def test_a_name_that_hides_tags_is_shown_as_it_stands():
    page = render_card_page(carried_card(replace(MIRE, name="<b>Mire</b>")), "a6")
    assert "&lt;b&gt;Mire" in page


@pytest.mark.parametrize(
    ("angle_deg", "said"),
    [
        (-6.0, "22 clicks left set 066.0°: ends on the line"),
        (-5.9, "22 clicks left set 066.0°, 0.1° right: ends 2 m from B"),
        (-5.7, "22 clicks left set 066.0°, 0.3° right: ends 5 m right of B; look left"),
    ],
)
def test_within_a_step_of_the_point_there_is_no_side_to_look_to(angle_deg, said):
    """Bug: "ends 1 m left of P5; look right"."""
    near = replace(MIRE, grid_magnetic_angle_deg=angle_deg)
    text = flat(render_card_text(carried_card(near)))
    assert f"{said} note:" in text or f"{said} time:" in text


def test_where_a_setting_ends_goes_by_the_points():
    """Bug: half a degree in a plan's own azimuth did not show in where its setting ended."""
    # The points lie on grid 060, magnetic 066.5 of this angle; 066 ends 1000 m x sin 0.5 left.
    rounded = leg(magnetic_azimuth=MagneticAzimuth(66.0), distance_m=1000.0)
    text = flat(render_card_text(carried_card(replace(MIRE, legs=(rounded,)))))
    assert "22 clicks left set 066.0°: ends 9 m left of B; look right" in text


@pytest.mark.parametrize(
    ("stated", "cells"),
    [
        (
            {"grid_azimuth": GridAzimuth(60.0), "magnetic_azimuth": MagneticAzimuth(53.5)},
            (
                "magnetic ! 053.5° grid 060.0° back magnetic ! 233.5° distance 1000 m"
                " double paces 650 bezel clicks ! 18 left"
            ),
        ),
        (
            {"grid_azimuth": GridAzimuth(160.0)},
            (
                "magnetic ! 166.5° grid ! 160.0° back magnetic ! 346.5° distance 1000 m"
                " double paces 650 bezel clicks ! 55 left"
            ),
        ),
        (
            {"paces": 450.0},
            (
                "magnetic 066.5° grid 060.0° back magnetic 246.5° distance 1000 m"
                " double paces ! 450 bezel clicks 22 left"
            ),
        ),
    ],
    ids=["magnetic", "grid", "paces"],
)
def test_what_a_check_of_the_leg_does_not_bear_out_is_marked(stated, cells):
    """Bug: "ends 9 m left of B; look right" beside a magnetic azimuth that ends 140 m off."""
    text = flat(render_card_text(carried_card(replace(MIRE, legs=(leg(**stated),)))))
    assert cells in text
    assert "The check does not bear out what is marked ! on leg 1" in text
    assert "look " not in text.split("All legs")[0]


def test_a_stated_sum_with_the_angle_in_doubt_is_marked():
    """Bug: the same magnetic azimuth was marked where the plan left it out, not where it said it."""
    old = replace(MIRE, grid_magnetic_angle_deg=-5.0, grid_magnetic_angle_date=dt.date(2016, 6, 1))
    own = leg(grid_azimuth=GridAzimuth(60.0), magnetic_azimuth=MagneticAzimuth(65.0))
    text = flat(render_card_text(carried_card(replace(old, legs=(own,)))))
    assert "magnetic ! 065.0° grid 060.0° back magnetic ! 245.0°" in text
    assert "bezel clicks ! 22 left" in text
    assert "66.0°, 1.0° right" in text
    assert "look " not in text.split("All legs")[0]


def test_a_plan_in_true_azimuths_has_them_on_its_card():
    """Bug: the card showed magnetic and grid only, and the numbers of the plan stood nowhere."""
    course = plan((A, B), (leg(true_azimuth=TrueAzimuth(61.1)),), grid_magnetic_angle_deg=-6.5)
    carried = carried_card(course)
    grid, angles = carried.card.legs[0].azimuth, carried.card.angles
    text = flat(render_card_text(carried))
    assert f"true {angles.true(grid).degrees:05.1f}°" in text
    assert " true 0" not in flat(render_card_text(carried_card(MIRE)))
    for paper in CARD_PAPERS:
        assert render_card_pdf(carried, paper)
        assert ">true<" in re.sub(r"\s", "", render_card_page(carried, paper))
