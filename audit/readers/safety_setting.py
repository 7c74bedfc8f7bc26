"""The safety bearing of a course, from whichever north its file gives it."""

from __future__ import annotations

from collections.abc import Mapping

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.plan import AnyAzimuth
from audit.readers.leg_values import azimuth
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import SAFETY_KEYS


def settle_safety_bearing(
    values: Mapping[str, object], options: Mapping[str, object], problems: ProblemList
) -> AnyAzimuth | None:
    """Give the safety bearing from settings inside their limits; one north only can be meant.

    ``options`` are those of the caller: what they say is not the file's fault.
    """
    numbers = {
        key.removeprefix("safety_"): value
        for key in SAFETY_KEYS
        if isinstance(value := values.get(key), float)
    }
    found = [
        one
        for one in (
            azimuth(numbers, "grid", GridAzimuth, "course, safety", problems),
            azimuth(numbers, "magnetic", MagneticAzimuth, "course, safety", problems),
            azimuth(numbers, "true", TrueAzimuth, "course, safety", problems),
        )
        if one is not None
    ]
    if len(found) > 1:
        stated = [key for key in SAFETY_KEYS if isinstance(values.get(key), float)]
        asked = [key for key in stated if key in options]
        rule = "gives the safety bearing from more than one north"
        if asked:
            other = "another option" if len(asked) > 1 else "the file"
            rule = f"gives the safety bearing from another north than {other} does"
        remedy = "Keep one; the card works out the other by the grid-magnetic angle."
        problems.add(f"option {asked[-1]}" if asked else "course", None, rule, remedy)
    if not found and values.get("safety_note"):
        rule = "is there without a safety bearing"
        remedy = "Give it one: safety_magnetic_azimuth_deg = 180."
        problems.add("course, safety_note", None, rule, remedy)
    return found[0] if found else None
