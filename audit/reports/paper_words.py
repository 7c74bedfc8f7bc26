"""Every word of the debrief on paper, as the typesetter takes them."""

from __future__ import annotations

from typing import Any

from audit.debriefing.records import Debrief
from audit.ground_picture import GroundPicture
from audit.reports import digits, leg_facts, page_legs, page_parts
from audit.reports.angle_words import angle_sentences
from audit.reports.cautions import CAUTIONS
from audit.reports.figure_map import map_tolerance_m
from audit.reports.html_report import sign_svg
from audit.reports.map_ground import ground_words
from audit.reports.page_coaching import to_keep, to_work_on
from audit.reports.page_pictures import LegPictures, PagePictures
from audit.reports.page_story import story_sentences
from audit.reports.simulated import simulated_notes
from audit.reports.verdict import verdict
from audit.reports.version import program_version

_TABLE = {
    "Leg": 3, "Azimuth planned": 2, "walked": 3, "error": 2, "Distance planned": 2,
    "walked ": 2, "error ": 2, "Off line at claim": 2, "Miss": 2, "Found": 2,
    "Consistent with": 4,
}  # fmt: skip
"""Columns with their shares of the width."""
_WIDEST_MAP, _NARROWEST_MAP, _LESS_A_LEG = 60, 34, 2
"""Share of the width, in hundredths: the more legs, the more room the table takes."""


def paper_words(
    debrief: Debrief, pictures: PagePictures, ground: GroundPicture | None
) -> dict[str, Any]:
    """Give all words, and the names of the pictures they stand beside."""
    radius_m = debrief.card.arrival_radius_m
    return {
        "title": debrief.card.name,
        "words": _HEADINGS,
        "facts": page_parts.heading_facts(debrief),
        "simulated": list(simulated_notes(debrief)),
        "verdict": [*verdict(debrief), *story_sentences(debrief)],
        "map_share": max(_NARROWEST_MAP, _WIDEST_MAP - _LESS_A_LEG * len(debrief.legs)),
        "map_key": _key(debrief),
        "map_note": _map_note(debrief, ground),
        "table": _table(debrief),
        "keep": to_keep(debrief),
        "work": to_work_on(debrief),
        "each_note": _EACH_NOTE,
        "legs": [_leg(debrief, number, one) for number, one in enumerate(pictures.legs)],
        "target": "" if pictures.target is None else "target.svg",
        "target_note": _TARGET_NOTE.format(radius=digits.whole(radius_m)),
        "recording": page_parts.recording_facts(debrief),
        "recording_notes": list(debrief.quality.notes),
        "plan": [
            *(finding.message for finding in debrief.card.findings),
            *debrief.card.notes,
        ],
        "angle": list(angle_sentences(debrief.card)),
        "cautions": list(CAUTIONS),
        "made_by": f"Made by leg-audit {program_version()}.",
        "alt": {
            "map": f"{pictures.map.title}. {pictures.map.said}",
            "target": "" if pictures.target is None else pictures.target.said,
        },
    }


_HEADINGS = {
    "simulated": "Simulated walk: nobody walked this.",
    "short": "In short",
    "map": "Plan and walk",
    "legs": "The legs",
    "coaching": "To keep and to work on",
    "keep": "Keep",
    "work": "Work on",
    "each": "Leg by leg",
    "causes": "Consistent with",
    "practise": "To practise:",
    "doubt": "Not sure.",
    "misses": "Where the misses came from",
    "recording": "The recording",
    "plan": "The plan",
    "angle": "The grid-magnetic angle",
    "cautions": "Cautions",
}
_EACH_NOTE = (
    "Strips: offset from the planned line with the receiver’s noise shaded, height, speed. Arrows: "
    "planned (dashed) and walked azimuth, its 95 % interval shaded. Beside them the parts of the "
    "miss, head to tail from the point (cross) to the claim (diamond)."
)
_TARGET_NOTE = (
    "Every claim (diamond, with the number of its leg) as seen from its point by the walker: ahead "
    "is up. Bars: one standard error either way. Black circle: the arrival radius, {radius} m."
)


def _map_note(debrief: Debrief, ground: GroundPicture | None) -> str:
    within = digits.whole(map_tolerance_m(debrief))
    return (
        f"Grid north is up. Drawn lines keep within {within} m of the recording. "
        f"{ground_words(ground)}"
    ).strip()


def _key(debrief: Debrief) -> list[tuple[str, str]]:
    return [(sign_svg(sign), words) for sign, words in page_parts.map_key(debrief)]


def _table(debrief: Debrief) -> dict[str, Any]:
    rows = []
    for leg in debrief.legs:
        row = page_legs.leg_row(leg, debrief.card.arrival_radius_m)
        name = f"{row.name}  {row.ends}"
        found = row.found or row.status
        rows.append(
            [
                name, row.azimuth_planned, row.azimuth_walked, row.azimuth_error,
                row.distance_planned, row.distance_walked, row.distance_error, row.off_line,
                row.miss, found, row.cause,
            ]
        )  # fmt: skip
    return {"head": [name.strip() for name in _TABLE], "widths": list(_TABLE.values()),
            "rows": rows}  # fmt: skip


def _leg(debrief: Debrief, number: int, pictures: LegPictures | None) -> dict[str, Any]:
    leg = debrief.legs[number]
    row = page_legs.leg_row(leg, debrief.card.arrival_radius_m)
    ending = "" if pictures else f", {row.status}"
    words: dict[str, Any] = {
        "title": f"Leg {row.name}: {row.ends}{ending}",
        "facts": [*leg_facts.planned_facts(leg), *leg_facts.walked_facts(leg)],
        "causes": [(one.words, one.probability, one.evidence) for one in page_legs.cause_rows(leg)],
        "advice": page_legs.advice(leg),
        "doubt": leg.doubt or "",
        "pictures": pictures is not None,
    }
    if pictures is not None:
        for name in ("strip", "dial", "ledger"):
            picture = getattr(pictures, name)
            words |= {
                name: f"{name}{number}.svg",
                f"{name}_alt": f"{picture.title}. {picture.said}",
            }
    return words
