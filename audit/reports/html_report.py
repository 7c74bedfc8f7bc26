"""debrief.html: one page that needs nothing else, on screen, phone and paper."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.ground_picture import GroundPicture
from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports import digits, leg_facts, page_legs, page_parts, wording
from audit.reports.angle_words import angle_sentences
from audit.reports.cautions import cautions
from audit.reports.detail_facts import detail_facts
from audit.reports.figure_map import map_tolerance_m
from audit.reports.figure_strip import shows_own_line, strip_tolerance_m
from audit.reports.figure_target import target_note
from audit.reports.forecast_words import forecast_facts
from audit.reports.map_ground import ground_words
from audit.reports.map_key import map_key
from audit.reports.map_margin import NARROWEST_DEG
from audit.reports.page_coaching import to_keep, to_work_on
from audit.reports.page_pictures import LegPictures, PagePictures, page_pictures
from audit.reports.page_script import data_blocks, page_script
from audit.reports.page_story import story_sentences
from audit.reports.shown_paces import counting
from audit.reports.simulated import simulated_notes
from audit.reports.version import program_version
from audit.reports.walk_moments import moment_step_s
from audit.reports.walk_verdict import verdict
from audit.words import Words, in_force, say, spoken, told
from audit.words.figures import Turn

if TYPE_CHECKING:
    import jinja2

_FEWEST_DRAWN = 4
_FIGURE_AND_UNIT = re.compile(r"(?<=\d) (?=(?:m|yd|mil|Strich|gon|s|h|min|%|E|W|N|S|O)\b|%)")


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSection:
    """What the page says and draws of one leg; ``pictures`` is None for a leg not walked."""

    row: page_legs.LegRow
    planned: list[tuple[str, str]]
    walked: list[tuple[str, str]]
    pictures: LegPictures | None
    own_line: bool
    silent: bool
    reckoned: bool
    within: str
    causes: list[page_legs.CauseRow]
    causes_left: int
    settles: str
    advice: str
    doubt: str


def render_html(
    debrief: Debrief, ground: GroundPicture | None = None, words: Words | None = None
) -> str:
    """Give the whole page: it fetches nothing, and is whole on paper and without scripts.

    ``ground`` lies under the map; ``words`` choose language, terms and units.
    """
    with spoken(words), counting(debrief.card.pace):
        return _page(debrief, ground)


def _page(debrief: Debrief, ground: GroundPicture | None) -> str:
    moved = speed_and_direction(debrief.clean, debrief.settings.measuring)
    pictures = page_pictures(debrief, moved, ground, _most_drawn(debrief))
    context = {**_walk(debrief, pictures), **_legs(debrief, pictures), **_grounds(debrief)}
    return (
        page_templates()
        .get_template("debrief.html.j2")
        .render(
            **context,
            ground=ground_words(ground),
            course=debrief.card.name,
            language=in_force().language,
            script=page_script(),
            data_blocks=data_blocks(debrief, moved, pictures.moving()),
            version=program_version(),
        )
    )


def _walk(debrief: Debrief, pictures: PagePictures) -> dict[str, Any]:
    """Give what is said and drawn of the walk as a whole."""
    return {
        "facts": page_parts.heading_facts(debrief),
        "simulated": simulated_notes(debrief),
        "verdict": verdict(debrief),
        "story": story_sentences(debrief),
        "pictures": pictures,
        "map_key": map_key(debrief),
        "gaps": len(debrief.clean.gaps),
        "reckoned": page_parts.legs_reckoned(debrief),
        "map_within": digits.stated_metres(map_tolerance_m(debrief)),
        "norths_apart": Turn(degrees=NARROWEST_DEG, degrees_decimals=0),
        "moment_step": wording.duration(max(1.0, moment_step_s(debrief))),
        "window_s": digits.whole(debrief.settings.measuring.passage_window_s),
    }


def _legs(debrief: Debrief, pictures: PagePictures) -> dict[str, Any]:
    """Give what is said and drawn of the legs, and what to make of it."""
    sections = [_section(debrief, number, one) for number, one in enumerate(pictures.legs)]
    return {
        "legs": sections,
        "undrawn": _undrawn(sections),
        "noise": page_parts.noise(debrief),
        "target_note": target_note(debrief),
        "ledger_parts": page_legs.LEDGER_PARTS,
        "length_unit": in_force().units.length,
        "ledger": page_legs.ledger_rows(debrief),
        "to_keep": to_keep(debrief),
        "to_work_on": to_work_on(debrief),
    }


def _most_drawn(debrief: Debrief) -> int:
    """Give how many legs a page of so many has room to draw."""
    settings = debrief.settings.reports
    over = max(0, len(debrief.legs) - settings.long_course_legs)
    return max(_FEWEST_DRAWN, settings.pictured_legs - over // settings.legs_a_picture_less)


def _undrawn(sections: list[LegSection]) -> str:
    """Say that some walked legs are told in words only; "" where all are drawn."""
    walked = [one for one in sections if one.walked]
    drawn = sum(one.pictures is not None for one in walked)
    return "" if drawn == len(walked) else say("page-undrawn", drawn=drawn, walked=len(walked))


def _grounds(debrief: Debrief) -> dict[str, Any]:
    """Give what the figures rest on."""
    return {
        "recording": page_parts.recording_facts(debrief),
        "recording_notes": debrief.quality.notes,
        "plan_findings": debrief.card.findings,
        "plan_notes": debrief.card.notes,
        "angle": angle_sentences(debrief.card),
        "cautions": cautions(),
    }


def _section(debrief: Debrief, number: int, pictures: LegPictures | None) -> LegSection:
    leg = debrief.legs[number]
    causes = page_legs.cause_rows(leg)
    return LegSection(
        row=page_legs.leg_row(leg, debrief.card.arrival_radius_m),
        planned=leg_facts.planned_facts(leg),
        walked=_walked(leg, drawn=pictures is not None),
        pictures=pictures,
        own_line=shows_own_line(debrief, number),
        silent=leg.audit.measures is not None and leg.audit.measures.gap_share > 0.0,
        reckoned=leg.audit.measures is not None and leg.audit.measures.ends_reckoned[1],
        within=digits.stated_metres(strip_tolerance_m(debrief, number)),
        causes=causes,
        causes_left=len(leg.causes) - len(causes),
        settles=page_legs.settles(leg),
        advice=page_legs.advice(leg),
        doubt=page_legs.unsure(leg),
    )


def _walked(leg: LegDebrief, *, drawn: bool) -> list[tuple[str, str]]:
    """Give the facts of a walked leg; of one that is not drawn only the main ones."""
    facts = leg_facts.walked_facts(leg)
    if drawn or not facts:
        return [*facts, *forecast_facts(leg), *detail_facts(leg)]
    main = {say(f"fact-{name}") for name in ("azimuth", "distance", "miss")}
    return [one for one in facts if one[0] in main]


def sign_svg(name: str) -> str:
    """Give the sample of a sign of the map as a drawing of its own."""
    signs = page_templates().get_template("signs.html.j2").module
    drawn = str(signs.sign(name)).strip()  # type: ignore[attr-defined]
    return drawn.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" fill="none" ', 1)


@lru_cache(maxsize=1)
def page_templates() -> jinja2.Environment:
    """Give the templates of all pages; what stands in a name is never taken for a tag."""
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
    environment.globals |= {"say": say, "told": told}
    return environment


def _tight(words: str) -> str:
    """Keep a figure and its unit on one line."""
    return _FIGURE_AND_UNIT.sub("\N{NO-BREAK SPACE}", words)
