"""Where a walk stood or turned between fixes that lie far apart.

A straight line from the fix before to the fix after cuts the corner off, and the two legs
that meet there come out short. Even motion to the corner, perhaps a halt there, and even
motion on from it are laid through the fixes about it, for every moment at which he may
have come and gone; what is too fast or too slow for the walker counts for less.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Corner:
    """Place of a corner, shape (2,), and its standard error per axis for want of fixes there."""

    place: FloatArray
    sd_m: float


def sparse_corner(
    time_s: FloatArray,
    place: FloatArray,
    moments_s: FloatArray,
    *,
    speed_m_s: float,
    speed_sd: float,
    noise_m: float,
) -> Corner | None:
    """Mix the corners of all pairs of moments (come, gone) by how well they fit.

    Parameters
    ----------
    time_s, place : float arrays, shapes (n,) and (n, 2)
    moments_s : float array, shape (k,)
        When he may have come to the corner, or left it; rising.
    speed_m_s, speed_sd : float
        What is known of the walker's speed beforehand; its error as a share.

    Returns None where fewer than two fixes lie on either side of all moments.
    """
    if (time_s <= moments_s[0]).sum() < 2 or (time_s >= moments_s[-1]).sum() < 2:
        return None
    come, gone = (moments_s[index] for index in np.triu_indices(len(moments_s)))
    before = np.minimum(time_s - come[:, None], 0.0)
    after = np.maximum(time_s - gone[:, None], 0.0)
    design = np.stack([np.ones_like(before), before, after], axis=2)
    across = design.transpose(0, 2, 1)
    fit = np.linalg.solve(across @ design, across @ place)
    left = ((place - design @ fit) ** 2).sum(axis=(1, 2)) / noise_m**2
    off = (np.hypot(fit[:, 1:, 0], fit[:, 1:, 1]) / speed_m_s - 1.0) / speed_sd
    misfit = left + (off**2).sum(axis=1)
    weight = np.exp(-0.5 * (misfit - misfit.min()))
    weight /= weight.sum()
    middle = weight @ fit[:, 0]
    spread = weight @ ((fit[:, 0] - middle) ** 2).sum(axis=1)
    return Corner(place=middle, sd_m=float(np.sqrt(spread / 2.0)))
