"""The short picture of a class for a terminal; walkers in the order of the roster, unranked."""

from __future__ import annotations

from audit.classroom.class_result import ClassResult
from audit.classroom.walker_result import WalkerResult
from audit.reports import class_words
from audit.reports.class_verdict import plan_angles
from audit.reports.printable import printable
from audit.words import say

_MOST_NAME = 28
_SIGNS = {"found": "+", "missed": "x", "doubtful": "?", "no-evidence": "."}


def render_class_terminal(result: ClassResult) -> str:
    """Give one line a walker, then what was found and what is asked."""
    rows = [_row(walker) for walker in result.walkers]
    widths = [max(len(row[place]) for row in rows) for place in range(3)] if rows else []
    lines = [
        say(
            "class-terminal-title",
            name=result.name,
            walkers=len(result.walkers),
            lanes=len(result.lanes),
        ),
        say(
            "class-terminal-standard",
            standard=result.standard.name,
            fingerprint=result.fingerprint,
        ),
        say("class-terminal-key"),
        "",
    ]
    lines += [*angles, ""] if (angles := plan_angles(result)) else []
    for row in rows:
        padded = [cell.ljust(width) for cell, width in zip(row, widths, strict=False)]
        lines.append("  ".join([*padded, *row[3:]]).rstrip())
    if result.findings:
        lines.append("")
    lines += [
        say(f"class-terminal-{'asked' if one.question else 'found'}", message=one.message)
        for one in result.findings
    ]
    lines += ["", say("caution-short")]
    return "".join(printable(line) + "\n" for line in lines)


def _row(walker: WalkerResult) -> list[str]:
    name = walker.name if walker.attempt == 1 else f"{walker.name} ({walker.attempt})"
    if len(name) > _MOST_NAME:
        name = name[: _MOST_NAME - 3] + "..."
    points = "".join(
        f"({_SIGNS[leg.point.grade]})" if leg.point.left_out else _SIGNS[leg.point.grade]
        for leg in walker.legs
    )
    result = class_words.result_words(walker.verdict)
    own = class_words.on_own_legs(walker)
    return [name, walker.lane, points, f"{result} ({own})" if own else result]
