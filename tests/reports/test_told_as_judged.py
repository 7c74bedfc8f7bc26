"""Reports tell a walk by the settings by which it was debriefed, not by the usual ones."""

from __future__ import annotations

from dataclasses import replace

from course_setting.lanes import EAST_LANE, lane
from debriefing.hand_walked import COURSE, TIME_S, WALK, plan_of, track_of
from reports.sample_debrief import sample_debrief

import audit
from audit.classroom.leg_results import leg_results, trace_of
from audit.course_setting.check_lanes import check_lanes
from audit.grading.verdicts import PointVerdict
from audit.reports import wording
from audit.reports.class_words import named_cause
from audit.reports.lanes_report import render_lanes
from audit.reports.page_coaching import to_keep
from audit.reports.page_story import story_sentences
from audit.reports.terminal_report import render_terminal
from audit.reports.walk_verdict import verdict
from audit.settings import Settings

USUAL = Settings()


def debriefed(settings: Settings):
    return audit.debrief(plan_of(*COURSE), track_of(TIME_S, WALK), settings=settings)


def told_by(settings: Settings):
    """Give the sample with other settings, as if it had been made by them."""
    made = sample_debrief()
    legs = tuple(replace(leg, settings=settings) for leg in made.legs)
    return replace(made, legs=legs, settings=settings)


def test_a_debrief_carries_the_settings_it_was_made_by():
    own = replace(USUAL, quality=replace(USUAL.quality, unsure=0.8))
    made = debriefed(own)
    assert made.settings is own
    assert all(leg.settings is own for leg in made.legs)


def test_one_thing_where_one_was_asked_for_is_not_all_that_stood_out():
    """Bug: of a debrief with one thing to keep it was said that nothing else stood out."""
    one = replace(USUAL, coaching=replace(USUAL.coaching, things=1))
    assert len(debriefed(USUAL).coaching.keep) == 2
    (told,) = to_keep(debriefed(one))
    assert "Nothing else stands out" not in told


def test_a_leg_that_coaching_left_aside_does_not_head_the_debrief():
    """Bug: the first sentence blamed a leg that the talk had left aside as not sure."""
    strict = replace(USUAL, coaching=replace(USUAL.coaching, sure_portion=1.0))
    made = debriefed(strict)
    assert made.coaching.left_aside == ("1", "2")
    assert not any("ended within" in line for line in verdict(made))
    assert "legs 1 and 2 is not sure" in " ".join(story_sentences(made))


def test_a_cause_is_named_alone_from_the_probability_that_was_set():
    """Bug: whatever was set, a cause at 0.94 was told as the one, of a class as of a walk."""
    strict = told_by(replace(USUAL, reports=replace(USUAL.reports, named_cause_probability=0.99)))
    for made, named in ((sample_debrief(), True), (strict, False)):
        missed = PointVerdict(grade="missed", proof="track", radius_m=30.0, error_m=9.0)
        trace = trace_of(made, USUAL.grading)
        results = leg_results(made, [missed] * len(made.legs), trace)
        assert (wording.named_mistake(made.legs[0]) is not None) is named
        assert (named_cause(results[0]) is not None) is named


def test_an_azimuth_is_told_as_measured_up_to_the_interval_that_was_set():
    """Bug: whatever was set, an azimuth good to a degree was told."""
    never = told_by(replace(USUAL, quality=replace(USUAL.quality, unmeasured_deg=0.0)))
    assert "azimuth cannot be measured" in render_terminal(never)
    assert "azimuth cannot be measured" not in render_terminal(sample_debrief())


def test_lanes_say_by_which_rules_they_stand_out():
    """Bug: lanes judged by other rules were told with the usual ones."""
    own = replace(USUAL.course_setting, uneven_share=0.37, robust_least_lanes=11)
    told = [
        render_lanes(check_lanes([lane("East", EAST_LANE)], settings=settings))
        for settings in (USUAL, replace(USUAL, course_setting=own))
    ]
    assert ["37" in one for one in told] == [False, True]
    assert ["11 lanes" in one for one in told] == [False, True]
