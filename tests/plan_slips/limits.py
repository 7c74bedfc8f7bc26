"""How small a slip may be and still be found: the honest limits of a check.

A card is rounded, and a reference names a square: a slip that lies within them shows in no
number. The sizes here go from hopeless to plain; what is found of each is counted.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from plan_slips.right_plans import MadePlan, right_plan, rounded

SIZES: dict[str, tuple[float, ...]] = {
    "magnetic azimuth, whole degrees": (1.0, 1.5, 2.0, 2.5, 3.0),
    "magnetic azimuth, tenths": (0.2, 0.5, 1.0, 1.5, 2.0),
    "grid azimuth": (1.0, 2.0, 3.0, 4.0, 6.0),
    "distance": (10.0, 20.0, 30.0, 45.0, 60.0),
    "paces": (5.0, 10.0, 20.0, 30.0, 45.0),
    "point": (10.0, 20.0, 40.0, 60.0, 90.0),
}
"""Of each kind of number, in degrees, metres or paces."""

Found = dict[str, dict[str, tuple[int, int]]]
"""By kind and size: found, out of how many."""


def limits(plans: int, seed: str) -> Found:
    """Plant slips of every size; count those of which the check says anything at their place."""
    return {
        kind: {f"{size:g}": _found(kind, size, plans, seed) for size in sizes}
        for kind, sizes in SIZES.items()
    }


def _found(kind: str, size: float, plans: int, seed: str) -> tuple[int, int]:
    random = Random(f"{seed}: {kind} {size:g}")
    seen = sum(_seen(kind, size * random.choice([-1.0, 1.0]), random) for _ in range(plans))
    return seen, plans


def _seen(kind: str, size: float, random: Random) -> bool:
    plan = right_plan(random, columns="all")
    if kind.startswith("magnetic"):
        step = 0.1 if kind.endswith("tenths") else 1.0
        while plan.step_deg != step:
            plan = right_plan(random, columns="all")
    number = random.randrange(len(plan.rows))
    findings = _PLANTS[kind.split(",", maxsplit=1)[0]](plan, number, size).check().findings
    legs = {str(number + 1), str(number), None}
    return any(finding.leg in legs for finding in findings)


def _magnetic(plan: MadePlan, number: int, size: float) -> MadePlan:
    wrong = rounded(plan.rows[number].magnetic_deg + size, min(plan.step_deg, 0.5))
    return plan.with_row(number, magnetic_deg=wrong)


def _grid(plan: MadePlan, number: int, size: float) -> MadePlan:
    """Measure a grid azimuth wrongly, and go on from it."""
    wrong = rounded(plan.rows[number].grid_deg + size, min(plan.step_deg, 0.5))
    magnetic = rounded(wrong - plan.angle_deg, min(plan.step_deg, 0.5))
    return plan.with_row(number, grid_deg=wrong, magnetic_deg=magnetic)


def _distance(plan: MadePlan, number: int, size: float) -> MadePlan:
    metres = float(round(plan.rows[number].distance_m + size))
    return plan.with_row(number, distance_m=metres, paces=float(round(metres * plan.rate / 100.0)))


def _paces(plan: MadePlan, number: int, size: float) -> MadePlan:
    return plan.with_row(number, paces=float(round(plan.rows[number].paces + size)))


def _point(plan: MadePlan, number: int, size: float) -> MadePlan:
    """Write the end of a leg some tens of metres further east or west."""
    head, east, north = plan.references[number + 1].rsplit(" ", 2)
    moved = max(0, int(east) + round(size / 10.0))
    return plan.with_reference(number + 1, f"{head} {moved:0{len(east)}d} {north}")


_PLANTS: dict[str, Callable[[MadePlan, int, float], MadePlan]] = {
    "magnetic azimuth": _magnetic,
    "grid azimuth": _grid,
    "distance": _distance,
    "paces": _paces,
    "point": _point,
}


def limit_lines(found: Found) -> list[str]:
    """Give the rows of the table in Markdown."""
    rows = ["| a number off by | found of each size |", "|---|---|"]
    for kind, sizes in found.items():
        unit = {"d": " m", "p": ""}.get(kind[0], "°") if kind != "point" else " m"
        cells = (f"{size}{unit}: {seen / out_of:.0%}" for size, (seen, out_of) in sizes.items())
        rows.append(f"| {kind} | {', '.join(cells)} |")
    return rows
