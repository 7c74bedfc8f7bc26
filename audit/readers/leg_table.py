"""A leg from its table, as TOML and GeoJSON hold it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from audit.positions import Position
from audit.readers.course_settings import checked_name
from audit.readers.leg_values import leg_values
from audit.readers.plan_draft import DraftLeg
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import AZIMUTH_KEYS, LEG_NUMBER_KEYS, checked_number
from audit.words import sentence

_LEG_KEYS = ("name", "from", "to", *AZIMUTH_KEYS, "distance_m", "paces", "via", "note")
"""Those that somebody writes by hand, one of which a misspelt key may have meant."""


def draft_leg(
    table: Mapping[str, Any], number: int, grid: str | None, problems: ProblemList
) -> DraftLeg:
    """Give a leg from its table, with every problem of it put down."""
    place, before = sentence("figure-leg", name=str(number)), len(problems.problems)
    names: dict[str, str | None] = {"name": None, "from": None, "to": None}
    numbers: dict[str, float] = {}
    note = ""
    for key, value in table.items():
        where = f"{place}, {key}"
        if key in names:
            names[key] = checked_name(value, where, problems)
        elif key in LEG_NUMBER_KEYS:
            checked = checked_number(value, key, where, problems)
            if checked is not None:
                numbers[key] = checked
        elif key == "note":
            if isinstance(value, str):
                note = problems.writable(value, where).strip()
            else:
                problems.add(where, value, "is not text", "Write it in quotation marks.")
        elif key != "via":
            problems.unknown(place, "key of a leg", key, _LEG_KEYS)
    values = leg_values(numbers, place, problems)
    via = _via(table.get("via", []), place, grid, problems)
    return DraftLeg(
        place=place,
        name=names["name"],
        start=names["from"],
        end=names["to"],
        values=values,
        via=via,
        note=note,
        spoilt=len(problems.problems) > before,
    )


def _via(
    value: object, place: str, grid: str | None, problems: ProblemList
) -> tuple[Position, ...]:
    if not isinstance(value, list):
        remedy = 'Write positions in brackets: via = ["16S GF 4210 4290"].'
        problems.add(f"{place}, via", value, "is not a list", remedy)
        return ()
    readings = [
        problems.position(text, f"{place}, via {number}", grid)
        for number, text in enumerate(value, start=1)
    ]
    return tuple(reading.position for reading in readings if reading is not None)
