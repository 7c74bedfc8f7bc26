"""Short steps out of a straight walk, told from receiver error and from wandering.

A walk seen across its own direction is a straight line, the receiver's error, which
forgets itself over a minute or so, and the walker's wandering, the integral of a heading
that comes back. A step aside adds an even way across that lasts some seconds. Every step
is tried at every moment by generalised least squares, the one that stands out most is
added, and so on. Ways across that last longer, or for good, are another bearing and no
step; they are tried too, so that no step is seen in them.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.settings import SlantSettings
from audit.statistics.correlated_noise import covariance
from audit.statistics.integrated_noise import integrated_covariance
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkAcross:
    """A walk seen across its direction: arrays of shape (n,), rising times.

    ``time_s`` is the clock of the receiver, ``walking_s`` the same without halts.
    """

    time_s: FloatArray
    walking_s: FloatArray
    across_m: FloatArray
    speed_m_s: float
    noise_m: float
    correlation_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StepAside:
    """When a walker stepped aside (on the clock of the receiver), and how far to the right."""

    begin_s: float
    end_s: float
    right_m: float


def find_steps(walk: WalkAcross, settings: SlantSettings) -> list[StepAside]:
    """Give the steps that stand out, for the strength of wandering that fits best."""
    begin_s, last_s = _tried(walk, settings)
    if len(begin_s) == 0:
        return []
    laid_out = _LaidOut.of(walk, settings, begin_s, last_s)
    found = [_found(walk, settings, wander_deg, laid_out) for wander_deg in settings.wanders_deg]
    _, picks = max(found, key=lambda one: one[0])
    return sorted(
        (
            StepAside(
                begin_s=float(np.interp(begin_s[pick], walk.walking_s, walk.time_s)),
                end_s=float(np.interp(begin_s[pick] + last_s[pick], walk.walking_s, walk.time_s)),
                right_m=right_m,
            )
            for pick, right_m in picks
        ),
        key=lambda step: step.begin_s,
    )


def _tried(walk: WalkAcross, settings: SlantSettings) -> tuple[FloatArray, FloatArray]:
    """Give beginning and length of every way across: from each fix, and for good."""
    clock = walk.walking_s
    begin_s, last_s = (
        grid.ravel() for grid in np.meshgrid(clock, [*settings.lasts_s, *settings.longer_s, np.inf])
    )
    edge_s, for_good = settings.edge_s, np.isinf(last_s)
    last_s = np.where(for_good, clock[-1] - begin_s, last_s)
    within = np.where(
        for_good,
        last_s > settings.lasts_s[-1] + edge_s,
        begin_s + last_s <= clock[-1] - edge_s,
    ) & (begin_s >= clock[0] + edge_s)
    return begin_s[within], last_s[within]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _LaidOut:
    """What is the same for every strength of the wandering.

    ``begin_s`` and ``last_s`` are those of the ways tried. A way is one hinge less another,
    each even motion from one moment on; between two fixes a hinge is a mean of theirs. So
    three hinges, ``of_hinges`` with ``parts``, shapes (ways, 3), make a way, and only the
    hinges at the n fixes need be worked with. ``columns``, shape (n, 3 + n), holds a level, a
    run, the walk across and the hinges; ``noise`` and ``wander`` are the covariances of the
    two errors at a strength of one.
    """

    begin_s: FloatArray
    last_s: FloatArray
    of_hinges: NDArray[np.int64]
    parts: FloatArray
    columns: FloatArray
    noise: FloatArray
    wander: FloatArray

    @classmethod
    def of(
        cls, walk: WalkAcross, settings: SlantSettings, begin_s: FloatArray, last_s: FloatArray
    ) -> _LaidOut:
        """Lay out a walk and the ways to be tried on it."""
        clock = walk.walking_s - walk.walking_s[0]
        begun, ended = begin_s - walk.walking_s[0], begin_s - walk.walking_s[0] + last_s
        before = np.clip(np.searchsorted(clock, ended, side="right") - 1, 0, len(clock) - 2)
        on = (ended - clock[before]) / np.maximum(np.diff(clock)[before], 1e-9)
        hinges = np.maximum(clock[:, None] - clock, 0.0)
        forgotten = settings.white_share * np.eye(len(clock))
        return cls(
            begin_s=begin_s,
            last_s=last_s,
            of_hinges=np.column_stack([np.searchsorted(clock, begun), before, before + 1]),
            parts=np.column_stack([np.ones_like(on), on - 1.0, -on]) / last_s[:, None],
            columns=np.column_stack([np.ones_like(clock), clock, walk.across_m, hinges]),
            noise=covariance(walk.time_s, walk.correlation_s) + forgotten,
            wander=integrated_covariance(clock, clock, settings.wander_s),
        )


def _found(
    walk: WalkAcross, settings: SlantSettings, wander_deg: float, laid_out: _LaidOut
) -> tuple[float, list[tuple[int, float]]]:
    """Give log likelihood, and numbers and sizes of the ways across, for one strength."""
    clock = walk.walking_s - walk.walking_s[0]
    begin_s, last_s = laid_out.begin_s, laid_out.last_s
    drift = walk.speed_m_s * np.radians(wander_deg)
    whole = walk.noise_m**2 * laid_out.noise
    whole += drift**2 * laid_out.wander
    root = np.linalg.cholesky(whole)
    white = np.linalg.solve(root, laid_out.columns)
    design, across, hinges = white[:, :2], white[:, 2], white[:, 3:]
    picks: list[int] = []
    free = np.ones(len(begin_s), dtype=bool)
    while len(picks) < settings.most:
        pick = _outstanding(walk, settings, laid_out, hinges, (design, across), free)
        if pick is None:
            break
        picks.append(pick)
        way = hinges[:, laid_out.of_hinges[pick]] @ laid_out.parts[pick]
        design = np.column_stack([design, way])
        free &= (begin_s > begin_s[pick] + last_s[pick] + settings.edge_s) | (
            begin_s + last_s < begin_s[pick] - settings.edge_s
        )
    size, *_ = np.linalg.lstsq(design, across, rcond=None)
    left = across - design @ size
    log_likelihood = float(-np.log(np.diag(root)).sum() - 0.5 * left @ left)
    held = walk.across_m - size[0] - size[1] * clock
    found = [
        (pick, _aside_m(walk, held, begin_s[pick], last_s[pick], settings))
        for pick in picks
        if last_s[pick] <= settings.lasts_s[-1]
    ]
    # Each way more has to be worth it: its place is one of many (Bayesian information).
    return log_likelihood - 1.5 * np.log(len(clock)) * len(picks), found


def _aside_m(
    walk: WalkAcross, held: FloatArray, begin_s: float, last_s: float, settings: SlantSettings
) -> float:
    """Give how far right a way led: the walk just after it less that just before it.

    The way that fits best is often a little shorter than the one that was walked.
    """
    clock = walk.walking_s
    reach_s = max(2.0 * settings.edge_s, float(np.diff(clock).max()))
    before = (clock <= begin_s) & (clock >= begin_s - reach_s)
    after = (clock >= begin_s + last_s) & (clock <= begin_s + last_s + reach_s)
    return float(held[after].mean() - held[before].mean())


def _outstanding(
    walk: WalkAcross,
    settings: SlantSettings,
    laid_out: _LaidOut,
    hinges: FloatArray,
    seen: tuple[FloatArray, FloatArray],
    free: NDArray[np.bool_],
) -> int | None:
    """Give the number of the way across that stands out most, if one stands out enough."""
    design, across = seen
    last_s, at, parts = laid_out.last_s, laid_out.of_hinges, laid_out.parts
    basis, _ = np.linalg.qr(design)
    left = hinges - basis @ (basis.T @ hinges)
    products = (left.T @ left)[at[:, :, None], at[:, None, :]]
    square = ((products @ parts[:, :, None])[:, :, 0] * parts).sum(axis=1)
    pull = ((left.T @ across)[at] * parts).sum(axis=1)
    size = pull / np.where(square > 1e-9, square, np.inf)
    sds = np.abs(size) * np.sqrt(np.maximum(square, 0.0))
    turn_deg = np.degrees(np.arctan(np.abs(size) / (walk.speed_m_s * last_s)))
    low_deg, high_deg = settings.turns_deg
    is_step = (np.abs(size) >= settings.least_m) & (turn_deg > low_deg) & (turn_deg < high_deg)
    sds = np.where(free & (is_step | (last_s > settings.lasts_s[-1])), sds, 0.0)
    # Between two fixes far apart all lengths are one: the shortest, on every machine.
    pick = int(np.round(sds, 6).argmax())
    return pick if sds[pick] >= settings.least_sds else None
