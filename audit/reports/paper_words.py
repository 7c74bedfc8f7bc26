"""Every word of the debrief on paper, as the typesetter takes them."""

from __future__ import annotations

from typing import Any

from audit.debriefing.finished_debrief import Debrief
from audit.ground_picture import GroundPicture
from audit.reports import digits, leg_facts, page_legs, page_parts
from audit.reports.angle_words import angle_sentences
from audit.reports.cautions import cautions
from audit.reports.figure_map import map_tolerance_m
from audit.reports.figure_target import target_note
from audit.reports.html_report import sign_svg
from audit.reports.map_ground import ground_words
from audit.reports.map_key import map_key
from audit.reports.page_coaching import to_keep, to_work_on
from audit.reports.page_pictures import LegPictures, PagePictures
from audit.reports.page_story import story_sentences
from audit.reports.simulated import simulated_notes
from audit.reports.version import program_version
from audit.reports.walk_verdict import verdict
from audit.words import say, told

_TABLE = {
    "paper-leg": 7, "paper-azimuth-planned": 5, "paper-walked": 5, "paper-error": 4,
    "paper-distance-planned": 5, "paper-distance-walked": 5, "paper-distance-error": 4,
    "page-off-line": 4, "page-miss": 4, "page-found": 5, "page-consistent": 9,
}  # fmt: skip
"""Columns, by the message of their heads, with their shares of the width."""
_SHARE_A_LETTER, _SHARE_BESIDE = 0.6, 0.5
"""Of a head's longest word, and of the room to either side; measured on paper in both languages."""
_WIDEST_MAP, _NARROWEST_MAP, _LESS_A_LEG = 60, 34, 2
"""Share of the width, in hundredths: the more legs, the more room the table takes."""


def paper_words(
    debrief: Debrief, pictures: PagePictures, ground: GroundPicture | None
) -> dict[str, Any]:
    """Give all words, and the names of the pictures they stand beside."""
    return {
        "title": debrief.card.name,
        "words": _headings(),
        "facts": page_parts.heading_facts(debrief),
        "simulated": [told(note) for note in simulated_notes(debrief)],
        "verdict": [*verdict(debrief), *story_sentences(debrief)],
        "map_share": max(_NARROWEST_MAP, _WIDEST_MAP - _LESS_A_LEG * len(debrief.legs)),
        "map_key": _key(debrief),
        "map_note": _map_note(debrief, ground),
        "table": _table(debrief),
        "keep": to_keep(debrief),
        "work": to_work_on(debrief),
        "each_note": say("paper-each-note"),
        "legs": [_leg(debrief, number, one) for number, one in enumerate(pictures.legs)],
        "target": "" if pictures.target is None else "target.svg",
        "walk": "" if pictures.walk is None else "walk.svg",
        "walk_note": say(
            "paper-walk-note",
            noise=page_parts.noise(debrief),
            gaps=len(debrief.clean.gaps),
            reckoned=page_parts.legs_reckoned(debrief),
        ),
        "target_note": target_note(debrief),
        "recording": page_parts.recording_facts(debrief),
        "recording_notes": [told(note) for note in debrief.quality.notes],
        "plan": [
            *(told(finding.message) for finding in debrief.card.findings),
            *(told(note) for note in debrief.card.notes),
        ],
        "angle": list(angle_sentences(debrief.card)),
        "cautions": list(cautions()),
        "made_by": say("page-made-by", version=program_version()),
        "alt": {
            "map": f"{pictures.map.title}. {pictures.map.said}",
            "target": "" if pictures.target is None else pictures.target.said,
            "walk": "" if pictures.walk is None else pictures.walk.said,
        },
    }


_HEADINGS = (
    "short", "map", "legs", "coaching", "keep", "work-on", "each", "consistent", "settles",
    "practise", "doubt", "misses", "recording", "plan", "angle", "cautions",
)  # fmt: skip


def _headings() -> dict[str, str]:
    headings = {name: say(f"page-{name}") for name in _HEADINGS}
    return {
        **headings,
        "simulated": say("paper-simulated"),
        "work": headings["work-on"],
        "over_time": say("page-over-time"),
        "causes": headings["consistent"],
    }


def _map_note(debrief: Debrief, ground: GroundPicture | None) -> str:
    within = digits.stated_metres(map_tolerance_m(debrief))
    return f"{say('paper-map-note', within=within)} {ground_words(ground)}".strip()


def _key(debrief: Debrief) -> list[tuple[str, str]]:
    return [(sign_svg(sign), words) for sign, words in map_key(debrief)]


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
    heads = {name: say(name) for name in _TABLE}
    widths = [max(_TABLE[name], _room_for(head)) for name, head in heads.items()]
    return {"head": list(heads.values()), "widths": widths, "rows": rows}


def _room_for(head: str) -> float:
    """Give the share of the width in which no word of a head runs into its neighbour."""
    return _SHARE_A_LETTER * max(len(word) for word in head.split()) + _SHARE_BESIDE


def _leg(debrief: Debrief, number: int, pictures: LegPictures | None) -> dict[str, Any]:
    leg = debrief.legs[number]
    row = page_legs.leg_row(leg, debrief.card.arrival_radius_m)
    ending = "" if pictures else f", {row.status}"
    words: dict[str, Any] = {
        "title": say("page-leg-title", leg=row.name, ends=row.ends) + ending,
        "facts": [*leg_facts.planned_facts(leg), *leg_facts.walked_facts(leg)],
        "causes": [(one.words, one.probability, one.evidence) for one in page_legs.cause_rows(leg)],
        "settles": page_legs.settles(leg),
        "advice": page_legs.advice(leg),
        "doubt": page_legs.unsure(leg),
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
