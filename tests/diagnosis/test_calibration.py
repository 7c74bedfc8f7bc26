"""How often a mistake is laid on a walker who made none, and whether 0.9 means nine in ten.

The walkers are invented: no public source says how often each mistake is made.
"""

from __future__ import annotations

import numpy as np
import pytest
from diagnosis.made_evidence import invented_walk

from audit.diagnosis.causes import DIRECTION_CAUSES
from audit.diagnosis.explain import explain
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()
MISTAKES = [cause.name for cause in DIRECTION_CAUSES]
NAMED = 0.8


def judged(walks) -> list[tuple[dict[str, float], str]]:
    """Probabilities and truth of every leg of many walks."""
    rows = []
    for walk in walks:
        findings = explain(tuple(leg for leg, _ in walk), S)
        for leg, made in walk:
            rows.append(({f.cause: f.probability for f in findings[leg.leg]}, made))
    return rows


def named(rows) -> list[tuple[str, str]]:
    """The mistake named and the truth, of every leg where one is named."""
    return [(cause, made) for shares, made in rows for cause in MISTAKES if shares[cause] >= NAMED]


@pytest.fixture(scope="module")
def population():
    """Walkers of whom some err: causes, steady turns and slips as the priors have them, or near."""
    rng = np.random.default_rng(11)
    priors = dict(S.walk_priors)
    walks = []
    for _ in range(1800):
        drawn = rng.choice(
            [*priors, "steady", ""], p=[*priors.values(), 0.05, 0.95 - sum(priors.values())]
        )
        if drawn == "steady":
            walks.append(invented_walk(rng, slips=0.05, steady=(4.0, 15.0)))
        else:
            walks.append(invented_walk(rng, str(drawn), slips=0.05))
    return judged(walks)


def test_walkers_without_mistakes_are_not_accused() -> None:
    rng = np.random.default_rng(1)
    rows = judged(invented_walk(rng) for _ in range(600))
    assert len(rows) >= 3000
    assert len(named(rows)) <= 0.01 * len(rows)
    within = [shares["within-skill"] for shares, _ in rows]
    assert np.mean(within) > 0.8
    assert np.mean(np.array(within) > 0.5) > 0.95


def test_walkers_with_other_slips_are_not_accused() -> None:
    rng = np.random.default_rng(2)
    rows = judged(invented_walk(rng, slips=0.06) for _ in range(600))
    assert len(rows) >= 3000
    assert len(named(rows)) <= 0.01 * len(rows)


def test_mistakes_that_are_named_were_made(population) -> None:
    said = [
        (shares[cause], cause == made)
        for shares, made in population
        for cause in MISTAKES
        if shares[cause] >= 0.9
    ]
    assert len(said) > 300
    probability, right = np.mean(said, axis=0)
    assert right >= 0.9
    assert right >= probability - 0.05


@pytest.mark.parametrize(
    ("low", "high"), [(0.5, 0.65), (0.65, 0.8), (0.8, 0.9), (0.9, 0.97), (0.97, 1.01)]
)
def test_said_so_often_right_so_often(population, low, high) -> None:
    said = [
        (shares[cause], cause == made)
        for shares, made in population
        for cause in MISTAKES
        if low <= shares[cause] < high
    ]
    assert len(said) > 50
    probability, right = np.mean(said, axis=0)
    # Legs of a walk stand or fall together: a standard error of some 0.05.
    assert right == pytest.approx(probability, abs=0.12)


def test_ordinary_error_is_not_called_so_too_readily(population) -> None:
    """Where within-skill is said at 0.8 or more, nine in ten legs show ordinary error."""
    sure = [made == "" for shares, made in population if shares["within-skill"] >= 0.8]
    assert np.mean(sure) >= 0.9


def test_large_slips_do_not_pass_as_ordinary() -> None:
    rng = np.random.default_rng(5)
    rows = []
    for _ in range(150):
        walk = invented_walk(rng, slips=0.08)
        for (shares, made), (leg, _) in zip(judged([walk]), walk, strict=True):
            if made == "slip" and abs(leg.turn_deg) >= 25.0:
                rows.append(shares["within-skill"])
    assert len(rows) > 30
    assert np.mean(rows) < 0.02


@pytest.mark.parametrize(
    ("cause", "angles", "least"),
    [
        ("gm-angle-omitted", (12.0, 20.0), 0.7),
        ("gm-angle-omitted", (8.0, 12.0), 0.45),
        ("gm-angle-reversed", (8.0, 12.0), 0.5),
        ("gm-angle-reversed", (12.0, 20.0), 0.8),
    ],
)
def test_plain_mistakes_are_found(cause, angles, least) -> None:
    rng = np.random.default_rng(8)
    walks = [
        invented_walk(rng, cause, angle_deg=float(rng.choice([-1, 1]) * rng.uniform(*angles)))
        for _ in range(100)
    ]
    rows = [row for row in judged(walks) if row[1] == cause]
    assert np.mean([shares[cause] >= NAMED for shares, _ in rows]) >= least
    wrong = [shares[other] >= NAMED for shares, _ in rows for other in MISTAKES if other != cause]
    assert np.mean(wrong) <= 0.01
