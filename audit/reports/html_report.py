"""debrief.html: one page that needs nothing else, on screen, phone and paper."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from audit.debriefing.records import Debrief
from audit.reports import digits, leg_facts, page_legs, page_parts
from audit.reports.angle_words import angle_sentences
from audit.reports.cautions import CAUTIONS
from audit.reports.figure_map import map_specification, map_tolerance_m
from audit.reports.figure_strip import (
    shows_own_line,
    strip_specification,
    strip_tolerance_m,
)
from audit.reports.picture import svg_picture
from audit.reports.simulated import simulated_notes
from audit.reports.verdict import verdict
from audit.reports.version import program_version

if TYPE_CHECKING:
    import jinja2

_FIGURE_AND_UNIT = re.compile(r"(?<=\d) (?=(?:m|s|h|min|%|E|W|N|S)\b|%)")


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSection:
    """What the page says and draws of one leg; ``picture`` is "" for a leg not walked."""

    row: page_legs.LegRow
    planned: list[tuple[str, str]]
    walked: list[tuple[str, str]]
    picture: str
    own_line: bool
    within_m: float
    causes: list[page_legs.CauseRow]
    causes_left: int
    advice: str


def render_html(debrief: Debrief) -> str:
    """Give the whole page: no script, and nothing fetched from anywhere."""
    return (
        _environment()
        .get_template("debrief.html.j2")
        .render(
            course=debrief.card.name,
            facts=page_parts.heading_facts(debrief),
            simulated=simulated_notes(debrief),
            verdict=verdict(debrief),
            map_picture=_map_picture(debrief),
            map_key=page_parts.map_key(debrief),
            map_within_m=digits.whole(map_tolerance_m(debrief)),
            legs=[_section(debrief, number) for number in range(len(debrief.legs))],
            noise=f"{debrief.quality.noise_m:.1f} m",
            ledger_parts=page_legs.LEDGER_PARTS,
            ledger=page_legs.ledger_rows(debrief),
            recording=page_parts.recording_facts(debrief),
            recording_notes=debrief.quality.notes,
            plan_findings=debrief.card.findings,
            plan_notes=debrief.card.notes,
            angle=angle_sentences(debrief.card),
            cautions=CAUTIONS,
            version=program_version(),
        )
    )


def _map_picture(debrief: Debrief) -> str:
    said = " ".join(verdict(debrief))
    return svg_picture(
        map_specification(debrief), "map", f"Map of {debrief.card.name}, plan and walk", said
    )


def _section(debrief: Debrief, number: int) -> LegSection:
    leg = debrief.legs[number]
    walked = leg_facts.walked_facts(leg)
    drawing = strip_specification(debrief, number)
    picture = ""
    if drawing is not None:
        said = "; ".join(f"{name}: {words}" for name, words in walked)
        title = f"Leg {leg.name}: offset from the planned line along the leg"
        picture = svg_picture(drawing, f"strip{number}", title, said)
    causes = page_legs.cause_rows(leg)
    return LegSection(
        row=page_legs.leg_row(leg, debrief.card.arrival_radius_m),
        planned=leg_facts.planned_facts(leg),
        walked=walked,
        picture=picture,
        own_line=shows_own_line(debrief, number),
        within_m=strip_tolerance_m(debrief, number),
        causes=causes,
        causes_left=len(leg.causes) - len(causes),
        advice=page_legs.advice(leg),
    )


@lru_cache(maxsize=1)
def _environment() -> jinja2.Environment:
    import jinja2  # noqa: PLC0415

    environment = jinja2.Environment(
        loader=jinja2.PackageLoader("audit.reports"),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["tight"] = _tight
    return environment


def _tight(words: str) -> str:
    """Keep a figure and its unit on one line."""
    return _FIGURE_AND_UNIT.sub("\N{NO-BREAK SPACE}", words)
