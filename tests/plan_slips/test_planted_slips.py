"""Every planted slip is found, none is imagined, and the kept table stays true.

The slips are those of the trade (swapped digits, the angle left out, reversed or doubled,
the back azimuth ...); their sizes are plain arithmetic and are planted by it. The table is
made anew with ``python -m plan_slips --record``.
"""

from __future__ import annotations

import math

import pytest

from plan_slips.limits import SIZES, limit_lines, limits
from plan_slips.measure import false_on_right_plans, tally
from plan_slips.slips import PLANTERS
from plan_slips.table import lines, read_limits, read_record

PLANS = 12
RIGHT_PLANS = 60
SIGMAS = 3.0


def test_the_record_has_every_kind():
    tallies, right, false = read_record()
    assert set(tallies) == set(PLANTERS)
    assert (right >= 1000, false) == (True, 0)
    assert all(of.found == of.planted - of.refused for of in tallies.values())
    assert all(of.false == 0 for of in tallies.values())


def test_a_right_plan_is_left_alone():
    assert false_on_right_plans(RIGHT_PLANS, "guard") == 0


@pytest.mark.parametrize("kind", PLANTERS)
def test_a_planted_slip_is_found_and_named_as_often_as_recorded(kind):
    recorded, _, _ = read_record()
    of = recorded[kind]
    share = of.named / (of.planted - of.refused)
    now = tally(kind, PLANS, "guard")
    read = now.planted - now.refused
    assert now.found == read
    assert now.false == 0
    chance = SIGMAS * math.sqrt(read * share * (1.0 - share) + 0.25)
    assert now.named >= read * share - chance


def test_the_table_has_a_row_a_kind():
    rows = lines(*read_record())
    assert len(rows) == len(PLANTERS) + 3
    assert rows[-1].startswith("| none: a right plan |")


def test_the_largest_of_the_small_slips_are_found():
    kept = read_limits()
    assert {kind: tuple(map(float, sizes)) for kind, sizes in kept.items()} == SIZES
    for sizes in kept.values():
        seen, out_of = list(sizes.values())[-1]
        assert seen >= 0.98 * out_of


def test_small_slips_are_found_as_often_as_recorded():
    kept = read_limits()
    for kind, sizes in limits(PLANS, "guard").items():
        for size, (seen, out_of) in sizes.items():
            before, of = kept[kind][size]
            share = before / of
            chance = SIGMAS * math.sqrt(out_of * share * (1.0 - share) + 0.5)
            assert seen >= out_of * share - chance, (kind, size)


def test_the_table_of_limits_has_a_row_a_kind():
    assert len(limit_lines(read_limits())) == len(SIZES) + 2
