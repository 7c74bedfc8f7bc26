"""Mistakes that show in how a line is held, or in which points are gone to: drawn step by step.

What a recording shows of them the diagnosis reads off the line; here it is the other way
round, and the line is drawn at the sizes that the settings choose.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from audit.leg_card import CardLeg, LegCard
from audit.rehearsal.finished_rehearsal import Unit, Way
from audit.settings import RehearsalSettings
from audit.units import FloatArray, unit_vector
from audit.words import sentence
from audit.words.figures import Length

_BEND_STEPS = 24
Pieces = list[tuple[float, float]]
"""(turn off the azimuth, metres), one after the other."""


def shaped_ways(card: LegCard, number: int, settings: RehearsalSettings) -> Iterator[Way]:
    """Give the shaped mistakes of a leg, one to each side where there are sides."""
    leg = card.legs[number]
    if len(leg.line) == 2:
        for cause, draw in _SHAPES.items():
            for side in (1.0, -1.0):
                size, unit, pieces = draw(leg, side, settings)
                yield _way(cause, size, unit, _side_words(side), _walked(leg, pieces))
    yield from _of_start_and_point(leg, settings)
    yield from _of_order(card, number)


def _veer(leg: CardLeg, side: float, settings: RehearsalSettings) -> tuple[float, Unit, Pieces]:
    """Bend evenly; the leg as a whole is turned by half the bend."""
    bend = side * settings.veer_deg
    share = (np.arange(_BEND_STEPS) + 0.5) / _BEND_STEPS
    step = leg.distance_m / _BEND_STEPS
    return bend, "deg", [(bend * float(one), step) for one in share]


def _box(
    leg: CardLeg, side: float, settings: RehearsalSettings, back_share: float, *, counted: bool
) -> Pieces:
    """Walk out, past and back; where the sides are counted the leg ends short by them."""
    out = min(settings.bypass_side_m, settings.bypass_side_share * leg.distance_m)
    ahead = min(settings.bypass_ahead_m, settings.bypass_ahead_share * leg.distance_m)
    back = back_share * out
    before = settings.bypass_begins_share * leg.distance_m
    after = leg.distance_m - before - ahead - (out + back if counted else 0.0)
    return [(0.0, before), (90.0 * side, out), (0.0, ahead), (-90.0 * side, back), (0.0, after)]


def _paced(leg: CardLeg, side: float, settings: RehearsalSettings) -> tuple[float, Unit, Pieces]:
    pieces = _box(leg, side, settings, 1.0, counted=True)
    return -(pieces[1][1] + pieces[3][1]), "m", pieces


def _unequal(leg: CardLeg, side: float, settings: RehearsalSettings) -> tuple[float, Unit, Pieces]:
    pieces = _box(leg, side, settings, settings.bypass_back_share, counted=False)
    return side * (pieces[1][1] - pieces[3][1]), "m", pieces


def _dodges(leg: CardLeg, side: float, settings: RehearsalSettings) -> tuple[float, Unit, Pieces]:
    aside = min(settings.dodge_m, settings.dodge_share * leg.distance_m)
    part = leg.distance_m / settings.dodges
    one = [(0.0, part / 2.0), (45.0 * side, aside * 2.0**0.5), (0.0, part / 2.0 - aside)]
    return side * aside * settings.dodges, "m", one * settings.dodges


def _led(leg: CardLeg, turn_deg: float, length_m: float, settings: RehearsalSettings) -> Pieces:
    length = min(length_m, settings.off_share * leg.distance_m)
    before = settings.off_begins_share * leg.distance_m
    return [(0.0, before), (turn_deg, length), (0.0, leg.distance_m - before - length)]


def _handrail(leg: CardLeg, side: float, settings: RehearsalSettings) -> tuple[float, Unit, Pieces]:
    turn = side * settings.handrail_deg
    return turn, "deg", _led(leg, turn, settings.handrail_m, settings)


def _disturbed(
    leg: CardLeg, side: float, settings: RehearsalSettings
) -> tuple[float, Unit, Pieces]:
    turn = side * settings.disturbed_deg
    return turn, "deg", _led(leg, turn, settings.disturbed_m, settings)


_SHAPES: dict[str, Callable[[CardLeg, float, RehearsalSettings], tuple[float, Unit, Pieces]]] = {
    "veer": _veer,
    "handrail": _handrail,
    "magnetic-disturbance": _disturbed,
    "bypass-paced": _paced,
    "bypass-unequal": _unequal,
    "obstacle-one-side": _dodges,
}


def _of_start_and_point(leg: CardLeg, settings: RehearsalSettings) -> Iterator[Way]:
    """Begin beside the start, walk on past the point, find a marker or a map that is off."""
    line = np.asarray(leg.line)
    ahead = line[-1] - line[-2]
    beyond = line[-1] + settings.passed_on_m * ahead / np.hypot(*ahead)
    on = settings.passed_on_m
    yield _way(
        "passed-unseen",
        on,
        "m",
        sentence("rehearse-way-on", size=Length(metres=on)),
        np.vstack([line, beyond]),
        share=1.0,
    )
    for name, azimuth in (("north", 0.0), ("east", 90.0), ("south", 180.0), ("west", 270.0)):
        for cause, size in (
            ("wrong-start", settings.wrong_start_m),
            ("point-misplaced", settings.wrong_place_m),
            ("datum", settings.datum_m),
        ):
            shift = size * unit_vector(azimuth)
            moved = line + shift
            if cause == "point-misplaced":
                moved = np.vstack([line[:-1], line[-1] + shift])
            words = sentence(f"rehearse-way-{name}", size=Length(metres=size))
            yield _way(cause, size, "m", words, moved, share=0.25)


def _of_order(card: LegCard, number: int) -> Iterator[Way]:
    """Leave the point out, or go to the next one first: both lead to the next leg's end."""
    if number + 1 >= len(card.legs):
        return
    leg, following = card.legs[number], card.legs[number + 1]
    if following.start.name != leg.end.name:
        return
    begin, after = np.asarray(leg.line[0]), np.asarray(following.line[-1])
    off = float(np.hypot(*(after - leg.line[-1])))
    if float(np.hypot(*(after - begin))) < 1.0:
        return
    words = sentence("rehearse-way-straight", point=following.end.name)
    yield _way("point-skipped", off, "m", words, np.array([begin, after]), share=1.0)
    first = np.array([begin, after, leg.line[-1]])
    words = sentence("rehearse-way-first", point=following.end.name)
    yield _way("order-changed", off, "m", words, first, share=1.0)


def _walked(leg: CardLeg, pieces: Pieces) -> FloatArray:
    steps = [
        length * unit_vector(leg.azimuth.degrees + turn) for turn, length in pieces if length > 0.0
    ]
    return np.asarray(np.vstack([leg.line[0], leg.line[0] + np.cumsum(steps, axis=0)]))


def _side_words(side: float) -> str:
    return sentence("rehearse-way-to-right" if side > 0 else "rehearse-way-to-left")


def _way(
    cause: str, size: float, unit: Unit, words: str, line: FloatArray, share: float = 0.5
) -> Way:
    return Way(cause=cause, size=size, unit=unit, words=words, share=share, line=line)
