"""The receiver's error in this recording: how large, how long it lasts, and where it is worse."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from audit.matching.leg_match import CleanTrack
from audit.measurement.straight_walking import StraightStretch
from audit.settings import NoiseSettings
from audit.statistics.noise_fit import NoiseFit, NoiseGrid, fit_noise
from audit.statistics.spread import TWO_SIDED_95
from audit.statistics.walking_noise import Wander, log_weight_of_noise
from audit.units import FloatArray

NoiseSource = Literal["halts", "halts and straight walking", "straight walking", "usual value"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReceiverNoise:
    """Position error per axis, taken as correlated in time.

    Attributes
    ----------
    noise_m, noise_log_sd : float
        Standard deviation, and the standard error of its logarithm.
    correlation_s, correlation_log_sd : float
        Time over which the error is forgotten (to 1/e), and the error of its logarithm.
    source
        What it rests on; the usual value is the prior alone.
    halted_s, walked_s : float
        Seconds of standing still, and of straight walking, that were used.
    prior_m : float
        The usual value that was taken beforehand.
    usual_hdop : float or None
        Middle hdop of the fixes that it was measured on; None where the recording has none.
    """

    noise_m: float
    noise_log_sd: float
    correlation_s: float
    correlation_log_sd: float
    source: NoiseSource
    halted_s: float
    prior_m: float
    usual_hdop: float | None = None
    walked_s: float = 0.0

    @property
    def interval_m(self) -> list[float]:
        """The 95 % interval of ``noise_m``."""
        return _log_interval(self.noise_m, self.noise_log_sd)

    @property
    def correlation_interval_s(self) -> list[float]:
        """The 95 % interval of ``correlation_s``."""
        return _log_interval(self.correlation_s, self.correlation_log_sd)


def _log_interval(value: float, log_sd: float) -> list[float]:
    return [value * math.exp(-TWO_SIDED_95 * log_sd), value * math.exp(TWO_SIDED_95 * log_sd)]


def measure_noise(
    clean: CleanTrack,
    halts: FloatArray,
    settings: NoiseSettings,
    straight: Sequence[tuple[StraightStretch, Wander]] = (),
) -> ReceiverNoise:
    """Measure the noise on the halts, shape (k, 2) in seconds, with a usual value beforehand.

    Halts and stretches of straight walking are heard together.
    """
    stretches, used, seconds = [], [], 0.0
    for start_s, end_s in halts if clean.timed else ():
        index = _still_fixes(clean, float(start_s), float(end_s), settings)
        if len(index) < settings.least_fixes:
            continue
        stretches.append((clean.time_s[index], _places(clean, index)))
        used.append(index)
        seconds += float(clean.time_s[index[-1]] - clean.time_s[index[0]])
    grid = _grid(settings)
    fit = fit_noise(
        stretches,
        grid,
        [
            log_weight_of_noise(
                walk.time_s,
                walk.across_m,
                noise_m=grid.noise_m,
                correlation_s=grid.correlation_s,
                white_share=grid.white_share,
                wander=wander,
            )
            for walk, wander in straight
        ],
    )
    everywhere = np.concatenate(used) if used else np.arange(len(clean))
    return ReceiverNoise(
        noise_m=fit.noise_m,
        noise_log_sd=float(np.hypot(fit.noise_log_sd, settings.model_log_sd)),
        correlation_s=fit.correlation_s,
        correlation_log_sd=fit.correlation_log_sd,
        source=_source(halts=bool(stretches), walks=bool(straight)),
        halted_s=seconds,
        prior_m=settings.usual_noise_m,
        usual_hdop=_middle_hdop(clean, everywhere),
        walked_s=sum(float(np.ptp(walk.time_s)) for walk, _ in straight),
    )


def _source(*, halts: bool, walks: bool) -> NoiseSource:
    if halts:
        return "halts and straight walking" if walks else "halts"
    return "straight walking" if walks else "usual value"


def noise_between(
    clean: CleanTrack,
    noise: ReceiverNoise,
    times_s: tuple[float, float],
    gap_share: float,
    settings: NoiseSettings,
) -> float:
    """Give the noise of a stretch in metres: larger where hdop or gaps say that it is.

    Position error grows in proportion to the dilution of precision (the meaning of DOP);
    a receiver that fell silent was close to losing its fix before and after.
    """
    worse = 1.0 + settings.gap_noise * gap_share
    within = np.flatnonzero((clean.time_s >= times_s[0]) & (clean.time_s <= times_s[1]))
    hdop = _middle_hdop(clean, within)
    if hdop is not None and noise.usual_hdop is not None:
        worse *= float(np.clip(hdop / noise.usual_hdop, 1.0, settings.most_hdop_ratio))
    return noise.noise_m * worse


def _still_fixes(
    clean: CleanTrack, start_s: float, end_s: float, settings: NoiseSettings
) -> NDArray[np.int64]:
    """Choose the fixes of a halt, its edges left out, not too close to each other."""
    if end_s - start_s < settings.shortest_halt_s:
        return np.empty(0, dtype=np.int64)
    inside = np.flatnonzero(
        (clean.time_s >= start_s + settings.halt_edge_s)
        & (clean.time_s <= end_s - settings.halt_edge_s)
    )
    if len(inside) < 2:
        return inside
    span_s = float(clean.time_s[inside[-1]] - clean.time_s[inside[0]])
    most = int(min(settings.most_fixes, 1 + span_s / settings.spacing_s))
    pick = np.linspace(0, len(inside) - 1, max(min(len(inside), most), 2))
    return np.unique(inside[np.round(pick).astype(np.int64)])


def _places(clean: CleanTrack, index: NDArray[np.int64]) -> FloatArray:
    return clean.places(index)


def _middle_hdop(clean: CleanTrack, index: NDArray[np.int64]) -> float | None:
    known = clean.hdop[index]
    known = known[np.isfinite(known) & (known > 0.0)]
    return float(np.median(known)) if len(known) else None


def _grid(settings: NoiseSettings) -> NoiseGrid:
    return NoiseGrid(
        noise_m=np.geomspace(settings.least_noise_m, settings.most_noise_m, settings.noise_steps),
        correlation_s=np.array(settings.correlations_s),
        prior=NoiseFit(
            noise_m=settings.usual_noise_m,
            noise_log_sd=settings.usual_log_sd,
            correlation_s=settings.usual_correlation_s,
            correlation_log_sd=settings.usual_correlation_log_sd,
        ),
        white_share=settings.white_share,
        differs_log_sd=settings.differs_log_sd,
        kinds_differ_log_sd=settings.kinds_differ_log_sd,
        moved_m=settings.moved_m,
    )
