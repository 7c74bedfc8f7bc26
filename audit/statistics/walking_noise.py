"""What a straight walk shows of a receiver's noise, the walker's own wandering left open.

On a straight walk two things move a fix to the side: the receiver, whose error forgets
itself over a minute or so, and the walker, whose heading wanders, so that his place is
the integral of a process of his own. Where the line lay, how it ran and how much he
wandered is not known; all three are left out (restricted maximum likelihood, and a sum
over strengths of wandering), and what remains speaks for some strengths of noise and
against others.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product

import numpy as np

from audit.statistics.correlated_noise import covariance
from audit.statistics.integrated_noise import integrated_covariance
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Wander:
    """How a walker wanders: sideways speeds in m/s with what speaks for each, and memories."""

    speeds_m_s: FloatArray
    log_prior: FloatArray
    memories_s: tuple[float, ...]


def log_weight_of_noise(
    time_s: FloatArray,
    across_m: FloatArray,
    *,
    noise_m: FloatArray,
    correlation_s: FloatArray,
    white_share: float,
    wander: Wander,
) -> FloatArray:
    """Give the log likelihood of every strength and memory of noise, shape (strengths, memories).

    Parameters
    ----------
    time_s, across_m : float arrays, shape (n,), n >= 4
        Moments of a straight walk, and how far right of some line along it each fix lies.
    """
    clock = time_s - time_s[0]
    design = np.column_stack([np.ones_like(clock), clock / clock[-1]])
    weight = np.full((len(noise_m), len(correlation_s)), -np.inf)
    for (column, tau_s), memory_s in product(enumerate(correlation_s), wander.memories_s):
        noise = covariance(time_s, float(tau_s)) + white_share * np.eye(len(time_s))
        whiten = np.linalg.inv(np.linalg.cholesky(noise))
        wandered = whiten @ integrated_covariance(clock, clock, memory_s) @ whiten.T
        share, basis = np.linalg.eigh(wandered)
        rotated = basis.T @ whiten @ np.column_stack([design, across_m])
        log_det = -2.0 * float(np.log(np.diag(whiten)).sum())
        found = _by_strength(rotated, np.maximum(share, 0.0), noise_m, wander.speeds_m_s)
        of_noise = np.logaddexp.reduce(found + wander.log_prior[None, :], axis=1) - 0.5 * log_det
        weight[:, column] = np.logaddexp(weight[:, column], of_noise)
    return weight


def _by_strength(
    rotated: FloatArray, share: FloatArray, noise_m: FloatArray, speeds_m_s: FloatArray
) -> FloatArray:
    """Give the log likelihood by strength of noise and of wandering, level and run left out.

    ``rotated`` holds design (2) and offset in a basis in which both covariances are
    diagonal, ``share`` the wander's variance there.
    """
    design, across = rotated[:, :2], rotated[:, 2]
    variance = noise_m[:, None, None] ** 2 + speeds_m_s[None, :, None] ** 2 * share
    scaled = design / variance[..., None]
    information = np.einsum("ni,stnj->stij", design, scaled)
    coefficient = np.einsum(
        "stij,stnj,n->sti", np.linalg.inv(information), scaled, across, optimize=True
    )
    left = across - coefficient @ design.T
    return np.asarray(
        -0.5
        * (
            np.log(variance).sum(axis=-1)
            + np.linalg.slogdet(information)[1]
            + (left**2 / variance).sum(axis=-1)
        )
    )
