"""The short debrief for the terminal: the verdict, one line a leg, the cautions in one."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.reports import wording
from audit.reports.page_coaching import coaching_lines, step_lines
from audit.reports.page_story import plan_angle
from audit.reports.printable import printable
from audit.reports.shown_paces import counting
from audit.reports.simulated import simulated_notes
from audit.reports.walk_verdict import verdict
from audit.words import Words, say, spoken


def render_terminal(debrief: Debrief, words: Words | None = None) -> str:
    """Give plain text that ends with a line feed; no colour, no control characters."""
    with spoken(words), counting(debrief.card.pace):
        return _text(debrief)


def _text(debrief: Debrief) -> str:
    simulated = [say("terminal-simulated", note=note) for note in simulated_notes(debrief)]
    lines = [debrief.card.name, *simulated]
    lines += [*verdict(debrief), *plan_angle(debrief.card), "", *_aligned(debrief)]
    lines += [say("terminal-plan", finding=finding.message) for finding in debrief.card.findings]
    lines += ["", *step_lines(debrief), *coaching_lines(debrief)]
    lines += ["", say("caution-short")]
    return "\n".join(printable(line) for line in lines) + "\n"


def _row(leg: LegDebrief, radius_m: float) -> tuple[list[str], list[str]]:
    """Give the errors of a leg, the worst first, and what stands after them."""
    ending = []
    if leg.audit.measures is not None:
        ending.append(wording.arrival(leg.audit.measures, radius_m, leg.settings.reports))
    said = wording.cause_told(leg)
    if said:
        ending.append(said)
    return wording.errors_worst_first(leg.audit, leg.settings.quality), ending


def _aligned(debrief: Debrief) -> list[str]:
    """Give one line a leg, its words in columns that stand below each other."""
    rows = [_row(leg, debrief.card.arrival_radius_m) for leg in debrief.legs]
    most_errors = max((len(errors) for errors, _ in rows), default=0)
    cells = [
        [leg.name, wording.status_words(wording.status_told(leg.audit)),
         *errors, *[""] * (most_errors - len(errors)), *ending]
        for leg, (errors, ending) in zip(debrief.legs, rows, strict=True)
    ]  # fmt: skip
    columns = max((len(row) for row in cells), default=0)
    widths = [max(len(row[i]) for row in cells if i < len(row)) for i in range(columns)]
    return [
        "  ".join(f"{cell:<{width}}" for cell, width in zip(row, widths, strict=False)).rstrip()
        for row in cells
    ]
