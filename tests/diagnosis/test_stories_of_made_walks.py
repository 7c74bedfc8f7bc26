"""The joint story of walks that were made: the angle left out on legs 1 to 3, then put right.

The truth is planted leg by leg; what is told must be that mistake on those legs.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from walks import DIFFICULTIES, Walk, make_walk
from walks import walkers as made_walkers
from walks.mistakes import draw_leg_intent

import audit
from audit.debriefing.finished_debrief import Debrief
from audit.reports.joint_story import joint_story

LEFT_OUT = (0, 1, 2)
LEAST_DEG = 9.0
WALKS = 4
FAMILY = replace(
    DIFFICULTIES["trained"],
    legs=(6, 9),
    notices=0.0,
    skips=0.0,
    swaps=0.0,
    repeats=0.0,
    lost=0.0,
    abandons=0.0,
    starts_late=0.0,
    ends_early=0.0,
    two_walks=0.0,
    vehicle=0.0,
).planting()


@pytest.fixture(scope="module")
def told() -> list[tuple[Walk, Debrief]]:
    """Debrief walks with an angle that is large enough to show."""

    def draw(rng, difficulty, course, leg, shift_before_m):
        planted = {"gm-angle-omitted": 1.0} if leg in LEFT_OUT else {}
        return draw_leg_intent(rng, difficulty.planting(leg=planted), course, leg, shift_before_m)

    found = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(made_walkers, "draw_leg_intent", draw)
        seed = 1_150_000
        while len(found) < WALKS:
            walk = make_walk(seed, FAMILY)
            seed += 1
            if abs(walk.course.grid_magnetic_angle_deg) >= LEAST_DEG:
                found.append((walk, audit.debrief(walk.plan, walk.track)))
    return found


def test_no_other_mistake_is_told(told):
    causes = {story.cause for _, debrief in told for story in debrief.stories}
    assert causes <= {"gm-angle-omitted", "pace-long", "pace-short"}
    for walk, debrief in told:
        # A pace that is off by 6 in 100 or more on all legs was drawn, and may be told.
        paces = {story.cause for story in debrief.stories} & {"pace-long", "pace-short"}
        assert not paces or abs(walk.truth.pace_factor - 1.0) >= 0.06


def test_the_legs_are_the_right_ones_and_it_was_put_right(told):
    stories = [
        (debrief, story)
        for _, debrief in told
        for story in debrief.stories
        if story.cause == "gm-angle-omitted"
    ]
    assert len(stories) >= WALKS // 2
    for debrief, story in stories:
        assert set(story.legs) <= set(LEFT_OUT)
        assert story.put_right
        assert not story.begins_later
        assert "then put right" in " ".join(map(str, joint_story(debrief)))
