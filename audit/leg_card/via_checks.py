"""Via positions that lead a leg far out of its way: their references are held to that."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from audit.leg_card.finished_card import CardFinding
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import PointsSay
from audit.words import Sentence, sentence
from audit.words.figures import Length


def via_name(leg: str, number: int) -> Sentence:
    """Name a via position, counted from 1: "via 1 of leg 3"."""
    return sentence("finding-via-name", number=number, leg=leg)


def vias_astray(check: LegCheck) -> list[int]:
    """Give the via positions, counted from 0, that no leg would be led over."""
    if check.said is None:
        return []
    return [
        number
        for number, (over_m, past_m) in enumerate(check.said.over_vias_m)
        if _astray(check, over_m, past_m) or _against_stated(check, over_m - past_m)
    ]


def line_astray(check: LegCheck) -> bool:
    """Tell whether a line along via positions is longer than anyone walks in one."""
    said = check.said
    bent = said is not None and bool(said.over_vias_m)
    return bent and said is not None and said.along_m > check.settings.long_leg_m


def via_notes(checks: Iterable[LegCheck]) -> Iterator[str]:
    """Note the lines that are many times as long as the straight way: they may be rounds."""
    for check in checks:
        said = check.said
        if said is None or vias_astray(check) or line_astray(check) or not said.over_vias_m:
            continue
        if _astray(check, said.along_m, said.chord_m):
            yield sentence("note-line-long", **_line_words(check, said))


def via_findings(check: LegCheck) -> Iterator[CardFinding]:
    """Find the via positions that lead astray, else a line that does."""
    said = check.said
    if said is None:
        return
    astray = vias_astray(check)
    for number in astray:
        over_m, past_m = said.over_vias_m[number]
        given = check.leg.via[number].given
        message = sentence(
            "finding-via-astray",
            leg=check.leg.name,
            number=number + 1,
            given=given,
            over=Length(metres=over_m),
            past=Length(metres=past_m),
            explained=check.explained,
        )
        yield _finding(check, given, over_m, message)
    if not astray and line_astray(check):
        words = _line_words(check, said)
        message = sentence("finding-line-long", **words, explained=check.explained)
        yield _finding(check, None, said.along_m, message)


def _astray(check: LegCheck, over_m: float, past_m: float) -> bool:
    settings = check.settings
    longer = over_m - past_m > settings.via_astray_m
    return longer and over_m > settings.via_astray_times * past_m


def _against_stated(check: LegCheck, longer_m: float) -> bool:
    """Tell whether the line is far too long for the plan's distance, mostly by this position."""
    given_m, said, settings = check.leg.distance_m, check.said, check.settings
    if given_m is None or said is None:
        return False
    off_m = said.along_m - given_m
    far = off_m > settings.via_stated_m and said.along_m > settings.via_stated_times * given_m
    return far and 2.0 * longer_m >= off_m


def _line_words(check: LegCheck, said: PointsSay) -> dict[str, Any]:
    return {
        "leg": check.leg.name,
        "along": Length(metres=said.along_m),
        "straight": Length(metres=said.chord_m),
    }


def _finding(check: LegCheck, given: str | None, way_m: float, message: str) -> CardFinding:
    return CardFinding(leg=check.leg.name, what="via", given=given, computed=way_m, message=message)
