"""The settings of a course, from its file and from the caller, checked and put together."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypedDict

from audit.geodesy.grids import course_grid
from audit.plan import AnyAzimuth, Order, Point, StatedIn
from audit.positions import Position
from audit.readers.plain_text import shown, writable
from audit.readers.problem_list import ProblemList
from audit.readers.safety_setting import settle_safety_bearing
from audit.readers.value_limits import checked_number, limits_by
from audit.words import sentence


class CourseOptions(TypedDict, total=False):
    """What a caller may say beside the plan's file; None means nothing is said.

    ``declination_deg`` is another way to state the grid-magnetic angle; either may be text with
    minutes. ``date`` is a date or ISO text; ``grid`` "auto" or a code such as "EPSG:27700";
    ``grid_magnetic_angle_date`` the day or the year of the map's angle; ``sheet`` the
    positions of the map sheet's south-west and north-east corners;
    ``order`` "planned" or "free"; the safety bearing comes from one north, in degrees or mils;
    ``route`` the name or number of the one route to take from a GPX file; ``points`` are
    those that the file may name without giving them a position.
    """

    name: str | None
    date: dt.date | str | None
    grid: str | int | None
    grid_magnetic_angle_deg: float | str | None
    declination_deg: float | str | None
    grid_magnetic_angle_date: dt.date | str | int | None
    sheet: list[str] | None
    paces_per_100m: float | None
    arrival_radius_m: float | None
    order: str | None
    safety_grid_azimuth_deg: float | None
    safety_grid_azimuth_mil: float | None
    safety_magnetic_azimuth_deg: float | None
    safety_magnetic_azimuth_mil: float | None
    safety_true_azimuth_deg: float | None
    safety_true_azimuth_mil: float | None
    safety_note: str | None
    route: str | int | None
    points: tuple[Point, ...] | None


SETTING_KEYS = tuple(key for key in CourseOptions.__annotations__ if key not in ("route", "points"))


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseSettings:
    """The checked settings; None where neither file nor caller says anything.

    ``grid`` is None for "auto". ``frees_legs`` says that the caller asks for a free order where
    the file has another: then what it says of legs is put aside.
    """

    name: str
    date: dt.date | None
    grid: str | None
    grid_magnetic_angle_deg: float | None
    declination_deg: float | None
    grid_magnetic_angle_date: dt.date | None
    grid_magnetic_angle_year_only: bool
    sheet: tuple[Position, Position] | None
    paces_per_100m: float | None
    arrival_radius_m: float
    order: Order
    frees_legs: bool = False
    safety_azimuth: AnyAzimuth | None = None
    safety_note: str = ""
    date_from: StatedIn = "plan"


def settle_settings(
    stated: Mapping[str, object], options: CourseOptions, problems: ProblemList
) -> CourseSettings:
    """Give the settings: the caller's where given, else the file's, else the defaults, noted."""
    given = {key: value for key, value in options.items() if value is not None}
    values: dict[str, object] = {}
    for key in SETTING_KEYS:
        if key in given:
            values[key] = _checked(key, given[key], f"option {key}", problems)
            if key in stated and values[key] is not None:
                problems.note(
                    sentence(
                        "plan-option", name=key, value=shown(given[key]), other=shown(stated[key])
                    )
                )
        elif key in stated:
            values[key] = _checked(key, stated[key], f"course, {key}", problems)
    _one_angle(values, given, problems)
    sheet = _sheet(values.get("sheet"), values.get("grid"), problems)
    safety = settle_safety_bearing(values, given, problems)
    frees = given.get("order") == "free" and stated.get("order") != "free"
    angle_date = given.get("grid_magnetic_angle_date", stated.get("grid_magnetic_angle_date"))
    settings = replace(
        _with_defaults(values, problems), grid_magnetic_angle_year_only=_is_year(angle_date)
    )
    date_from: StatedIn = "option" if "date" in given else "plan"
    return replace(
        settings,
        sheet=sheet,
        frees_legs=frees,
        safety_azimuth=safety,
        date_from=date_from,
    )


def _one_angle(
    values: dict[str, object], given: Mapping[str, object], problems: ProblemList
) -> None:
    """Keep one of angle and declination: an option's before the file's; two of one are refused."""
    both = [key for key in ("grid_magnetic_angle_deg", "declination_deg") if key in values]
    if len(both) < 2:
        return
    of_file = [key for key in both if key not in given]
    if len(of_file) != 1:
        rule = "stands beside grid_magnetic_angle_deg, and each says the other"
        problems.add("course, declination_deg", None, rule, "Give one of the two.")
    for key in of_file:
        other = next(one for one in both if one != key)
        told = {"name": key, "value": shown(given.get(other)), "other": shown(values.pop(key))}
        problems.note(sentence("plan-option", **told))


def _with_defaults(values: dict[str, object], problems: ProblemList) -> CourseSettings:
    name = values.get("name")
    if name is None:
        name = writable(Path(problems.file).stem)
        problems.note(sentence("plan-no-name", name=name))
    radius_m = _number(values.get("arrival_radius_m"))
    if radius_m is None:
        radius_m = problems.limits.arrival_radius_m
        problems.note(sentence("plan-no-radius", radius=f"{radius_m:g}"))
    date, grid = values.get("date"), values.get("grid")
    angle_date = values.get("grid_magnetic_angle_date")
    return CourseSettings(
        name=str(name),
        date=date if isinstance(date, dt.date) else None,
        grid=None if grid in (None, "auto") else str(grid),
        grid_magnetic_angle_deg=_number(values.get("grid_magnetic_angle_deg")),
        declination_deg=_number(values.get("declination_deg")),
        grid_magnetic_angle_date=angle_date if isinstance(angle_date, dt.date) else None,
        grid_magnetic_angle_year_only=False,
        sheet=None,
        paces_per_100m=_number(values.get("paces_per_100m")),
        arrival_radius_m=radius_m,
        order="free" if values.get("order") == "free" else "planned",
        safety_note=str(values.get("safety_note") or ""),
    )


def _number(value: object) -> float | None:
    return value if isinstance(value, float) else None


def _checked(key: str, value: object, place: str, problems: ProblemList) -> object:
    if key in limits_by(problems.limits):
        return checked_number(value, key, place, problems)
    if key == "date":
        return _date(value, place, problems)
    if key == "grid_magnetic_angle_date":
        return _date_or_year(value, place, problems)
    if key == "order" and value not in ("planned", "free"):
        problems.add(place, value, "is no order", 'Write "planned" or "free".')
    if key in ("sheet", "order"):
        return value
    if key == "grid":
        return _grid(value, place, problems)
    return checked_name(value, place, problems)


def checked_name(value: object, place: str, problems: ProblemList) -> str | None:
    """Give a name as one line of text; a whole number is taken as its digits."""
    if isinstance(value, int) and not isinstance(value, bool):
        return str(value)
    if not isinstance(value, str):
        problems.add(place, value, "is not a name", "Write the name in quotation marks.")
        return None
    name = " ".join(problems.writable(value, place).split())
    if not name:
        problems.add(place, None, "is empty", "Write a name, or leave the line out.")
        return None
    return name


def _date(value: object, place: str, problems: ProblemList) -> dt.date | None:
    remedy = "Write year, month and day, like 2026-10-03."
    if isinstance(value, dt.datetime):
        problems.note(sentence("plan-day-used", place=place, moment=value.isoformat()))
        return value.date()
    if isinstance(value, dt.date):
        return value
    if not isinstance(value, str):
        problems.add(place, value, "is not a date", remedy)
        return None
    try:
        return dt.date.fromisoformat(value.strip())
    except ValueError:
        problems.add(place, value, "is not a date as ISO 8601 writes it", remedy)
        return None


def _date_or_year(value: object, place: str, problems: ProblemList) -> dt.date | None:
    """Give a day; of a year alone its middle, which is what maps mean by it."""
    if _is_year(value):
        text = str(value).strip()
        first, last = problems.limits.map_years
        if first <= int(text) <= last:
            return dt.date(int(text), 7, 1)
        problems.add(place, value, "is not a year", "Write it like 2019, or as a date.")
        return None
    return _date(value, place, problems)


def _is_year(value: object) -> bool:
    return not isinstance(value, bool) and str(value).strip().isdecimal()


def _sheet(value: object, grid: object, problems: ProblemList) -> tuple[Position, Position] | None:
    """Give the corners of the map sheet."""
    if value is None:
        return None
    if not isinstance(value, list | tuple) or len(value) != 2:
        remedy = 'Write south-west and north-east: sheet = ["16S GF 40 50", "16S GF 54 64"].'
        problems.add("course, sheet", None, "is not two positions", remedy)
        return None
    code = None if grid in (None, "auto") else str(grid)
    corners = [problems.position(corner, "course, sheet", code) for corner in value]
    if corners[0] is None or corners[1] is None:
        return None
    return corners[0].position, corners[1].position


def _grid(value: object, place: str, problems: ProblemList) -> str | None:
    """Give "auto" or the code of a grid that exists."""
    text = f"EPSG:{value}" if str(value).strip().isdecimal() else value
    if not isinstance(text, str) or isinstance(value, bool):
        problems.grid_refused = True
        remedy = 'Write "auto" or a code such as "EPSG:27700".'
        problems.add(place, value, "is not a grid", remedy)
        return None
    if text.strip().lower() == "auto":
        return "auto"
    try:
        return course_grid(text.strip()).code
    except ValueError as error:
        rule, _, remedy = str(error).partition("; ")
        problems.grid_refused = True
        remedy = (remedy[:1].upper() + remedy[1:]) or 'Write a code such as "EPSG:27700"'
        problems.add(place, None, rule, f'{remedy}, or "auto" for the UTM zone.')
        return None
