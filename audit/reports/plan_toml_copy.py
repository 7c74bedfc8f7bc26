"""A plan as TOML, the form that carries all of it."""

from __future__ import annotations

import datetime as dt
import json

from audit.geodesy.grids import course_grid
from audit.plan import Plan
from audit.reports.plan_copy import PlanCopy, number, reference
from audit.reports.plan_tables import Table, course_table, leg_tables, lost_of_legs


def copy_as_toml(plan: Plan) -> PlanCopy:
    """Give the plan as TOML."""
    parts = [
        _written("[course]", course_table(plan)),
        *(_written("[[point]]", table) for table in _point_tables(plan)),
        *(_written("[[leg]]", table) for table in leg_tables(plan)),
    ]
    return PlanCopy(text="\n\n".join(parts) + "\n", lost=tuple(lost_of_legs(plan)), options={})


def _point_tables(plan: Plan) -> list[Table]:
    grid = course_grid(plan.grid)
    tables: list[Table] = []
    for point in plan.points:
        written, says = reference(point.position, grid)
        table: Table = {"name": point.name, "position": written}
        if not says:
            table["half_square_m"] = point.position.half_square_m
        tables.append(table)
    return tables


def _written(head: str, table: Table) -> str:
    return "\n".join([head, *(f"{key} = {_value(value)}" for key, value in table.items())])


def _value(value: str | float | dt.date | list[str]) -> str:
    if isinstance(value, dt.date):
        return value.isoformat()
    if isinstance(value, list):
        return f"[{', '.join(_text(one) for one in value)}]"
    return _text(value) if isinstance(value, str) else number(value)


def _text(words: str) -> str:
    """Write a basic string of TOML; JSON's strings are such, but for the sign DEL."""
    return json.dumps(words, ensure_ascii=False).replace("\x7f", "\\u007f")
