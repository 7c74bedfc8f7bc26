"""What turned each leg off its azimuth: weighed over all legs of a walk together."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.diagnosis.causes import DIRECTION_CAUSES
from audit.diagnosis.evidence import LegEvidence
from audit.diagnosis.walk_stories import STRAY, WITHIN, WalkStory, walk_stories
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, turn_degrees


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DirectionOdds:
    """Probabilities of what turned each leg.

    ``each`` has shape (legs, 2 + causes): within skill, something else, then the
    causes in the order of DIRECTION_CAUSES. ``bias_deg`` is the turn that this walker
    is reckoned to have on all legs.
    """

    each: FloatArray
    bias_deg: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Turns:
    """Turns of the legs with their errors, shape (n,), and what is expected, (n, 1 + causes).

    ``noted``, shape (n, 2 + causes), is how well the log's set azimuths bear each out.
    """

    seen_deg: FloatArray
    error_deg: FloatArray
    expected_deg: FloatArray
    confidence: FloatArray
    noted: FloatArray


def direction_odds(evidence: tuple[LegEvidence, ...], settings: DiagnosisSettings) -> DirectionOdds:
    """Weigh the turns of all legs: stories of the walk, own bias and scatter summed over."""
    predicted = [[cause.predicts_deg(leg) for cause in DIRECTION_CAUSES] for leg in evidence]
    turns = _Turns(
        seen_deg=np.array([leg.turn_deg for leg in evidence]),
        error_deg=np.array([leg.turn_sd_deg for leg in evidence]),
        expected_deg=np.column_stack([np.zeros(len(evidence)), predicted]),
        confidence=np.array([leg.confidence for leg in evidence]),
        noted=_noted(evidence, np.array(predicted), settings),
    )
    stray = _stray_density(turns, settings)
    weights, biases, parts = [], [], []
    for story in walk_stories(settings):
        for scatter_deg, scatter_prior in settings.scatter_deg:
            weight, part = _weigh(story, turns, stray, scatter_deg)
            weights.append(weight + np.log(story.prior * scatter_prior))
            biases.append(story.bias_deg)
            parts.append(part)
    log_weight = np.concatenate(weights)
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    each = np.einsum("b,bnk->nk", weight, np.concatenate(parts))
    return DirectionOdds(each=each, bias_deg=float(weight @ np.concatenate(biases)))


def _weigh(
    story: WalkStory, turns: _Turns, stray: FloatArray, scatter_deg: float
) -> tuple[FloatArray, FloatArray]:
    """Give, for each bias of a story, its log weight and what each leg then is; (b,), (b, n, k)."""
    expected = turns.expected_deg + story.bias_deg[:, None, None]
    off = turn_degrees(expected, turns.seen_deg[:, None])
    sd = np.hypot(scatter_deg, turns.error_deg)[:, None]
    density = np.exp(-0.5 * (off / sd) ** 2) / (sd * np.sqrt(2.0 * np.pi))
    aside = np.broadcast_to(stray[:, None], (*density.shape[:2], 1))
    joint = np.concatenate([density[..., :1], aside, density[..., 1:]], axis=2) * (
        story.share * turns.noted[None, :, :]
    )
    total = joint.sum(axis=2)
    # A portion that may not be the leg's says the less about the walker.
    pooled = turns.confidence * total + (1.0 - turns.confidence) * stray * turns.noted[:, STRAY]
    part = joint / total[..., None]
    if story.steady:
        part[..., STRAY] += part[..., WITHIN]
        part[..., WITHIN] = 0.0
    return np.log(pooled).sum(axis=1) + np.log(story.bias_prior), part


def _noted(
    evidence: tuple[LegEvidence, ...], predicted_deg: FloatArray, settings: DiagnosisSettings
) -> FloatArray:
    """Give how likely the azimuths that the log says were set are, for each kind of leg.

    A cause of these turns the setting by what it predicts; within skill the right
    azimuth was set. What strays may have been set wrong or held badly. Where the log
    says nothing every kind is as likely.
    """
    noted = np.ones((len(evidence), 2 + len(DIRECTION_CAUSES)))
    wrong = settings.log_wrong_share
    sd = settings.log_setting_sd_deg
    for number, leg in enumerate(evidence):
        if leg.set_turn_deg is None:
            continue
        expected = np.concatenate([[0.0], predicted_deg[number]])
        off = turn_degrees(expected, np.full(len(expected), leg.set_turn_deg))
        near = np.exp(-0.5 * (off / sd) ** 2) / (sd * np.sqrt(2.0 * np.pi))
        noted[number, WITHIN] = (1.0 - wrong) * near[0] + wrong / 360.0
        noted[number, STRAY] = 0.5 * near[0] + 0.5 / 360.0
        noted[number, 2:] = (1.0 - wrong) * near[1:] + wrong / 360.0
    return noted


def _stray_density(turns: _Turns, settings: DiagnosisSettings) -> FloatArray:
    """Give how likely each turn is where something else turned the leg, per degree.

    Most slips turn a leg by some 5 to 30 degrees (a graduation, a few clicks, a veer, a
    handrail), the rest by anything.
    """
    sd = np.hypot(settings.stray_near_sd_deg, turns.error_deg)
    near = np.exp(-0.5 * (turns.seen_deg / sd) ** 2) / (sd * np.sqrt(2.0 * np.pi))
    share = settings.stray_near_share
    return np.asarray(share * near + (1.0 - share) / 360.0)
