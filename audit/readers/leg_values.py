"""The numbers of a leg: its azimuths in either unit, its distance, its paces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import NORTHS
from audit.units import degrees_from_mils, turn_degrees
from audit.words import sentence

_HALF_STEPS = {
    "grid_azimuth_half_step_deg": ("grid_azimuth_deg", "grid_azimuth_mil"),
    "distance_half_step_m": ("distance_m",),
}
"""Each with the keys of the numbers that it may belong to."""
_North = TypeVar("_North", GridAzimuth, MagneticAzimuth, TrueAzimuth)


@dataclass(frozen=True, slots=True, kw_only=True)
class LegValues:
    """The checked numbers of one leg; None where the plan says nothing."""

    grid_azimuth: GridAzimuth | None = None
    magnetic_azimuth: MagneticAzimuth | None = None
    true_azimuth: TrueAzimuth | None = None
    distance_m: float | None = None
    paces: float | None = None
    grid_azimuth_half_step_deg: float | None = None
    distance_half_step_m: float | None = None
    in_mils: tuple[str, ...] = ()

    @property
    def lead_to_an_end(self) -> bool:
        """Tell whether an azimuth and a distance are given."""
        azimuths = (self.grid_azimuth, self.magnetic_azimuth, self.true_azimuth)
        return self.distance_m is not None and any(azimuth is not None for azimuth in azimuths)


def leg_values(numbers: Mapping[str, float], place: str, problems: ProblemList) -> LegValues:
    """Give a leg's values from numbers inside their limits, by the plan's own keys."""
    for key, keys in _HALF_STEPS.items():
        if key in numbers and not any(number in numbers for number in keys):
            rule = f"belongs to {keys[0]}, which is not given"
            problems.add(f"{place}, {key}", numbers[key], rule, "Leave it out.")
    return LegValues(
        grid_azimuth=azimuth(numbers, "grid", GridAzimuth, place, problems),
        magnetic_azimuth=azimuth(numbers, "magnetic", MagneticAzimuth, place, problems),
        true_azimuth=azimuth(numbers, "true", TrueAzimuth, place, problems),
        distance_m=numbers.get("distance_m"),
        paces=numbers.get("paces"),
        grid_azimuth_half_step_deg=numbers.get("grid_azimuth_half_step_deg"),
        distance_half_step_m=numbers.get("distance_half_step_m"),
        in_mils=tuple(north for north in NORTHS if _only_in_mils(numbers, north)),
    )


def _only_in_mils(numbers: Mapping[str, float], north: str) -> bool:
    return f"{north}_azimuth_mil" in numbers and f"{north}_azimuth_deg" not in numbers


def azimuth(
    numbers: Mapping[str, float],
    north: str,
    kind: type[_North],
    place: str,
    problems: ProblemList,
) -> _North | None:
    """Give an azimuth in degrees from either unit; both units must agree but for rounding.

    That a whole circle is read as 0 is noted: cards say it so from then on.
    """
    degrees, mils = numbers.get(f"{north}_azimuth_deg"), numbers.get(f"{north}_azimuth_mil")
    for unit, value, circle in (("deg", degrees, 360), ("mil", mils, 6400)):
        if value == circle:
            key = f"{north}_azimuth_{unit}"
            problems.note(sentence("plan-whole-circle", place=place, key=key, value=str(circle)))
    if mils is None:
        return None if degrees is None else kind(degrees)
    from_mils = degrees_from_mils(mils)
    if degrees is None:
        return kind(from_mils)
    if abs(turn_degrees(degrees, from_mils)) > problems.limits.two_scales_slack_deg:
        problems.add(
            f"{place}, {north}_azimuth_deg and {north}_azimuth_mil",
            None,
            f"{degrees:g} degrees and {mils:g} mils ({from_mils:.1f} degrees) are two azimuths",
            "Keep the right one.",
        )
    return kind(degrees)
