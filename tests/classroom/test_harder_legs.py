"""A harder leg is told with its ratio; equal legs are not, whatever the walkers' skill."""

from __future__ import annotations

import importlib.util

import numpy as np
import pytest
from scipy.stats import binom

from audit.classroom.harder_legs import WITHOUT_MODEL, harder_legs
from audit.settings.class_shows import ClassShowsSettings

SETTINGS = ClassShowsSettings()


def misses(rng, walkers, legs, harder=None, by=1.0, left_out=0.0):
    """Give legs, walkers, misses and lengths; walkers differ by a factor of two either way."""
    skill = rng.normal(0.0, 0.6, walkers)
    rows = [
        (("Lane A", str(leg)), f"walker {walker}", skill[walker], by if leg == harder else 1.0)
        for walker in range(walkers)
        for leg in range(legs)
        if rng.random() >= left_out
    ]
    size = np.array([20.0 * np.exp(row[2]) * row[3] for row in rows])
    size *= np.exp(rng.normal(0.0, 0.5, len(rows)))
    return [row[0] for row in rows], [row[1] for row in rows], size, np.full(len(rows), 600.0)


@pytest.mark.parametrize("seed", range(8))
def test_harder_leg_is_found_with_its_ratio(seed):
    rng = np.random.default_rng(seed)
    found = harder_legs(*misses(rng, 20, 7, harder=4, by=3.0, left_out=0.1), SETTINGS).legs
    assert [one.leg for one in found] == [("Lane A", "4")]
    assert found[0].low < 3.0 < found[0].high
    assert found[0].by_length == pytest.approx(1.0)


def test_equal_legs_are_called_harder_no_oftener_than_stated():
    classes = 60
    told = 0
    for seed in range(classes):
        rng = np.random.default_rng(1000 + seed)
        told += bool(harder_legs(*misses(rng, 15, 6), SETTINGS).legs)
    assert told <= binom.ppf(0.999, classes, SETTINGS.chance_of_leg)


def test_weak_walkers_on_a_leg_do_not_make_it_harder():
    """Half of the walkers, the weaker, walk two more legs: those are as hard as the rest."""
    rng = np.random.default_rng(5)
    legs, walkers, size, length = misses(rng, 24, 6)
    weak = {f"walker {number}" for number in range(12)}
    size = size * np.array([4.0 if walker in weak else 1.0 for walker in walkers])
    kept = [
        number
        for number, (leg, walker) in enumerate(zip(legs, walkers, strict=True))
        if walker in weak or leg[1] not in {"4", "5"}
    ]
    raw = {leg: np.median(size[[n for n in kept if legs[n] == leg]]) for leg in set(legs)}
    assert raw["Lane A", "4"] > 1.4 * raw["Lane A", "1"]  # it looks harder
    comparison = harder_legs(
        [legs[n] for n in kept], [walkers[n] for n in kept], size[kept], length[kept], SETTINGS
    )
    assert comparison.legs == ()


def test_without_the_library_it_is_said(monkeypatch):
    real = importlib.util.find_spec
    monkeypatch.setattr(
        "audit.classroom.harder_legs.find_spec",
        lambda name: None if name == "statsmodels" else real(name),
    )
    comparison = harder_legs(*misses(np.random.default_rng(0), 10, 4), SETTINGS)
    assert (comparison.legs, comparison.why_not) == ((), WITHOUT_MODEL)


def test_too_few_walkers_are_not_compared():
    rng = np.random.default_rng(0)
    comparison = harder_legs(*misses(rng, SETTINGS.least_leg_walkers - 1, 6), SETTINGS)
    assert comparison.why_not.startswith("Too few")
