"""A plan copied into another form, and what that form cannot carry."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from audit.geodesy.grids import CourseGrid, course_grid
from audit.geodesy.shown_references import exact_reference
from audit.leg_card.points import end_name
from audit.plan import Plan, PlannedLeg
from audit.positions import Position
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Lost:
    """Something that a form cannot carry.

    Attributes
    ----------
    words : str
        The end of "it does not carry ...".
    differs : tuple of str
        What therefore differs once the copy is read, in words of `plan_differences`.
    """

    words: str
    differs: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanCopy:
    """The text of a copy.

    Attributes
    ----------
    lost : tuple of Lost
    options : dict
        What has to be said beside the file to read the same plan out of it, by the names
        of `audit.read_plan`.
    """

    text: str
    lost: tuple[Lost, ...]
    options: dict[str, str | float]


def reference(position: Position, grid: CourseGrid) -> tuple[str, bool]:
    """Give the written position, and whether it says by itself how well it is known."""
    return exact_reference(
        position.longitude_deg, position.latitude_deg, position.half_square_m, grid
    )


def number(value: float) -> str:
    """Write a number in full, never with the three decimals that look like thousands."""
    text = repr(float(value))
    whole, point, decimals = text.partition(".")
    if "e" in text or not point:
        return f"{value:.10f}"
    if not int(decimals):
        return whole
    return f"{text}0" if len(decimals) == 3 else text


def is_reckoned(plan: Plan, leg: PlannedLeg) -> bool:
    """Tell whether a leg ends where its own azimuth and distance lead."""
    return plan.position(end_name(leg)) is None


def setting_options(plan: Plan) -> dict[str, str | float]:
    """Give the settings that a form without any takes from options."""
    said: dict[str, str | float | None] = {
        "name": plan.name,
        "date": plan.date.isoformat() if plan.date else None,
        "grid": plan.grid,
        "grid_magnetic_angle_deg": plan.grid_magnetic_angle_deg,
        "paces_per_100m": plan.paces_per_100m,
        "arrival_radius_m": plan.arrival_radius_m,
    }
    return {name: value for name, value in said.items() if value is not None}


def lost_settings(plan: Plan) -> list[Lost]:
    """Give the settings for which there is no option, as far as the plan has them."""
    has = (
        (plan.grid_magnetic_angle_date is not None, sentence("copy-angle-date"),
         "grid_magnetic_angle_date"),
        (plan.sheet is not None, sentence("copy-sheet"), "sheet"),
        (plan.safety_azimuth is not None, sentence("copy-safety"), "safety"),
        (plan.order == "free", sentence("copy-order"), "order"),
    )  # fmt: skip
    return [Lost(words=words, differs=(differs,)) for there, words, differs in has if there]


def lost_points(plan: Plan) -> list[Lost]:
    """Give what is lost of the list of points where only the legs bring them up."""
    visited = [name for leg in plan.legs for name in (leg.start, leg.end)]
    unused = [point.name for point in plan.points if point.name not in visited]
    if unused:
        words = sentence("copy-unused", names=", ".join(unused))
        return [Lost(words=words, differs=("points",))]
    met = [name for name in dict.fromkeys(visited) if plan.position(name) is not None]
    if met != [point.name for point in plan.points]:
        words = sentence("copy-listed")
        return [Lost(words=words, differs=("order of points",))]
    return []


def lost_precision(plan: Plan) -> list[Lost]:
    """Give the points whose precision a bare position does not say."""
    grid = course_grid(plan.grid)
    names = [point.name for point in plan.points if not reference(point.position, grid)[1]]
    if not names:
        return []
    words = sentence("copy-known", names=", ".join(names))
    return [Lost(words=words, differs=("precision of",))]


def legs_with(plan: Plan, what: str) -> str:
    """List the legs that state something: "legs 1, 2"; "" for none."""
    names = [leg.name for leg in plan.legs if getattr(leg, what) not in (None, "", ())]
    return named_legs(names) if names else ""


def named_legs(names: Sequence[str]) -> str:
    """Give legs by their names: "leg 1", "legs 1, 2"."""
    if len(names) == 1:
        return sentence("figure-leg", name=names[0])
    return sentence("figure-legs", names=", ".join(names))
