"""The short debrief for the terminal: the verdict, then one line a leg."""

from __future__ import annotations

from audit.debriefing.records import Debrief, LegDebrief
from audit.reports import wording
from audit.reports.printable import printable
from audit.reports.simulated import simulated_notes
from audit.reports.verdict import verdict


def render_terminal(debrief: Debrief) -> str:
    """Give plain text that ends with a line feed; no colour, no control characters."""
    radius_m = debrief.card.arrival_radius_m
    rows = [_row(leg, radius_m) for leg in debrief.legs]
    lines = [debrief.card.name, *(f"SIMULATED: {note}" for note in simulated_notes(debrief))]
    lines += [*verdict(debrief), "", *_aligned(rows)]
    lines += [f"plan: {finding.message}" for finding in debrief.card.findings]
    return "\n".join(printable(line) for line in lines) + "\n"


def _row(leg: LegDebrief, radius_m: float) -> tuple[str, str, str]:
    """Give name, status and the rest of a leg's line, the worst error first."""
    status = wording.STATUS_WORDS[leg.audit.status]
    parts = wording.errors_worst_first(leg.audit)
    if leg.audit.measures is not None:
        parts.append(wording.arrival(leg.audit.measures, radius_m))
    said = wording.cause(leg)
    if said:
        parts.append(said)
    return leg.name, status, "  ".join(parts)


def _aligned(rows: list[tuple[str, str, str]]) -> list[str]:
    name_width = max((len(row[0]) for row in rows), default=0)
    status_width = max((len(row[1]) for row in rows), default=0)
    return [
        f"{name:<{name_width}}  {status:<{status_width}}  {rest}".rstrip()
        for name, status, rest in rows
    ]
