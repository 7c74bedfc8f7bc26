"""Steps that the mistake of a leg explains are not told again beside it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from coaching.test_work_on import audits, finding, shown, talk

from audit.coaching.steps import Hop, LegSteps
from audit.units import turned_aside_m

LEG = "3"
METRES = 400.0


def hop(step, error, *slips):
    turned = step not in ("paced", "distance measured")
    return Hop(
        steps=(step,), kind="direction" if turned else "distance", error=error, tolerance=3.1,
        off_m=turned_aside_m(METRES, error) if turned else abs(error), slips=slips,
        written=step not in ("walked", "paced"), sentence=f"{step} {error:.1f}.",
    )  # fmt: skip


def told(*hops, causes, confidence=1.0):
    """Give what is to be worked on, by its cause, of a leg of 400 m walked as planned."""
    as_planned = {"straight_m": METRES, "distance_error_m": 0.0, "distance_ratio": 1.0}
    as_planned |= {"miss_m": 60.0}
    legs = [
        replace(leg, confidence=confidence) if leg.card.name == LEG else leg
        for leg in audits(leg3=as_planned)
    ]
    steps = {LEG: LegSteps(leg=LEG, hops=hops, sentences=())}
    coaching = talk(shown(legs, causes={LEG: causes}, steps=steps, logged=True))
    return {one.cause: one for one in coaching.work_on if LEG in one.legs}


def predicts(cause, predicted, unit, probability=0.9):
    return replace(finding(cause, probability), predicted=predicted, unit=unit)


@pytest.mark.parametrize(
    ("cause", "predicted", "unit", "steps"),
    [
        ("wrong-mil-circle", -18.5, "deg", [("walked", -21.9)]),
        ("steady-bias", -8.0, "deg", [("walked", -9.3)]),
        ("reciprocal", 180.0, "deg", [("walked", -179.2)]),
        ("wrong-ruler", 0.5, "ratio", [("paced", -201.0, "single-double-pace")]),
        ("easting-northing-swapped", 778.0, "m", [("set", -27.1), ("paced", 486.0)]),
        ("wrong-grid-line", 1000.0, "m", [("set", 13.8), ("paced", 966.0)]),
    ],
)
def test_what_the_mistake_of_a_leg_explains_is_no_second_task(cause, predicted, unit, steps):
    """Bug: "a wrong ruler", and "single for double paces" beside it, for the same metres."""
    hops = [hop(*step) for step in steps]
    assert list(told(*hops, causes=(predicts(cause, predicted, unit),))) == [cause]


def test_what_the_mistake_of_a_leg_does_not_explain_is_told():
    named = (predicts("gm-angle-omitted", -7.5, "deg"),)
    hops = (hop("set", -7.5, "gm-angle-omitted"), hop("walked", -8.0), hop("paced", 90.0))
    assert set(told(*hops, causes=named)) == {"gm-angle-omitted", "pace-short"}
    assert "paced 90.0" in told(*hops, causes=named)["pace-short"].evidence
    # Turned the other way than the mistake would: it explains nothing of it.
    turned = told(hop("walked", 15.0), causes=named)
    assert set(turned) == {"gm-angle-omitted", "cannot-tell"}


def test_a_mistake_that_is_likeliest_and_not_named_lends_its_exercise():
    """Bug: what a dial misread likeliest explained was told as a line that was not held."""
    likely = (
        predicts("dial-misread", 10.0, "deg", 0.32), predicts("bezel-clicks", 9.0, "deg", 0.29)
    )  # fmt: skip
    (task,) = told(hop("walked", 10.5), causes=likely).values()
    assert (task.cause, task.certain) == ("dial-misread", False)


def test_a_leg_left_aside_as_unsure_is_not_told_by_what_its_likeliest_mistake_explains():
    """Bug: an azimuth set 55 degrees off was practised as clicks of the bezel."""
    likely = (predicts("wrong-grid-line", 1000.0, "m", 0.49),)
    of_leg = told(hop("set", -55.0), hop("paced", 685.0), causes=likely, confidence=0.42)
    assert list(of_leg) == ["wrong-grid-line"]  # the setting stands in the log
    assert not told(hop("walked", -55.0), causes=likely, confidence=0.42)


@pytest.mark.parametrize(
    ("step", "error", "cause"),
    [
        ("set", 9.0, "bezel-clicks"),
        ("set", -13.0, "bezel-clicks"),
        ("set", -55.0, "cannot-tell"),
        ("walked", 10.6, "cannot-tell"),
    ],
)
def test_clicks_end_where_the_cause_does_and_a_straight_line_did_not_veer(step, error, cause):
    """Bug: the exercise of bezel clicks for 55 degrees, and of a veer where no line bends."""
    within = (finding("within-skill", 0.4), predicts("veer", 0.2, "deg", 0.01))
    assert list(told(hop(step, error), causes=within)) == [cause]


def test_a_line_that_bends_by_what_it_ended_off_did_veer():
    within = (finding("within-skill", 0.4), predicts("veer", 9.0, "deg", 0.2))
    assert list(told(hop("walked", 10.6), causes=within)) == ["veer"]


def test_a_slip_between_two_written_numbers_does_not_hang_on_the_match():
    """Bug: 231 paces for 455 m on the card, pure paper, were left aside at 68 % of the walk."""
    slip = hop("turned into paces", -100.0, "hundred-miscounted")
    likely = (predicts("hundred-miscounted", -100.0, "m"),)
    written = told(replace(slip, kind="distance", written=True), causes=likely, confidence=0.68)
    assert list(written) == ["hundred-miscounted"]
    assert "the step of turning the distance into" in written["hundred-miscounted"].evidence
