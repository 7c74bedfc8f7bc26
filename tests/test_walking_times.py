"""The rules of walking time say what their sources say."""

from __future__ import annotations

import numpy as np
import pytest
from truth.check_values import CheckValue, check_values, each

from audit.reports.time_words import rule_name, rules_told
from audit.walking_times import WALKING_RULES, Way, tobler_m_s
from audit.words import PLAIN_ENGLISH, spoken

RULES = {rule.name: rule for rule in WALKING_RULES}


def way(*stretches: tuple[float, float]) -> Way:
    run, rise = np.array(stretches, dtype=np.float64).T
    return Way(run_m=run, rise_m=rise)


@each("walking_time")
def test_worked_examples(value: CheckValue) -> None:
    ground = way((float(value.given("run_m")), float(value.given("rise_m"))))
    minutes = RULES[value.given("rule")].seconds(ground) / 60.0
    assert minutes == pytest.approx(float(value.expected), abs=float(value.tolerance) or 1e-9)


@each("tobler")
def test_toblers_speeds(value: CheckValue) -> None:
    speed_km_h = 3.6 * tobler_m_s(float(value.given("slope")))
    assert speed_km_h == pytest.approx(float(value.expected), abs=float(value.tolerance))


def test_toblers_speed_off_path() -> None:
    (value,) = check_values("tobler_off_path")
    hours = RULES["Tobler off path"].seconds(way((1000.0, 0.0))) / 3600.0
    assert 1.0 / hours == pytest.approx(float(value.expected), abs=float(value.tolerance))


def test_toblers_time_is_that_of_its_stretches() -> None:
    # A hill of 10 in 100, up and down: by the speeds of the report, 1 km at 3.5493 km/h and
    # 1 km at 5.0367 km/h.
    hours = RULES["Tobler"].seconds(way((1000.0, 100.0), (1000.0, -100.0))) / 3600.0
    assert hours == pytest.approx(1 / 3.5493 + 1 / 5.0367, abs=1e-4)


def test_a_descent_too_gentle_for_langmuir_changes_nothing() -> None:
    # 4 degrees: below his gentle slope, which begins at 5 (from memory).
    ground = way((1000.0, -1000.0 * np.tan(np.radians(4.0))))
    assert RULES["Langmuir"].seconds(ground) == RULES["Naismith"].seconds(ground)


@pytest.mark.parametrize("rule", WALKING_RULES, ids=lambda rule: rule.name)
def test_every_rule_is_named_and_takes_unknown_ground_for_level(rule) -> None:
    unknown = Way(run_m=np.array([700.0, 300.0]))
    assert rule.seconds(unknown) == pytest.approx(rule.seconds(way((700.0, 0.0), (300.0, 0.0))))
    hill = rule.seconds(way((1000.0, 150.0)))
    assert (hill > rule.seconds(unknown)) is (rule.name != "3 km/h")


def test_every_rule_is_told_with_its_figures_and_its_source() -> None:
    with spoken(PLAIN_ENGLISH):
        assert [rule_name(rule.name) for rule in WALKING_RULES] == list(RULES)
        for rule, told in zip(WALKING_RULES, rules_told(), strict=True):
            assert told.startswith(f"{rule.name}: ")
            assert "(" in told
