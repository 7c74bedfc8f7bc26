"""What may be true of a whole walk: each story says what a leg of it may show, and how often."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.diagnosis.causes import DIRECTION_CAUSES
from audit.settings import DiagnosisSettings
from audit.units import FloatArray

WITHIN, STRAY = 0, 1
"""Columns of a leg's odds: ordinary error, something else; then the causes in order."""
COLUMNS = 2 + len(DIRECTION_CAUSES)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkStory:
    """One story of a walk.

    Attributes
    ----------
    prior : float
        That a walk is of this kind.
    share : float array, shape (2 + causes,)
        How often a leg of it is of each kind; adds up to 1.
    bias_deg, bias_prior : float arrays, shape (b,)
        Turns that the walker may have on all legs, and their weights, adding up to 1.
    steady : bool
        True where that turn is itself the error, so that a leg which shows it is not
        within skill.
    """

    prior: float
    share: FloatArray
    bias_deg: FloatArray
    bias_prior: FloatArray
    steady: bool = False


def walk_stories(settings: DiagnosisSettings) -> tuple[WalkStory, ...]:
    """Give the stories: nothing in common, one turn without a known angle, each cause."""
    priors = dict(settings.walk_priors)
    once = dict(settings.one_leg_only)
    stray = settings.stray_direction
    single = np.array([once[cause.name] for cause in DIRECTION_CAUSES])
    ordinary = _shares(within=1.0 - stray - float(single.sum()), stray=stray, single=single)
    own_deg, own_prior = _normal_grid(settings.own_bias_sd_deg)
    steady_deg, steady_prior = _normal_grid(settings.steady_turn_sd_deg)
    stories = [
        WalkStory(
            prior=1.0 - sum(priors.values()) - settings.steady_turn,
            share=ordinary,
            bias_deg=own_deg,
            bias_prior=own_prior,
        ),
        WalkStory(
            prior=settings.steady_turn,
            share=ordinary,
            bias_deg=steady_deg,
            bias_prior=steady_prior,
            steady=True,
        ),
    ]
    for number, cause in enumerate(DIRECTION_CAUSES):
        shown = (1.0 - stray) * settings.keeps_to_it
        single = np.zeros(len(DIRECTION_CAUSES))
        single[number] = shown
        share = _shares(within=1.0 - stray - shown, stray=stray, single=single)
        stories.append(
            WalkStory(prior=priors[cause.name], share=share, bias_deg=own_deg, bias_prior=own_prior)
        )
    return tuple(stories)


def _shares(*, within: float, stray: float, single: FloatArray) -> FloatArray:
    share = np.empty(COLUMNS)
    share[WITHIN], share[STRAY], share[2:] = within, stray, single
    return share


def _normal_grid(sd_deg: float) -> tuple[FloatArray, FloatArray]:
    """Give turns about a degree apart that stand for a normal spread, and their weights."""
    count = 2 * int(np.ceil(2.4 * sd_deg)) + 1
    steps = np.linspace(-2.4, 2.4, count)
    weight = np.exp(-0.5 * steps**2)
    return sd_deg * steps, weight / weight.sum()
