"""The short picture of a class for a terminal; walkers in the order of the roster, unranked."""

from __future__ import annotations

from audit.classroom.records import ClassResult, WalkerResult
from audit.reports.printable import printable

_MOST_NAME = 28
_SIGNS = {"found": "+", "missed": "x", "doubtful": "?", "no-evidence": "."}


def render_class_terminal(result: ClassResult) -> str:
    """Give one line a walker, then what was found and what is asked."""
    rows = [_row(walker) for walker in result.walkers]
    widths = [max(len(row[place]) for row in rows) for place in range(3)] if rows else []
    lines = [
        f"{result.name}: {len(result.walkers)} walkers, {len(result.lanes)} "
        + ("lane" if len(result.lanes) == 1 else "lanes"),
        f"Standard: {result.standard.name}. Fingerprint: {result.fingerprint}.",
        "A proposal: a human signs. + found, x missed, ? doubtful, . no evidence; (left out).",
        "",
    ]
    for row in rows:
        padded = [cell.ljust(width) for cell, width in zip(row, widths, strict=False)]
        lines.append("  ".join([*padded, *row[3:]]).rstrip())
    if result.findings:
        lines.append("")
    lines += [f"{'asked' if one.question else 'found'}: {one.message}" for one in result.findings]
    return "".join(printable(line) + "\n" for line in lines)


def _row(walker: WalkerResult) -> list[str]:
    name = walker.name if walker.attempt == 1 else f"{walker.name} ({walker.attempt})"
    if len(name) > _MOST_NAME:
        name = name[: _MOST_NAME - 3] + "..."
    points = "".join(
        f"({_SIGNS[leg.point.grade]})" if leg.point.left_out else _SIGNS[leg.point.grade]
        for leg in walker.legs
    )
    return [name, walker.lane, points, walker.verdict.grade]
