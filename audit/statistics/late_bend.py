"""Whether a straight walk bent shortly before it ended, and when: against no bend at all.

Seen along the walk and across it, a place is a start and an even motion, plus the
integral of a wandering speed, plus receiver error; a bend adds a second even motion from
one moment on. How much more probable the fixes are with a bend than without is worked
out for each moment by the ratio of two normal likelihoods (a Bayes factor).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.settings import ClaimSettings
from audit.statistics.correlated_noise import covariance
from audit.statistics.integrated_noise import integrated_covariance
from audit.units import FloatArray, direction_degrees, turn_degrees

_FLAT_M = 100.0
"""A place of which nothing is known beforehand, in this frame."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Motion:
    """What is known of a walk beforehand: usual speed, receiver noise and its memory."""

    speed_m_s: float
    noise_m: float
    correlation_s: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bends:
    """One bend for each candidate moment; arrays of shape (k,).

    ``log_odds`` is the log likelihood ratio against no bend; ``turn_deg`` the turn that
    fits best, right positive, with its standard error.
    """

    log_odds: FloatArray
    turn_deg: FloatArray
    turn_sd_deg: FloatArray


def weigh_bends(
    time_s: FloatArray,
    place: FloatArray,
    candidates_s: FloatArray,
    *,
    end_s: float,
    motion: Motion,
    settings: ClaimSettings,
) -> Bends:
    """Weigh a bend at each candidate against none.

    Parameters
    ----------
    time_s : float array, shape (n,)
        Of the fixes; those after ``end_s``, when the walker stood, show where he ended.
    place : float array, shape (n, 2)
        Metres along and across the direction held until then.
    candidates_s : float array, shape (k,)
    """
    speed = motion.speed_m_s
    clock = np.minimum(time_s, end_s) - time_s[0]
    noise = motion.noise_m**2 * (
        covariance(time_s, motion.correlation_s) + settings.white_share * np.eye(len(clock))
    )
    wander = integrated_covariance(clock, clock, settings.wander_s) + np.outer(clock, clock)
    bend = np.maximum(clock[None, :] - (candidates_s - time_s[0])[:, None], 0.0)
    axes = []
    for axis, (mean, sd, drift) in enumerate(
        (
            (settings.slowing_mean, settings.slowing_sd, settings.speed_sd),
            (0.0, settings.sideways_sd, np.radians(settings.wander_deg)),
        )
    ):
        whole = noise + (speed * drift) ** 2 * wander + _FLAT_M**2
        even = speed * clock if axis == 0 else 0.0
        left = place[:, axis] - place[0, axis] - even
        axes.append(_added_motion(whole, left, bend, mean * speed, sd * speed))
    (odds_along, slower, _), (odds_across, sideways, sideways_sd) = axes
    onward = np.maximum(speed + slower, 0.1 * speed)
    return Bends(
        log_odds=odds_along + odds_across,
        turn_deg=turn_degrees(0.0, direction_degrees(sideways, onward)),
        turn_sd_deg=np.degrees(sideways_sd / np.hypot(sideways, onward)),
    )


def _added_motion(
    whole: FloatArray, left: FloatArray, bend: FloatArray, mean: float, sd: float
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Give, for each row of ``bend``, log odds of that motion, its speed and its error.

    With an added speed c ~ N(mean, sd^2) and residuals r of covariance S, q = b'S^-1 b and
    p = b'S^-1 r: the odds are those of N(r; mean b, S + sd^2 bb') against N(r; 0, S).
    """
    inside = np.linalg.solve(whole, bend.T)
    information = (bend * inside.T).sum(axis=1)
    pull = inside.T @ left
    spread = 1.0 + sd**2 * information
    gain = sd**2 * pull**2 + 2.0 * mean * pull - mean**2 * information
    odds = 0.5 * gain / spread - 0.5 * np.log(spread)
    return odds, (mean + sd**2 * pull) / spread, sd / np.sqrt(spread)
