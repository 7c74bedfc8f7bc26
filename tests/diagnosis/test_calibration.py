"""How often a mistake is laid on a walker who made none, and whether 0.9 means nine in ten.

The walkers are invented: no public source says how often each mistake is made.
"""

from __future__ import annotations

import numpy as np
import pytest
from diagnosis.made_evidence import explain, invented_walk

from audit.settings import DiagnosisSettings

S = DiagnosisSettings()
MISTAKES = [
    "gm-angle-omitted", "gm-angle-reversed", "gm-angle-doubled", "declination-for-gm-angle"
]  # fmt: skip
NAMED = 0.8


def judged(walks) -> list[tuple[dict[str, float], str]]:
    """Probabilities and truth of every leg of many walks."""
    rows = []
    for walk in walks:
        findings = explain(tuple(leg for leg, _ in walk), S)
        for leg, made in walk:
            shares = dict.fromkeys((*MISTAKES, "within-skill"), 0.0)
            shares |= {f.cause: f.probability for f in findings[leg.leg]}
            rows.append((shares, made))
    return rows


def named(rows) -> list[tuple[str, str]]:
    """The mistake named and the truth, of every leg where one is named."""
    return [(cause, made) for shares, made in rows for cause in MISTAKES if shares[cause] >= NAMED]


def test_walkers_without_mistakes_are_not_accused() -> None:
    rng = np.random.default_rng(1)
    rows = judged(invented_walk(rng) for _ in range(45))
    assert len(rows) >= 200
    assert len(named(rows)) <= 0.01 * len(rows)
    # Of these walkers one in six has a pace that is off by 7 per cent on all legs, one in
    # twenty a turn of 4 degrees: theirs, by whatever name.
    own = ("within-skill", "pace-long", "pace-short", "steady-bias")
    ordinary = [sum(shares.get(name, 0.0) for name in own) for shares, _ in rows]
    assert np.mean(ordinary) > 0.85
    assert np.mean(np.array(ordinary) > 0.5) > 0.95
    assert np.mean([shares["within-skill"] for shares, _ in rows]) > 0.65


def test_walkers_with_other_slips_are_not_accused() -> None:
    rng = np.random.default_rng(2)
    rows = judged(invented_walk(rng, slips=0.06) for _ in range(45))
    assert len(rows) >= 200
    assert len(named(rows)) <= 0.01 * len(rows)


def test_large_slips_do_not_pass_as_ordinary() -> None:
    rng = np.random.default_rng(5)
    rows = []
    for _ in range(40):
        walk = invented_walk(rng, slips=0.08)
        for (shares, made), (leg, _) in zip(judged([walk]), walk, strict=True):
            if made == "slip" and abs(leg.turn_deg) >= 25.0:
                rows.append(shares["within-skill"])
    assert len(rows) > 6
    assert np.mean(rows) < 0.02


@pytest.mark.parametrize(
    ("cause", "angles", "least"),
    [
        ("gm-angle-omitted", (12.0, 20.0), 0.5),
        ("gm-angle-omitted", (8.0, 12.0), 0.2),
        ("gm-angle-reversed", (8.0, 12.0), 0.35),
        ("gm-angle-reversed", (12.0, 20.0), 0.7),
    ],
)
def test_plain_mistakes_are_found(cause, angles, least) -> None:
    rng = np.random.default_rng(8)
    walks = [
        invented_walk(rng, cause, angle_deg=float(rng.choice([-1, 1]) * rng.uniform(*angles)))
        for _ in range(16)
    ]
    rows = [row for row in judged(walks) if row[1] == cause]
    assert np.mean([shares[cause] >= NAMED for shares, _ in rows]) >= least
    wrong = [shares[other] >= NAMED for shares, _ in rows for other in MISTAKES if other != cause]
    assert np.mean(wrong) <= 0.04
