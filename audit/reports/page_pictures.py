"""All pictures of the page, each with its words for people who have it read to them."""

from __future__ import annotations

from dataclasses import dataclass

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.ground_picture import GroundPicture
from audit.measurement.speed_and_direction import SpeedAndDirection
from audit.reports import leg_facts, page_legs, wording
from audit.reports.figure_dial import dial_specification
from audit.reports.figure_ledger import ledger_specification
from audit.reports.figure_map import map_specification
from audit.reports.figure_strip import strip_specification
from audit.reports.figure_target import target_specification
from audit.reports.figure_walk import walk_specification
from audit.reports.picture import Picture, draw
from audit.reports.walk_verdict import verdict
from audit.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class LegPictures:
    """Of one leg that was walked."""

    strip: Picture
    dial: Picture
    ledger: Picture


@dataclass(frozen=True, slots=True, kw_only=True)
class PagePictures:
    """``walk`` is None without times, ``target`` where no leg was walked."""

    map: Picture
    walk: Picture | None
    target: Picture | None
    legs: tuple[LegPictures | None, ...]

    def moving(self) -> list[Picture]:
        """Give those that the cursor moves in, in the order of the page."""
        whole = [self.map, self.walk, *(leg.strip for leg in self.legs if leg)]
        return [one for one in whole if one is not None]


def page_pictures(
    debrief: Debrief,
    moved: SpeedAndDirection,
    ground: GroundPicture | None = None,
    most_legs: int | None = None,
) -> PagePictures:
    """Draw them all; ``ground`` lies under the map.

    Of the legs no more than ``most_legs`` are drawn, those that missed by most.
    """
    drawn = _farthest_off(debrief, most_legs)
    title = say("picture-map-title", course=debrief.card.name)
    return PagePictures(
        map=draw(map_specification(debrief, ground), "map", title, " ".join(verdict(debrief))),
        walk=_walk(debrief, moved),
        target=_target(debrief),
        legs=tuple(
            _of_leg(debrief, number, moved) if number in drawn else None
            for number in range(len(debrief.legs))
        ),
    )


def _farthest_off(debrief: Debrief, most: int | None) -> set[int]:
    """Give the numbers of the walked legs, or of so many of them that missed by most."""
    missed = {
        number: measures.miss_m
        for number, leg in enumerate(debrief.legs)
        if (measures := leg.audit.measures) is not None
    }
    return set(sorted(missed, key=lambda number: -missed[number])[:most])


def _walk(debrief: Debrief, moved: SpeedAndDirection) -> Picture | None:
    walk = walk_specification(debrief, moved)
    return (
        None if walk is None else draw(walk, "walk", say("picture-walk-title"), _walk_said(debrief))
    )


def _target(debrief: Debrief) -> Picture | None:
    target, title = target_specification(debrief), say("picture-target-title")
    return None if target is None else draw(target, "target", title, _target_said(debrief))


def _of_leg(debrief: Debrief, number: int, moved: SpeedAndDirection) -> LegPictures | None:
    leg = debrief.legs[number]
    strip = strip_specification(debrief, number, moved)
    dial, ledger = dial_specification(leg), ledger_specification(leg)
    if strip is None or dial is None or ledger is None:
        return None
    said = _listed(leg_facts.walked_facts(leg))
    over = say("picture-strip-title", leg=leg.name)
    turned = say("picture-dial-title", leg=leg.name)
    came = say("picture-ledger-title", leg=leg.name)
    return LegPictures(
        strip=draw(strip, f"strip{number}", over, said),
        dial=draw(dial, f"dial{number}", turned, _dial_said(leg)),
        ledger=draw(ledger, f"ledger{number}", came, _ledger_said(leg)),
    )


def _walk_said(debrief: Debrief) -> str:
    ends = [
        say(
            "picture-named",
            name=wording.leg_names([leg.name]),
            said=wording.offset(measures.cross_track.end_m, measures.miss_sd_m),
        )
        for leg in debrief.legs
        if (measures := leg.audit.measures) is not None
    ]
    said = say("picture-walk-said")
    return say("picture-walk-claims", said=said, ends=", ".join(ends)) if ends else said


def _target_said(debrief: Debrief) -> str:
    said = []
    for leg in debrief.legs:
        measures = leg.audit.measures
        if measures is not None:
            where = leg_facts.miss_along_and_across(measures)
            said.append(say("picture-target-leg", leg=leg.name, where=where))
    return " ".join(said)


def _dial_said(leg: LegDebrief) -> str:
    planned, walked = leg_facts.planned_facts(leg), leg_facts.walked_facts(leg)
    return say("picture-dial-said", planned=planned[0][1], walked=walked[0][1]) if walked else ""


def _ledger_said(leg: LegDebrief) -> str:
    parts = page_legs.ledger_row(leg) or []
    if not parts:
        return ""
    names = (say(f"page-part-{part}") for part in page_legs.LEDGER_PARTS)
    return _listed(list(zip(names, parts, strict=True)))


def _listed(facts: list[tuple[str, str]]) -> str:
    return "; ".join(say("picture-named", name=name, said=words) for name, words in facts)
