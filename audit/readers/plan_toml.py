"""A plan in TOML, the full form: course, points, legs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from audit.plan import Plan
from audit.readers.course_settings import (
    SETTING_KEYS,
    CourseOptions,
    checked_name,
    settle_settings,
)
from audit.readers.half_square import with_half_square
from audit.readers.leg_table import draft_leg
from audit.readers.plan_draft import check_count, legs_in_order
from audit.readers.plan_finish import finished_plan
from audit.readers.point_book import PointBook
from audit.readers.problem_list import ProblemList
from audit.readers.toml_text import toml_document
from audit.words import sentence

_TABLES = ("course", "point", "leg")
_POINT_KEYS = ("name", "position", "half_square_m")


def read_plan_toml(text: str, options: CourseOptions, problems: ProblemList) -> Plan:
    """Give the plan of a TOML text.

    Raises
    ------
    InputRefusedError
        With every problem of the text.
    """
    document = toml_document(text, problems)
    for key in document:
        if key not in _TABLES:
            problems.unknown("", "table of a plan", key, _TABLES)
    settings = settle_settings(_course(document, problems), options, problems)
    book = PointBook(problems, options.get("points"))
    names = _put_points(_tables(document, "point", problems), settings.grid, book, problems)
    if "leg" in document and settings.order == "free" and not settings.frees_legs:
        problems.add(
            "leg",
            None,
            'has no place in a course with order = "free": its legs are found in the walk',
            "Leave the leg tables out; give the points, the start first.",
        )
        drafts = []
    elif "leg" in document:
        drafts = [
            draft_leg(table, number, settings.grid, problems)
            for number, table in _tables(document, "leg", problems)
        ]
    else:
        drafts = legs_in_order(names)
        if settings.order == "planned":
            problems.note(sentence("plan-no-legs"))
    plan = finished_plan(settings, book, drafts, problems)
    # Letter for letter no name comes twice: what is left differs in capitals only.
    return replace(plan, namesakes=tuple(book.namesakes))


def _course(document: Mapping[str, Any], problems: ProblemList) -> dict[str, object]:
    course = document.get("course", {})
    if not isinstance(course, dict):
        problems.add("course", course, "is not a table", "Write [course] on a line of its own.")
        return {}
    stated = {}
    for key, value in course.items():
        if key not in SETTING_KEYS:
            problems.unknown("course", "setting of a course", key, SETTING_KEYS)
        else:
            stated[key] = value
    return stated


def _tables(
    document: Mapping[str, Any], kind: str, problems: ProblemList
) -> list[tuple[int, dict[str, Any]]]:
    """Give the tables of one kind with their numbers."""
    tables = document.get(kind, [])
    remedy = f"Write [[{kind}]] above each {kind}."
    if not isinstance(tables, list):
        problems.add(kind, None, "is not a list of tables", remedy)
        return []
    check_count(len(tables), problems)
    good = []
    for number, table in enumerate(tables, start=1):
        if isinstance(table, dict):
            good.append((number, table))
        else:
            problems.add(f"{kind} {number}", table, "is not a table", remedy)
    return good


def _put_points(
    tables: list[tuple[int, dict[str, Any]]],
    grid: str | None,
    book: PointBook,
    problems: ProblemList,
) -> list[str]:
    """Enter the points in the book; give the names under which they stand there, in order."""
    put: list[str] = []
    names: dict[str, int] = {}
    for number, table in tables:
        name = _point_name(table, f"point {number}", problems)
        place = f"point {number} ({name})" if name else f"point {number}"
        reading = None
        if "position" in table:
            reading = problems.position(table["position"], f"{place}, position", grid)
            reading = with_half_square(table, reading, place, problems)
        elif not table.keys() - set(_POINT_KEYS):  # a misspelt key is one problem, not two
            remedy = 'Give it one: position = "16S GF 4182 4279".'
            problems.add(place, None, "has no position", remedy)
        if name is None:
            continue
        if name in names:
            rule = f"is the name of point {names[name]} too"
            problems.add(f"{place}, name", name, rule, "Give each point its own name.")
        elif reading is not None:
            put.append(book.put(name, reading))
        else:
            book.unread.add(name)
        names.setdefault(name, number)
    return put


def _point_name(table: Mapping[str, Any], place: str, problems: ProblemList) -> str | None:
    for key in table:
        if key not in _POINT_KEYS:
            problems.unknown(place, "key of a point", key, _POINT_KEYS)
    if "name" not in table and table.keys() - set(_POINT_KEYS):
        return None
    if "name" not in table:
        problems.add(place, None, "has no name", 'Give it one: name = "Start".')
        return None
    return checked_name(table["name"], f"{place}, name", problems)
