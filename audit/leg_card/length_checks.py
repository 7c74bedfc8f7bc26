"""Where a leg's distance or paces disagree with its points or with each other."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator

from audit.leg_card.finished_card import CardFinding
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import PointsSay
from audit.leg_card.rounding import distance_rounding_m, is_whole, length_rounding
from audit.leg_card.slips import DIGIT, KNOWN, Slip, slip_names, slip_sentence
from audit.leg_card.told_numbers import told_distance
from audit.leg_card.written_digits import one_wrong, swapped
from audit.statistics.spread import TWO_SIDED_95
from audit.words import Sentence, sentence
from audit.words.figures import Length, Paces

_KILOMETRE_M = 1000.0
_HUNDREDS = (1, 2, 3, 10)
"""Miscounts of hundreds worth naming, and the whole grid square."""

Room = Callable[[float], float]
"""How near to what is right a number must lie that a slip is taken back to."""


def distance_tolerance_m(check: LegCheck, given_m: float, said: PointsSay) -> float:
    """Give how far a distance may be from the one along the points."""
    settings = check.settings
    return (
        distance_rounding_m(check.leg, given_m, settings.distance_rounding_most_m)
        + settings.distance_slack * said.along_m
        + said.room.metres(given_m - said.along_m)
    )


def named_room_m(check: LegCheck, written_m: float) -> float:
    """Give how near to its points the distance must lie that a slip is taken back to.

    Less than what may differ unsaid: only how the number and the references were rounded,
    each place of the leg anywhere alike within its square, and none of the ruler.
    """
    half_m = length_rounding(written_m, check.settings.distance_rounding_most_m)
    if is_whole(written_m / 5.0):
        half_m = max(half_m, 2.5)
    ends = check.start.half_square_m**2 + check.end.half_square_m**2
    vias = sum((2.0 * via.half_square_m) ** 2 for via in check.leg.via)  # on either side of it
    return half_m + TWO_SIDED_95 * math.sqrt((ends + vias) / 3.0)


def distance_against_points(check: LegCheck) -> Iterator[CardFinding]:
    """Hold the distance against the points."""
    given_m, said = check.leg.distance_m, check.said
    if given_m is None or said is None:
        return
    tolerance_m = distance_tolerance_m(check, given_m, said)
    if abs(given_m - said.along_m) <= tolerance_m:
        return
    slips = () if check.explained else _distance_slips(check, given_m, said, tolerance_m)
    message = sentence(
        "finding-distance-via" if check.leg.via else "finding-distance",
        leg=check.leg.name,
        given=told_distance(given_m),
        along=Length(metres=said.along_m),
        slips=slip_sentence(slips),
        explained=check.explained,
    )
    yield CardFinding(
        leg=check.leg.name,
        what="distance_m",
        given=given_m,
        computed=said.along_m,
        message=message,
        slips=slip_names(slips),
    )


def _distance_slips(
    check: LegCheck, given_m: float, said: PointsSay, tolerance_m: float
) -> tuple[Slip, ...]:
    """Give the slips that a wrong distance looks like."""
    off_m = given_m - said.along_m
    hundreds = round(off_m / 100.0)
    fine = tolerance_m < check.settings.named_hundred_m
    near_m = named_room_m(check, given_m)
    fits = {
        ("via-distance", sentence("slip-straight")): (
            said.first_stretch is not None and abs(given_m - said.chord_m) <= near_m
        ),
        ("wrong-ruler", sentence("slip-twice-scale")): (
            abs(given_m - said.along_m / 2.0) <= near_m
        ),
        ("wrong-ruler", sentence("slip-half-scale")): (
            abs(given_m - said.along_m * 2.0) <= 2.0 * near_m
        ),
        ("kilometres-for-metres", sentence("slip-kilometres")): in_kilometres(check),
        ("hundred-miscounted", _hundreds_words(hundreds)): (
            abs(hundreds) in _HUNDREDS and abs(off_m - 100.0 * hundreds) <= near_m and fine
        ),
    }
    if in_kilometres(check):  # then less than a metre is left of it, whatever else would fit
        fits = {reading: so for reading, so in fits.items() if reading[0].startswith("kilo")}
    known = [Slip(name=name, what=what) for (name, what), so in fits.items() if so]
    if not fine:
        return tuple(known)
    others = ((leg.name, leg.distance_m) for leg in check.others)
    return _told(
        known,
        _digit_slips(given_m, said.along_m, lambda meant: min(near_m, named_room_m(check, meant))),
        _borrowed(given_m, others, "distance-of"),
    )


def paced_m(check: LegCheck) -> float:
    """Give what paces are held against: the card's distance, but not one in kilometres."""
    said = check.said
    return said.along_m if said is not None and in_kilometres(check) else check.distance_m


def _open_m(check: LegCheck, off_m: float) -> float:
    """Give how far the distance that paces are held against may be off: its points' squares."""
    said = check.said
    by_points = said is not None and (check.leg.distance_m is None or in_kilometres(check))
    return said.room.metres(off_m) if by_points and said is not None else 0.0


def paces_against_distance(check: LegCheck) -> Iterator[CardFinding]:
    """Hold the paces against the card's distance at the plan's pace count."""
    given, rate, settings = check.leg.paces, check.paces_per_100m, check.settings
    if given is None or rate is None:
        return
    distance_m = paced_m(check)
    expected = distance_m * rate / 100.0
    step_m = distance_rounding_m(check.leg, distance_m, settings.distance_rounding_most_m)
    tolerance = (
        length_rounding(given, settings.pace_rounding_most)
        + settings.pace_slack * expected
        + (step_m + _open_m(check, given - expected)) * rate / 100.0
    )
    if abs(given - expected) <= tolerance:
        return
    slips = _pace_slips(check, given, rate, expected, tolerance)
    message = sentence(
        "finding-paces",
        leg=check.leg.name,
        given=Paces(counted=given),
        distance=told_distance(distance_m),
        rate=Paces(counted=rate, decimals=0 if is_whole(rate) else 1),
        expected=Paces(counted=expected),
        slips=slip_sentence(slips),
    )
    yield CardFinding(
        leg=check.leg.name,
        what="paces",
        given=given,
        computed=expected,
        message=message,
        slips=slip_names(slips),
    )


def _pace_slips(
    check: LegCheck, given: float, rate: float, expected: float, tolerance: float
) -> tuple[Slip, ...]:
    """Give the slips that a wrong pace count looks like."""
    hundreds = round((given - expected) / rate)
    fine = tolerance < 0.5 * rate
    fits = {
        ("single-double-pace", sentence("slip-single-for-double")): (
            abs(given - 2.0 * expected) <= 2.0 * tolerance
        ),
        ("single-double-pace", sentence("slip-double-for-single")): (
            abs(given - expected / 2.0) <= tolerance
        ),
        ("paces-of-points", sentence("slip-points-distance")): (
            check.said is not None and abs(given - check.said.along_m * rate / 100.0) <= tolerance
        ),
        (
            "hundred-miscounted",
            sentence("slip-paces-of-hundreds", metres=_hundreds_words(hundreds)),
        ): (
            abs(hundreds) in _HUNDREDS
            and abs(given - expected - hundreds * rate) <= tolerance
            and fine
        ),
    }
    known = [Slip(name=name, what=what) for (name, what), so in fits.items() if so]
    if not fine:
        return tuple(known)
    others = ((leg.name, leg.distance_m * rate / 100.0) for leg in check.others)
    return _told(
        known,
        _digit_slips(given, expected, lambda _: tolerance),
        _borrowed(given, others, "paces-of"),
    )


def in_kilometres(check: LegCheck) -> bool:
    """Tell whether a distance is that of the points in kilometres, which is no leg in metres."""
    given, said, settings = check.leg.distance_m, check.said, check.settings
    if given is None or said is None or given > settings.long_leg_m / _KILOMETRE_M:
        return False
    decimals = len(f"{given:.3f}".rstrip("0").partition(".")[2])
    last_digit_m = 0.5 * _KILOMETRE_M / 10.0**decimals
    off_m = given * _KILOMETRE_M - said.along_m
    room_m = last_digit_m + settings.distance_slack * said.along_m + said.room.metres(off_m)
    return given < settings.few_metres_share * said.along_m and abs(off_m) <= room_m


def _hundreds_words(hundreds: int) -> Sentence:
    way = "much" if hundreds > 0 else "little"
    return sentence(f"slip-hundreds-too-{way}", count=abs(hundreds))


def _told(known: list[Slip], digits: list[Slip], borrowed: list[Slip]) -> tuple[Slip, ...]:
    """Give the known slips with swapped digits, else another leg's number, else one wrong digit."""
    swaps = [slip for slip in digits if slip.rank == KNOWN]
    return tuple([*known, *swaps] or borrowed or digits[:1])


def _digit_slips(given: float, expected: float, room: Room) -> list[Slip]:
    """Give the slips of the pen that explain a whole number: swapped digits, then the nearest."""
    if not is_whole(given):
        return []
    written = f"{given:.0f}"
    meant = [("swapped", KNOWN, text) for text in swapped(written)]
    meant += [("one-wrong", DIGIT, text) for _, text in one_wrong(written)]
    return [
        Slip(
            name="digits",
            what=sentence(f"slip-{what}", given=written, meant=text),
            rank=rank,
        )
        for what, rank, text in sorted(
            meant, key=lambda one: (one[1], abs(float(one[2]) - expected))
        )
        if abs(float(text) - expected) <= room(float(text))
    ]


def _borrowed(given: float, others: Iterable[tuple[str, float]], what: str) -> list[Slip]:
    """Give the slip of copying another leg's number, which would be the same to the unit."""
    return [
        Slip(name="neighbour-number", what=sentence(f"slip-{what}", leg=name))
        for name, number in others
        if abs(number - given) <= 0.5
    ]
