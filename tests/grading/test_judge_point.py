"""The benefit of the doubt, on paper: inside, outside by more than the error, between."""

from __future__ import annotations

import pytest

from audit.grading.judge_point import judge_point
from audit.grading.verdicts import Approach, Punch
from audit.measurement.leg_details import PointReached
from audit.settings import GradingSettings
from audit.standard import Standard

PLAIN = Standard(name="plain", radius_m=30.0)


def judged(distance_m=None, punch=None, standard=PLAIN, **about):
    near = None if distance_m is None else Approach(distance_m=distance_m, **{"sd_m": 5.0, **about})
    return judge_point(near, punch, standard, 50.0, GradingSettings())


@pytest.mark.parametrize(
    ("distance_m", "grade"),
    # Radius 30 m, error twice 5 m (JCGM 100:2008, 6.3.3): doubtful from 30 m to 40 m.
    [(0.0, "found"), (30.0, "found"), (30.1, "doubtful"), (40.0, "doubtful"), (40.1, "missed")],
)
def test_found_inside_missed_only_beyond_the_whole_error(distance_m, grade):
    assert judged(distance_m).grade == grade


def test_a_point_outside_is_told_by_how_much():
    against, _ = judged(44.0).evidence_against
    assert "within 44 m" in against
    assert "14 m outside the radius of 30 m" in against


def test_a_nearer_fix_as_recorded_is_told_beside_what_counts():
    """Bug: "within 23 m and no nearer", though a fix of the recording lay at 17 m."""
    verdict = judged(44.0, fix_m=17.0)
    (told,) = verdict.evidence_for
    assert "nearest lies 17 m from the point; the 44 m are of the cleaned recording" in told
    assert "no nearer" not in " ".join(verdict.evidence_against)
    assert judged(44.0, fix_m=43.8).evidence_for == ()


@pytest.mark.parametrize(("distance_m", "speaks_for"), [(39.0, 1), (44.0, 0)])
def test_an_error_that_does_not_reach_the_point_speaks_against(distance_m, speaks_for):
    """Bug: "which does not reach that far" stood under what speaks for having found it."""
    verdict = judged(distance_m)
    assert len(verdict.evidence_for) == speaks_for
    assert any("does not reach" in one for one in verdict.evidence_against) != bool(speaks_for)


def test_every_part_of_the_error_widens_the_doubt():
    assert judged(44.0).grade == "missed"
    assert judged(44.0, unseen_m=5.0).grade == "doubtful"
    assert judged(44.0, sd_m=8.0).grade == "doubtful"
    surveyed = Standard(name="plotted", radius_m=30.0, survey_sd_m=12.0)
    found = judged(44.0, standard=surveyed)
    assert found.grade == "doubtful"
    assert found.error_m == pytest.approx(26.0)  # m: twice the hypotenuse of 5 and 12


def test_the_radius_of_the_plan_holds_where_the_standard_has_none():
    assert judged(49.0, standard=Standard(name="open")).grade == "found"
    assert judged(49.0).grade == "missed"


def test_nothing_is_no_evidence_and_never_a_miss():
    nothing = judged()
    assert (nothing.grade, nothing.proof) == ("no-evidence", None)


def test_a_code_is_proof_before_the_track():
    far = judged(500.0, Punch(code="KT", right=True))
    assert (far.grade, far.proof) == ("found", "punch")
    assert far.evidence_against  # what the track says is kept
    assert judged(None, Punch(code="KT", right=True)).grade == "found"
    assert judged(500.0, Punch(code="KT", right=None)).grade == "found"


def test_a_wrong_code_makes_found_doubtful_and_helps_nobody():
    wrong = Punch(code="ZZ", right=False)
    assert judged(10.0, wrong).grade == "doubtful"
    assert judged(500.0, wrong).grade == "missed"
    assert judged(None, wrong).grade == "doubtful"


def test_a_point_passed_at_another_time_is_doubtful_unless_the_order_is_free():
    assert judged(10.0, in_turn=False).grade == "doubtful"
    free = Standard(name="free", radius_m=30.0, order="free")
    assert judged(10.0, in_turn=False, standard=free).grade == "found"


def reached(verdict, elsewhere_m=None):
    return PointReached(verdict=verdict, probability=0.1, radius_m=30.0, sd_m=5.0, unseen_m=0.0,
                        doubt=0.1, elsewhere_m=elsewhere_m)  # fmt: skip


@pytest.mark.parametrize("elsewhere_m", [2.0, 60.0, None])
def test_what_the_debrief_holds_too_close_to_call_is_never_missed(elsewhere_m):
    """Bug: the class failed a walker for a point, and his debrief did not call it missed.

    The debrief also weighs that another part of the recording was the way to the point.
    """
    close = judged(66.0, debriefed=reached("too close to call", elsewhere_m))
    assert close.grade == "doubtful"
    said = " ".join(close.evidence_for)
    assert ("within 2 m" in said and "10 %" in said) == (elsewhere_m == 2.0)
    assert ("too close to call" in said) == (elsewhere_m != 2.0)
    assert judged(66.0, debriefed=reached("missed", 60.0)).grade == "missed"


def test_a_doubt_that_the_debrief_does_not_share_is_told():
    kinder = judged(38.0, debriefed=reached("missed"))
    assert kinder.grade == "doubtful"
    assert "debrief says missed" in " ".join(kinder.evidence_against)
    assert "debrief" not in " ".join(judged(38.0).evidence_against)
