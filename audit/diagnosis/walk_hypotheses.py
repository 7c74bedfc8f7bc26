"""Mistakes that a walker may make on more legs than one, each in every way that it may take."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from audit.diagnosis.cause import CauseKind, Expected
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkHypothesis:
    """One way of one mistake, the same on all legs that show it.

    ``expected`` has one entry a leg; None where the leg would show nothing of it.
    """

    cause: str
    prior: float
    expected: tuple[Expected | None, ...]


def walk_hypotheses(
    evidence: Sequence[LegEvidence], kind: CauseKind, settings: DiagnosisSettings
) -> tuple[WalkHypothesis, ...]:
    """Give the hypotheses of a kind that at least two legs would show; on one it is no habit."""
    priors = dict(settings.walk_priors)
    found = []
    for cause in CAUSES:
        if cause.kind != kind or cause.name not in priors:
            continue
        ways = [cause.expects(leg, settings) for leg in evidence]
        count = max(len(of) for of in ways)
        for number in range(count):
            expected = tuple(
                of[number] if len(of) > number and _shows(of[number], settings) else None
                for of in ways
            )
            shown = [way for way in expected if way is not None]
            if len(shown) < 2:
                continue
            prior = priors[cause.name] * shown[0].weight
            found += [
                WalkHypothesis(cause=cause.name, prior=prior * often * share, expected=noted)
                for often, on_card in _as_carded(expected, shown[0], evidence)
                for share, noted in _as_noted(on_card, shown[0].logged, evidence)
            ]
    return tuple(found)


_Parted = tuple[tuple[float, tuple[Expected | None, ...]], ...]


def _as_carded(
    expected: tuple[Expected | None, ...], shown: Expected, evidence: Sequence[LegEvidence]
) -> _Parted:
    """Part a mistake that stands on the walker's card from the same made after it, likewise."""
    often = shown.measured + shown.converted
    if not 0.0 < often < 1.0 or all(leg.on_paper is None for leg in evidence):
        return ((1.0, expected),)
    on_map, by_sum = shown.measured / often, shown.converted / often
    return tuple(
        (
            share,
            tuple(way and replace(way, measured=on, converted=of) for way in expected),
        )
        for share, on, of in ((often, on_map, by_sum), (1.0 - often, 0.0, 0.0))
    )


def _as_noted(
    expected: tuple[Expected | None, ...], logged: float, evidence: Sequence[LegEvidence]
) -> _Parted:
    """Part a mistake made on paper from the same made on the compass, where a log tells them.

    Who makes it on every leg makes it in one way, so that his log shows it on all of them or on
    none.
    """
    if logged in (0.0, 1.0) or all(leg.set_turn_deg is None for leg in evidence):
        return ((1.0, expected),)
    return tuple(
        (often, tuple(way and replace(way, logged=shows) for way in expected))
        for often, shows in ((logged, 1.0), (1.0 - logged, 0.0))
    )


def _shows(way: Expected, settings: DiagnosisSettings) -> bool:
    turned = abs(way.turn_deg) >= settings.least_turn_deg
    return turned or abs(way.log_ratio) >= settings.least_log_ratio
