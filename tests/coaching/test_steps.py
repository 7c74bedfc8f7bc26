"""At which of the ten steps an error entered: planted at each step, told there and nowhere else.

The steps are common practice (ten gates from a point given to a point recognised); the
sizes of the slips are plain arithmetic. The walk is the demo's, whose first leg was
walked as planned and whose sixth was walked 7.2 degrees left, with the log saying that the
compass was set to the grid azimuth.
"""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import pytest
from coaching.demo_walk import demo, hop, own_card, steps
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.coaching.distance_steps import distance_hops
from audit.coaching.step_sentences import step_sentences
from audit.coaching.step_tasks import StepsSeen, step_tasks
from audit.coaching.steps import Hop, LegSteps
from audit.settings import Settings
from audit.walkers_log import LogEntry, WalkersLog

RIGHT = {"grid_azimuth": GridAzimuth(41.5), "magnetic_azimuth": MagneticAzimuth(49.0)}


def log(azimuth: float | None = 49.0, paces: float | None = 323.0) -> WalkersLog:
    set_to = None if azimuth is None else MagneticAzimuth(azimuth)
    return WalkersLog(entries=(LogEntry(leg="1", magnetic_azimuth=set_to, paces=paces),))


def test_a_right_card_well_walked_shows_no_error():
    of = steps(own_card(), log())
    assert of.entered == ()
    assert of.sentences == ("No step stands out: card, log and walk agree within ordinary error.",)


@pytest.mark.parametrize(
    ("values", "references", "step", "slip"),
    [
        # Taken down wrong, and then worked rightly from it: 16S GF 4865 5865 given.
        (
            {"grid_azimuth": GridAzimuth(149.4), "magnetic_azimuth": MagneticAzimuth(156.9),
             "distance_m": 650.0, "paces": 422.0},
            {"Beech Knoll": "16S GF 4865 5772"}, "given", None,
        ),
        (
            {"grid_azimuth": GridAzimuth(23.0), "magnetic_azimuth": MagneticAzimuth(30.5),
             "distance_m": 402.0, "paces": 261.0},
            {"Beech Knoll": "16S GF 4848 5865"}, "given", None,
        ),
        # Plotted one grid line too far east: 1330 m east, 370 m north.
        (
            {"grid_azimuth": GridAzimuth(74.5), "magnetic_azimuth": MagneticAzimuth(82.0),
             "distance_m": 1380.0, "paces": 897.0},
            {}, "plotted", "wrong-grid-line",
        ),
        ({"grid_azimuth": GridAzimuth(221.5), "magnetic_azimuth": MagneticAzimuth(229.0)}, {},
         "measured", "reciprocal"),
        ({"grid_azimuth": GridAzimuth(131.5), "magnetic_azimuth": MagneticAzimuth(139.0)}, {},
         "measured", "right-angle"),
        ({"magnetic_azimuth": MagneticAzimuth(34.0)}, {}, "converted", "gm-angle-reversed"),
        ({"magnetic_azimuth": MagneticAzimuth(41.5)}, {}, "converted", "gm-angle-omitted"),
        ({"magnetic_azimuth": MagneticAzimuth(56.5)}, {}, "converted", "gm-angle-doubled"),
        ({"magnetic_azimuth": MagneticAzimuth(48.0)}, {}, None, None),
        ({"distance_m": 1000.0, "paces": 650.0}, {}, "distance measured", "wrong-ruler"),
        ({"paces": 650.0}, {}, "turned into paces", "single-double-pace"),
        ({"paces": 390.0}, {}, "turned into paces", "hundred-miscounted"),
    ],
)  # fmt: skip
def test_an_error_planted_on_the_card_is_told_at_its_step(values, references, step, slip):
    # The log has what the card says, so that nothing more goes wrong on paper.
    card = own_card(references=references, **values)
    stated = card.legs[0]
    of = steps(card, log(stated.magnetic_azimuth.degrees, stated.paces))
    on_paper = [one for one in of.entered if one not in ("walked", "paced", "recognised")]
    assert on_paper == ([step] if step else [])
    slips = {name for one in of.hops if step in one.steps and one.entered for name in one.slips}
    assert slip is None or slip in slips


def test_the_swapped_digits_of_a_reference_are_named():
    card = own_card(references={"Beech Knoll": "16S GF 4865 5685"})
    of = steps(card)
    given = hop(of, "given", "point")
    assert given.slips == ("digits-transposed",)
    assert given.error == pytest.approx(1800.0, abs=0.1)  # m: 5865 less 5685, in tens
    assert "two digits of its northing swapped" in given.sentence


@pytest.mark.parametrize(
    ("set_to", "slip"), [(58.0, "bezel-clicks"), (229.0, "reciprocal"), (94.0, "azimuth-digits")]
)
def test_a_wrong_setting_is_told_by_the_log(set_to, slip):
    of = steps(own_card(), log(set_to), turned_deg=set_to - 49.0)
    assert "set" in of.entered
    assert slip in hop(of, "set").slips


@pytest.mark.parametrize(("off_deg", "told"), [(-2.0, False), (2.9, False), (4.0, True)])
def test_less_than_a_click_is_no_wrong_digit(off_deg, told):
    """Bug: 47 set for 49 was "one digit wrong (047 for 049)", where half a click is care."""
    of = steps(own_card(), log(49.0 + off_deg), turned_deg=off_deg)
    assert hop(of, "set").entered
    assert ("azimuth-digits" in hop(of, "set").slips) is told
    assert ("digit wrong" in hop(of, "set").sentence) is told


def test_what_only_the_log_says_is_no_step_at_which_an_error_entered():
    """Bug: a log with the back azimuth of a leg that was walked as planned blamed its walker.

    The step back from it was then "ordinary for this walker": 180 degrees.
    """
    of = steps(own_card(), log(229.0))
    assert "set" not in of.entered
    assert "walked" not in of.entered
    (said,) = [one for one in of.sentences if "229.0" in one]
    assert said.startswith("Noted: the azimuth set by the log")
    assert "The walk shows nothing of it" in said


def test_a_count_that_no_pace_explains_is_noted_and_no_fault():
    """Bug: the count of another leg, on a leg walked as planned, was a pace count to work on."""
    of = steps(own_card(), log(49.0, 1100.0))
    assert "paced" not in of.entered
    assert any(one.startswith("Noted: the 1100 paces") for one in of.sentences)


@pytest.mark.parametrize(
    ("walked_m", "slips"), [(660.0, ("pace-long",)), (360.0, ("pace-short",)), (1280.0, ())]
)
def test_a_distance_that_no_pace_count_comes_to_blames_no_count(walked_m, slips):
    """Bug: "1005 m more than the 416 paces counted. It fits a pace count that carries too far."

    Two and a half times as far as counted was not counted wrong: it is another part of the walk.
    """
    _, finished, _ = demo()
    walked = SimpleNamespace(under_way=False, straight_m=walked_m, straight_sd_m=5.0)
    hops = distance_hops(finished.card.legs[0], None, 323.0, 65.0, walked, Settings())
    last = replace(hops[-1], tolerance=1.0)
    assert last.slips == slips
    assert last.entered is bool(slips)
    (said,) = [one for one in step_sentences(hops) if f"{walked_m:.0f} m walked" in one]
    assert ("Nobody counts so wrong" in said) is (not slips)


@pytest.mark.parametrize(("counted", "walked_m"), [(323.0, 500.0), (400.0, 620.0)])
def test_a_count_that_the_distance_bears_out_is_not_unlikely(counted, walked_m):
    """Bug: a count within its tolerance was "unlikely" too, and no other count was practised."""
    _, finished, _ = demo()
    walked = SimpleNamespace(under_way=False, straight_m=walked_m, straight_sd_m=5.0)
    hops = distance_hops(finished.card.legs[0], None, counted, 65.0, walked, Settings())
    assert not any(hop.unlikely for hop in hops)


@pytest.mark.parametrize(("unlikely", "tasks"), [(False, 1), (True, 0)])
def test_of_a_leg_that_no_count_comes_to_the_pace_count_is_not_practised(unlikely, tasks):
    """Bug: "nobody counts so wrong", and the pace count to work on all the same."""
    _, finished, _ = demo()
    walked = finished.legs[0].audit.measures
    hops = tuple(
        Hop(steps=("paced",), kind="distance", error=error_m, tolerance=20.0, off_m=abs(error_m),
            slips=(), sentence=f"{error_m} m", written=written, unlikely=unlikely and not written)
        for error_m, written in ((-170.0, True), (30.0, False))
    )  # fmt: skip
    of = LegSteps(leg="1", hops=hops[:2] if unlikely else hops[:1], sentences=())
    seen = StepsSeen(
        steps={"1": of}, walked={"1": walked}, sure={"1"}, causes={}, told={}, radius_m=1.0
    )
    assert len(list(step_tasks(seen, Settings().coaching))) == tasks


def test_a_count_of_the_log_lost_no_hundred():
    """Bug: who noted 100 m fewer than his card's had "a hundred metres lost": he counted so."""
    of = steps(own_card(paces=323.0), log(paces=323.0 - 65.0))
    paced = next(one for one in of.hops if one.steps == ("paced",) and one.written)
    assert paced.entered or paced.noted
    assert paced.slips == ()


def test_another_legs_azimuth_set_is_named():
    of = steps(own_card(), log(99.5))
    assert hop(of, "set").slips == ("neighbour-azimuth",)
    assert "the azimuth of leg 4" in hop(of, "set").sentence


def test_a_line_badly_held_is_told_where_the_setting_was_right():
    of = steps(own_card(), WalkersLog(
        entries=(LogEntry(leg="6", magnetic_azimuth=MagneticAzimuth(237.5), paces=552.0),)), leg="6")  # fmt: skip
    assert of.entered[0] == "walked"
    assert hop(of, "walked").error == pytest.approx(-7.2, abs=0.5)  # deg


def test_the_demos_sixth_leg_was_set_wrong():
    _, _, written = demo()
    of = steps(None, written, leg="6")
    assert of.entered == ("set",)
    assert hop(of, "set").error == pytest.approx(-7.5)
    assert hop(of, "set").slips[0] == "gm-angle-omitted"


def test_without_a_log_set_and_walked_cannot_be_told_apart():
    of = steps(own_card(5), leg="6")
    assert hop(of, "walked").steps == ("set", "walked")
    assert of.sentences[0].startswith("Cannot tell which of set or walked: ")


def test_without_a_grid_azimuth_a_known_slip_still_decides():
    card = own_card(grid_azimuth=None, magnetic_azimuth=MagneticAzimuth(34.0))
    assert steps(card, log(34.0)).entered[0] == "converted"
    odd = own_card(grid_azimuth=None, magnetic_azimuth=MagneticAzimuth(71.0))
    (wrong,) = [one for one in steps(odd, log(71.0)).hops
                if one.entered and "converted" in one.steps]  # fmt: skip
    assert wrong.steps == ("plotted", "measured", "converted")


@settings(max_examples=60, deadline=None)
@given(
    grid=st.one_of(st.none(), st.floats(0.0, 359.9)),
    magnetic=st.one_of(st.none(), st.floats(0.0, 359.9)),
    set_to=st.one_of(st.none(), st.floats(0.0, 359.9)),
    distance=st.one_of(st.none(), st.floats(50.0, 3000.0)),
    paces=st.one_of(st.none(), st.floats(20.0, 3000.0)),
    counted=st.one_of(st.none(), st.floats(20.0, 3000.0)),
)
def test_the_steps_add_up_to_what_was_walked(grid, magnetic, set_to, distance, paces, counted):
    # A law of sums: however many numbers are known between, the hops telescope.
    card = own_card(
        grid_azimuth=None if grid is None else GridAzimuth(grid),
        magnetic_azimuth=None if magnetic is None else MagneticAzimuth(magnetic),
        distance_m=distance, paces=paces,
    )  # fmt: skip
    of = steps(card, log(set_to, counted))
    _, finished, _ = demo()
    measures = finished.legs[0].audit.measures
    kept_all = not any(one.steps == ("plotted",) for one in of.hops)
    turned = sum(one.error for one in of.hops if one.kind == "direction")
    stretched = sum(one.error for one in of.hops if one.kind == "distance")
    if kept_all:
        off = (turned - measures.azimuth_error_deg + 180.0) % 360.0 - 180.0
        assert off == pytest.approx(0.0, abs=1e-6)
        assert stretched == pytest.approx(measures.distance_error_m, abs=1e-6)


def test_legs_go_together_by_order_where_no_name_is_shared():
    from audit.coaching.walkers_card import own_legs

    plan, finished, _ = demo()
    renamed = replace(plan, legs=tuple(replace(leg, name=f"L{leg.name}") for leg in plan.legs))
    laid, notes = own_legs(finished.card, renamed, plan)
    assert list(laid) == list("1234567")
    assert notes == ("The walker's card names its legs otherwise; they are taken in order.",)
    short = replace(plan, legs=plan.legs[:3])
    laid, notes = own_legs(finished.card, short, plan)
    assert list(laid) == list("123")
    assert notes == ("The walker's card says nothing of legs 4, 5, 6 and 7.",)


@pytest.mark.parametrize(("off_deg", "first"), [(10.0, "dial-misread"), (-9.0, "bezel-clicks")])
def test_a_setting_a_graduation_off_is_told_before_clicks_that_come_near(off_deg, first):
    """Bug: a compass set exactly 10 degrees off "fits 3 clicks of a bezel", which are 9."""
    of = hop(steps(own_card(), log(49.0 + off_deg), turned_deg=off_deg), "set")
    assert of.slips[0] == first
    assert ("bezel-clicks" in of.slips) is (first == "bezel-clicks")


def test_a_setting_with_the_angle_applied_twice_is_told_so():
    """Bug: the angle twice, or the wrong way, at the compass had no slip told, or a look-alike."""
    _, finished, _ = demo()
    g = finished.card.angles.grid_magnetic_angle_deg
    magnetic = finished.card.legs[0].magnetic.degrees
    for turn_deg, slip in ((-g, "gm-angle-doubled"), (2.0 * g, "gm-angle-reversed")):
        of = hop(steps(own_card(), log(magnetic + turn_deg), turned_deg=turn_deg), "set")
        assert of.slips[0] == slip


def test_a_log_of_the_card_leaves_open_whether_the_back_azimuth_was_set_or_walked():
    """Bug: it was put on the line held, and made a task, where the log is what was believed."""
    of = steps(own_card(), log(49.0), turned_deg=180.0)
    assert hop(of, "walked").steps == ("set", "walked")
    assert hop(of, "walked").slips == ("reciprocal",)
    assert any("Cannot tell which of set or walked" in said for said in of.sentences)
