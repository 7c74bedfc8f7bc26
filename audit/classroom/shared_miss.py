"""A point that all able walkers miss alike: where they ended, against where it is planned.

Two things show it. Walkers who find a marker all leave from it: where most of them leave
from one place that is not the planned one, the marker stands there, or the plan is wrong.
Where there is no such place, the claims themselves may lie to one side by more than their
scatter allows.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.settings.class_shows import ClassShowsSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedPlace:
    """Where many ended up, from the planned point.

    Attributes
    ----------
    mean_m : (east, north)
    error_m, scatter_m : float
        Standard error of the mean, and standard deviation about it, per axis.
    walkers, sharing : int
        How many were looked at, and how many of them lie about the mean.
    """

    mean_m: tuple[float, float]
    error_m: float
    scatter_m: float
    walkers: int
    sharing: int

    @property
    def off_m(self) -> float:
        """Give how far from the planned point."""
        return float(np.hypot(*self.mean_m))


def middle_of(offsets_m: FloatArray) -> SharedPlace | None:
    """Give the mean of offsets, shape (n, 2), with its error; None of fewer than two."""
    walkers = len(offsets_m)
    if walkers < 2:
        return None
    mean = offsets_m.mean(axis=0)
    scatter = float(np.sqrt(offsets_m.var(axis=0, ddof=1).mean()))
    return SharedPlace(
        mean_m=(float(mean[0]), float(mean[1])),
        error_m=scatter / walkers**0.5,
        scatter_m=scatter,
        walkers=walkers,
        sharing=walkers,
    )


def gathered(
    offsets_m: FloatArray, sd_m: FloatArray, settings: ClassShowsSettings
) -> SharedPlace | None:
    """Give the one place that most walkers left from; None where there is none.

    Parameters
    ----------
    offsets_m : float array, shape (n, 2)
        Where each able walker left from, east and north of the planned point.
    sd_m : float array, shape (n,)
        Standard error per axis.
    """
    if len(offsets_m) < settings.least_walkers:
        return None
    reach = np.maximum(settings.gathered_m, settings.gathered_sds * sd_m)
    apart = np.hypot(*(offsets_m[:, None] - offsets_m[None]).transpose(2, 0, 1))
    inside = apart[int((apart <= reach).sum(axis=1).argmax())] <= reach
    centre = np.median(offsets_m[inside], axis=0)
    inside = np.hypot(*(offsets_m - centre).T) <= reach
    if inside.sum() < max(settings.gathered_share * len(offsets_m), settings.least_gathered):
        return None
    place = middle_of(offsets_m[inside])
    return place and SharedPlace(
        mean_m=place.mean_m,
        error_m=max(place.error_m, float(np.median(sd_m[inside])) / place.walkers**0.5),
        scatter_m=place.scatter_m,
        walkers=len(offsets_m),
        sharing=place.walkers,
    )


def stands_elsewhere(
    place: SharedPlace, offsets_m: FloatArray, radius_m: float, settings: ClassShowsSettings
) -> bool:
    """Tell whether a point itself stands where walkers left from, for certain outside its radius.

    Not so where others leave from the planned point: these found it there.
    """
    at_point = int((np.hypot(*offsets_m.T) <= radius_m).sum())
    return (
        place.off_m - 2.0 * place.error_m > radius_m
        and at_point <= settings.at_point_share * place.sharing
    )


def missed_alike(
    offsets_m: FloatArray, radius_m: float, settings: ClassShowsSettings
) -> SharedPlace | None:
    """Give where claims lie on average where that is no chance; else None.

    ``offsets_m`` (n, 2) holds the able walkers' misses, what they brought along from the
    start of the leg and what each turns and paces on other legs taken off. The middle is
    a median, so that one who was lost moves nothing.
    """
    if len(offsets_m) < settings.least_walkers:
        return None
    middle = np.median(offsets_m, axis=0)
    spread = float(np.sqrt(((offsets_m - middle) ** 2).mean()))  # the lost ones speak against it
    error = 1.2533 * spread / len(offsets_m) ** 0.5  # of a median, for normal errors
    off = float(np.hypot(*middle))
    if off <= max(radius_m, settings.shift_sds * error):
        return None
    sideways = (offsets_m @ middle) / off
    if (sideways > 0.0).mean() < settings.alike_share:
        return None
    return SharedPlace(
        mean_m=(float(middle[0]), float(middle[1])),
        error_m=error,
        scatter_m=spread,
        walkers=len(offsets_m),
        sharing=int((sideways > 0.0).sum()),
    )
