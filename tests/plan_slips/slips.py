"""Slips planted into right plans, each with what a check must say of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from random import Random

from audit.units import turn_degrees
from plan_slips.right_plans import MadePlan, right_plan, rounded


@dataclass(frozen=True, kw_only=True)
class Planted:
    """A plan with one slip.

    ``fields`` are the (leg number or None, field) of which at least one must be found;
    ``name`` is the slip's (``also`` another name for it), that one of those findings must
    carry; ``touched`` are the legs
    whose numbers the slip changes: whatever is said of another leg is false.
    """

    plan: MadePlan
    fields: tuple[tuple[int | None, str], ...]
    name: str
    touched: frozenset[int]
    also: str = ""


Planter = Callable[[Random], Planted | None]
"""Gives None where the slip would be too small to see on the plan that chance gave."""


def _on_leg(plan: MadePlan, number: int, field: str, name: str) -> Planted:
    return Planted(plan=plan, fields=((number, field),), name=name, touched=frozenset({number}))


def _magnetic(name: str, turn: Callable[[MadePlan], float], least_deg: float) -> Planter:
    """Plant a wrong sum from grid to magnetic on one leg."""

    def plant(random: Random) -> Planted | None:
        plan = right_plan(random, columns=random.choice(["all", "magnetic only"]))
        number = random.randrange(len(plan.rows))
        right = plan.rows[number].magnetic_deg
        off = turn(plan)
        if abs(off) < least_deg or (plan.rows[number].grid_deg is None and abs(off) < 4.0):
            return None
        if abs(off) < 2.5 and plan.step_deg != 0.1:
            return None
        wrong = rounded(right + off, plan.step_deg)
        return _on_leg(plan.with_row(number, magnetic_deg=wrong), number,
                       "magnetic_azimuth_deg", name)  # fmt: skip

    return plant


def _grid(name: str, turn_deg: float) -> Planter:
    """Plant a wrong measurement of one grid azimuth, carried on into the magnetic one."""

    def plant(random: Random) -> Planted:
        plan = right_plan(random, columns="all")
        number = random.randrange(len(plan.rows))
        wrong = rounded(plan.rows[number].grid_deg + turn_deg, plan.step_deg)
        magnetic = rounded(wrong - plan.angle_deg, plan.step_deg)
        plan = plan.with_row(number, grid_deg=wrong, magnetic_deg=magnetic)
        return _on_leg(plan, number, "grid_azimuth_deg", name)

    return plant


def _azimuth_digits(random: Random) -> Planted | None:
    plan = replace(right_plan(random, columns="all"))
    number = random.randrange(len(plan.rows))
    right = plan.rows[number].magnetic_deg
    if right != int(right):
        return None
    digits = list(f"{int(right):03d}")
    place = random.randrange(2)
    digits[place], digits[place + 1] = digits[place + 1], digits[place]
    wrong = float("".join(digits))
    if wrong >= 360.0 or abs(turn_degrees(right, wrong)) < 5.0:
        return None
    plan = plan.with_row(number, magnetic_deg=wrong)
    return _on_leg(plan, number, "magnetic_azimuth_deg", "azimuth-digits")


def _neighbour(random: Random) -> Planted | None:
    plan = right_plan(random, columns="all")
    number = random.randrange(1, len(plan.rows))
    wrong, right = plan.rows[number - 1].magnetic_deg, plan.rows[number].magnetic_deg
    if abs(turn_degrees(right, wrong)) < 5.0:
        return None
    plan = plan.with_row(number, magnetic_deg=wrong)
    return _on_leg(plan, number, "magnetic_azimuth_deg", "neighbour-azimuth")


def _distance(name: str, wrong: Callable[[float], float]) -> Planter:
    """Plant a wrong distance, carried on into the paces."""

    def plant(random: Random) -> Planted | None:
        plan = right_plan(random, columns="all")
        number = random.randrange(len(plan.rows))
        given = float(round(wrong(plan.rows[number].distance_m)))
        if abs(given - plan.exact_m[number]) < 60.0 or given < 50.0:
            return None
        plan = plan.with_row(
            number, distance_m=given, paces=float(round(given * plan.rate / 100.0))
        )
        return _on_leg(plan, number, "distance_m", name)

    return plant


def _swapped_number(number: float) -> float:
    digits = list(f"{number:.0f}")
    digits[0], digits[1] = digits[1], digits[0]
    return float("".join(digits))


def _paces(name: str, wrong: Callable[[float, float], float]) -> Planter:
    def plant(random: Random) -> Planted | None:
        plan = right_plan(random, columns="all")
        number = random.randrange(len(plan.rows))
        right = plan.rows[number].paces
        given = float(round(wrong(right, plan.rate)))
        if abs(given - right) < max(30.0, 0.06 * right) or given < 20.0:
            return None
        return _on_leg(plan.with_row(number, paces=given), number, "paces", name)

    return plant


def _reference(
    name: str, change: Callable[[Random, str, str, str], str | None], also: str = ""
) -> Planter:
    """Plant a slip in the reference of one point; the card's numbers stay right."""

    def plant(random: Random) -> Planted | None:
        plan = right_plan(random, columns=random.choice(["all", "magnetic only", "no paces"]))
        number = random.randrange(len(plan.references))
        head, east, north = plan.references[number].rsplit(" ", 2)
        text = change(random, head, east, north)
        if text is None or text == plan.references[number]:
            return None
        return _referred(plan, number, text, name, also)

    return plant


def _degrees(name: str, change: Callable[[Random, str], str | None]) -> Planter:
    """Plant a slip in the latitude or longitude of one point; the card's numbers stay right."""

    def plant(random: Random) -> Planted | None:
        plan = right_plan(random, columns=random.choice(["all", "magnetic only"]), degrees=True)
        number = random.randrange(len(plan.references))
        halves = plan.references[number].split(", ")
        axis = random.randrange(2)
        other = change(random, halves[axis])
        if other is None or other == halves[axis]:
            return None
        halves[axis] = other
        return _referred(plan, number, ", ".join(halves), name)

    return plant


def _decimals_swapped(random: Random, written: str) -> str | None:
    whole, decimals = written.split(".")
    place = random.randrange(3)  # a swap further back moves the point by less than 100 m
    swap = decimals[place + 1] + decimals[place]
    if abs(int(swap) - int(swap[::-1])) * 10 ** (3 - place) < 100:
        return None
    return f"{whole}.{decimals[:place]}{swap}{decimals[place + 2 :]}"


def _decimal_wrong(random: Random, written: str) -> str:
    whole, decimals = written.split(".")
    place = random.randrange(3)
    digit = str((int(decimals[place]) + random.randrange(1, 10)) % 10)
    # In the third decimal by two at least: one is 70 to 110 m.
    if place == 2 and abs(int(digit) - int(decimals[place])) < 2:
        digit = str((int(decimals[place]) + 5) % 10)
    return f"{whole}.{decimals[:place]}{digit}{decimals[place + 1 :]}"


def _referred(plan: MadePlan, number: int, text: str, name: str, also: str = "") -> Planted:
    """Give the plan with another reference at one point, and the legs that it touches."""
    legs = {leg for leg in (number - 1, number) if 0 <= leg < len(plan.rows)}
    fields = ((None, "position"), *((leg, what) for leg in legs
              for what in ("grid_azimuth_deg", "magnetic_azimuth_deg", "distance_m")))  # fmt: skip
    return Planted(
        plan=plan.with_reference(number, text), fields=fields, name=name,
        touched=frozenset(legs), also=also,
    )  # fmt: skip


def _transposed(random: Random, head: str, east: str, north: str) -> str | None:
    halves = [east, north]
    axis = random.randrange(2)
    place = random.randrange(3)
    digits = list(halves[axis])
    if abs(int(digits[place]) - int(digits[place + 1])) * 9 * 10 ** (3 - place) < 100:
        return None  # a slip of 90 m may lie within what a card is rounded to
    digits[place], digits[place + 1] = digits[place + 1], digits[place]
    halves[axis] = "".join(digits)
    return f"{head} {halves[0]} {halves[1]}"


def _digit(random: Random, head: str, east: str, north: str) -> str:
    halves = [east, north]
    axis, place = random.randrange(2), random.randrange(3)
    digits = list(halves[axis])
    digits[place] = str((int(digits[place]) + random.randrange(1, 10)) % 10)
    halves[axis] = "".join(digits)
    return f"{head} {halves[0]} {halves[1]}"


def _exchanged(_: Random, head: str, east: str, north: str) -> str | None:
    return None if abs(int(east) - int(north)) < 10 else f"{head} {north} {east}"


def _square(random: Random, head: str, east: str, north: str) -> str | None:
    # One step north in the letters of the squares, A to V without I and O, or A to Z.
    row = "ABCDEFGHJKLMNPQRSTUV" if " " in head else "ABCDEFGHJKLMNOPQRSTUVWXYZ"
    place = row.index(head[-1]) + random.choice([-1, 1])
    return f"{head[:-1]}{row[place]} {east} {north}" if 0 <= place < len(row) else None


def _course(name: str, what: str, change: Callable[[MadePlan], MadePlan | None]) -> Planter:
    """Plant a slip in the settings of the course; it touches every leg."""

    def plant(random: Random) -> Planted | None:
        plan = change(right_plan(random, columns="all"))
        if plan is None:
            return None
        every = frozenset(range(len(plan.rows)))
        return Planted(plan=plan, fields=((None, what),), name=name, touched=every)

    return plant


def _angle(wrong: Callable[[MadePlan], float], least_deg: float):
    def change(plan: MadePlan) -> MadePlan | None:
        angle = wrong(plan)
        if abs(angle - plan.angle_deg) < least_deg or abs(angle) > 180.0:
            return None
        return replace(plan, angle_deg=angle)

    return change


def _off_the_sheet(plan: MadePlan) -> MadePlan | None:
    # A sheet that begins a kilometre square north-east of the first point.
    head, east, north = plan.references[0].rsplit(" ", 2)
    if max(int(east[:2]), int(north[:2])) > 88:
        return None
    corners = (f"{head} {int(east[:2]) + 1:02d} {int(north[:2]) + 1:02d}",
               f"{head} {int(east[:2]) + 11:02d} {int(north[:2]) + 11:02d}")  # fmt: skip
    return replace(plan, extra={"sheet": f'["{corners[0]}", "{corners[1]}"]'})


def _old_angle(random: Random) -> Planted:
    of = date(2021, 5, 1)
    plan = right_plan(random, columns="all", angle_of=of)
    plan = replace(plan, extra={"grid_magnetic_angle_date": of.isoformat()})
    every = frozenset(range(len(plan.rows)))
    fields = ((None, "grid_magnetic_angle_date"),)
    return Planted(plan=plan, fields=fields, name="gm-angle-stale", touched=every)


def _coarse(random: Random) -> Planted:
    plan = right_plan(random, columns="all", digits=6)
    fields = tuple((leg, "reference_precision") for leg in range(len(plan.rows)))
    return Planted(plan=plan, fields=fields, name="", touched=frozenset(range(len(plan.rows))))


PLANTERS: dict[str, Planter] = {
    "angle left out": _magnetic("gm-angle-omitted", lambda p: p.angle_deg, 2.5),
    "angle the wrong way": _magnetic("gm-angle-reversed", lambda p: 2.0 * p.angle_deg, 2.5),
    "angle twice": _magnetic("gm-angle-doubled", lambda p: -p.angle_deg, 2.5),
    "declination for the angle": _magnetic(
        "declination-for-gm-angle", lambda p: -p.convergence_deg, 0.5
    ),
    "back azimuth, magnetic": _magnetic("reciprocal", lambda _: 180.0, 2.5),
    "back azimuth, grid": _grid("reciprocal", 180.0),
    "quarter turn": _grid("right-angle", 90.0),
    "azimuth digits swapped": _azimuth_digits,
    "azimuth of another leg": _neighbour,
    "a hundred metres too much": _distance("hundred-miscounted", lambda m: m + 100.0),
    "ruler of half the scale": _distance("wrong-ruler", lambda m: 2.0 * m),
    "ruler of twice the scale": _distance("wrong-ruler", lambda m: m / 2.0),
    "distance digits swapped": _distance("digits", _swapped_number),
    "single for double paces": _paces("single-double-pace", lambda n, _: 2.0 * n),
    "double for single paces": _paces("single-double-pace", lambda n, _: n / 2.0),
    "paces of a hundred lost": _paces("hundred-miscounted", lambda n, rate: n - rate),
    "pace digits swapped": _paces("digits", lambda n, _: _swapped_number(n)),
    "reference digits swapped": _reference("digits-transposed", _transposed),
    "reference digit wrong": _reference("digit-wrong", _digit, "wrong-grid-line"),
    "easting and northing swapped": _reference("easting-northing-swapped", _exchanged),
    "degrees, digits swapped": _degrees("digits-transposed", _decimals_swapped),
    "degrees, digit wrong": _degrees("digit-wrong", _decimal_wrong),
    "wrong 100 km square": _reference("wrong-100km-square", _square),
    "references too coarse": _coarse,
    "point off the sheet": _course("", "sheet", _off_the_sheet),
    "angle five years old": _old_angle,
    "east for west": _course(
        "east-for-west", "grid_magnetic_angle_deg", _angle(lambda p: -p.angle_deg, 2.5)
    ),
    "decimal point lost": _course(
        "decimal-point", "grid_magnetic_angle_deg", _angle(lambda p: 10.0 * p.angle_deg, 5.0)
    ),
}
"""By the words of the table."""
