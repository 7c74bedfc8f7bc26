"""A compass that reads differently is found by whoever carries it, and no other is named."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import binom

from audit.classroom.carried_alike import carried_alike
from audit.settings.class_shows import ClassShowsSettings

SETTINGS = ClassShowsSettings()


def people(n):
    return [f"walker {number}" for number in range(n)]


def turns(rng, held, bad="", by_deg=0.0, mistakes=0):
    """Give what walkers turned: 2° of their own, some of them the grid-magnetic angle."""
    made = rng.normal(0.0, 2.0, len(held))
    made[rng.permutation(len(held))[:mistakes]] += -7.5
    made[np.array(held) == bad] += by_deg
    return made


@pytest.mark.parametrize("seed", range(10))
@pytest.mark.parametrize("by_deg", [-6.0, 6.0])
def test_bad_compass_is_found(seed, by_deg):
    rng = np.random.default_rng(seed)
    held = [f"C{number % 8}" for number in range(40)]
    found = carried_alike(people(40), held, turns(rng, held, "C3", by_deg), SETTINGS)
    assert [one.compass for one in found] == ["C3"]
    assert found[0].turn_deg == pytest.approx(by_deg, abs=2.5 + 2 * found[0].error_deg)
    assert (found[0].carriers, found[0].others) == (5, 35)


def test_bad_compass_is_mostly_found_among_mistakes():
    """One in ten made a mistake that turns as far the other way."""
    held = [f"C{number % 8}" for number in range(40)]
    seen = [
        carried_alike(
            people(40), held, turns(np.random.default_rng(seed), held, "C3", 6.0, 4), SETTINGS
        )
        for seed in range(40)
    ]
    assert sum([one.compass for one in found] == ["C3"] for found in seen) >= 28
    assert all(one.compass == "C3" for found in seen for one in found)


def test_good_compasses_are_named_no_oftener_than_the_stated_chance():
    classes = 300
    told = 0
    for seed in range(classes):
        rng = np.random.default_rng(seed)
        held = [f"C{one}" for one in rng.integers(8, size=40)]
        told += bool(carried_alike(people(40), held, turns(rng, held, mistakes=5), SETTINGS))
    assert told <= binom.ppf(0.999, classes, SETTINGS.chance_of_turn)


def test_one_persons_turn_is_not_the_compass():
    """One who turns left walks often with one compass: that is one person."""
    rng = np.random.default_rng(1)
    held = ["C1"] * 6 + [f"C{2 + number % 4}" for number in range(30)]
    made = turns(rng, held, "C1", 12.0)
    found = carried_alike(["Adder"] * 6 + people(30), held, made, SETTINGS)
    assert found == []


def test_unknown_compasses_are_no_compass():
    held = [""] * 12 + ["C1"] * 12
    made = np.r_[np.full(12, 9.0), np.zeros(12)] + np.linspace(-1, 1, 24)
    assert [one.compass for one in carried_alike(people(24), held, made, SETTINGS)] == ["C1"]
    assert carried_alike(people(24), [""] * 24, made, SETTINGS) == []


def test_walkers_without_a_turn_are_left_aside():
    held = [f"C{number % 2}" for number in range(12)]
    made = np.where(np.array(held) == "C0", 8.0, 0.0) + np.linspace(-1, 1, 12)
    made[0] = np.nan
    found = carried_alike(people(12), held, made, SETTINGS)
    assert {one.carriers + one.others for one in found} == {11}
