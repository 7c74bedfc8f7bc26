"""Latitude and longitude in degrees, minutes and seconds, with or without letters and signs."""

from __future__ import annotations

import re
from dataclasses import dataclass

from audit.readers.pair_text import halves, lettered_halves
from audit.readers.plain_text import plain_text
from audit.readers.position_reading import PositionRefusedError

_LABELS = (
    (re.compile(r"\bLAT(?:ITUDE)?\b\.? ?[:=]? ?"), "φ"),
    (re.compile(r"\bLON(?:G|GITUDE)?\b\.? ?[:=]? ?"), "λ"),
)
_WORDS = ((r"(?<=\d) ?DEG(?:REES?)?\b", "°"), (r"(?<=\d) ?MIN(?:UTES?)?\b", "'"),
          (r"(?<=\d) ?SEC(?:ONDS?)?\b", '"'))  # fmt: skip
_HALF = re.compile(r"(?P<before>[φλ]? ?[NSEW]?) ?(?P<body>[^φλNSEW]+?) ?(?P<after>[NSEW]?)")
_AXES = {"φ": "φ", "N": "φ", "S": "φ", "λ": "λ", "E": "λ", "W": "λ"}
_NUMBER = r"\d+(?:[.,]\d+)?"
_LIST = re.compile(r"[+-]?\d+(?:(?P<cut>, ?)[+-]?\d+(?:\.\d+)?)(?:(?P=cut)[+-]?\d+(?:\.\d+)?){2,4}")
_LONGEST = 60
_LIKE_THIS = 'Write it like "36.512, -84.231"'


@dataclass(frozen=True, slots=True, kw_only=True)
class DegreePair:
    """A latitude and a longitude, and how the writing was read ("" for the plain way)."""

    latitude_deg: float
    longitude_deg: float
    how: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Angle:
    """One half of the text. ``axis`` is φ, λ or "" where no letter says it."""

    value: float
    axis: str
    lettered: bool
    signed: bool
    parts: int
    decimal_mark: str
    marked: bool
    overfull: bool


def degree_pairs(text: str) -> tuple[list[DegreePair], list[PositionRefusedError]]:
    """Give the readings of a latitude and longitude, and what spoils readings that fail.

    ``text`` is plain and in capitals. Latitude comes first unless letters say otherwise.
    """
    for label, sign in _LABELS:
        text = label.sub(sign, text)
    for word, mark in _WORDS:
        text = re.sub(word, mark, text)
    text = re.sub(r"(?<=\d) ?D(?= ?\d)", "°", text)
    listed = _LIST.fullmatch(text)
    if listed:
        text = text.replace(", ", ",")
    cuts = lettered_halves(text) if re.search("[φλNSEW]", text) else halves(text)
    pairs: dict[tuple[float, float], DegreePair] = {}
    faults = []
    for left, right in cuts:
        for one in _angles(left, listed=bool(listed)):
            for other in _angles(right, listed=bool(listed)):
                try:
                    pair = _pair(one, other)
                except PositionRefusedError as fault:
                    faults.append(fault)
                    continue
                if pair is not None:
                    key = round(pair.latitude_deg, 10), round(pair.longitude_deg, 10)
                    pairs.setdefault(key, pair)
    return list(pairs.values()), faults


def written_angle(text: str) -> float | None:
    """Give an angle written with its signs, and its side: "2°48'", "4.5° W"; None for any other.

    East is positive and west negative, as a sign says it too.
    """
    plain = plain_text(text).upper()
    for word, mark in _WORDS:
        plain = re.sub(word, mark, plain)
    found = [
        one
        for one in _angles(plain, listed=False)
        if one.axis in ("", "λ") and not one.overfull and (one.lettered or one.marked)
    ]
    parted = re.search("[°'\"]", plain)
    sides = sum(one.lettered and one.signed for one in found)
    values = {one.value for one in found}
    return values.pop() if parted and len(values) == 1 and not sides else None


def _angles(half: str, *, listed: bool) -> list[_Angle]:
    """Give the readings of one half."""
    found = _HALF.fullmatch(half.strip())
    if not found:
        return []
    letters = [sign for sign in found["before"] + found["after"] if sign in _AXES]
    axes = {_AXES[letter] for letter in letters}
    hemispheres = [letter for letter in letters if letter in "NSEW"]
    if len(axes) > 1 or len(hemispheres) > 1:
        return []
    angles = []
    for numbers, sign, marked in _bodies(found["body"], listed=listed, lettered=bool(letters)):
        size = sum(number / 60.0**place for place, number in enumerate(numbers[0]))
        negative = sign == "-" or bool({"S", "W"} & set(hemispheres))
        angles.append(
            _Angle(
                value=-size if negative else size,
                axis=next(iter(axes), ""),
                lettered=bool(hemispheres),
                signed=bool(sign),
                parts=len(numbers[0]),
                decimal_mark=numbers[1],
                marked=marked,
                overfull=any(number >= 60.0 for number in numbers[0][1:]),
            )
        )
    return angles


def _bodies(
    body: str, *, listed: bool, lettered: bool
) -> list[tuple[tuple[list[float], str], str, bool]]:
    """Give ((degrees, minutes, seconds), decimal mark), sign and "marks show the parts"."""
    between = "[: ]" + ("|-" if lettered else "") + ("|," if listed else "")
    degrees, minutes = rf" ?(?:°|{between}) ?", rf" ?(?:'|{between}) ?"
    forms = (
        rf"({_NUMBER}) ?°?",
        rf"(\d+){degrees}({_NUMBER}) ?'?",
        rf"(\d+){degrees}(\d+){minutes}({_NUMBER}) ?\"?",
    )
    bodies = []
    for form in forms:
        found = re.fullmatch(rf"([+-]?) ?{form}", body, re.ASCII)
        if found and len(body) < _LONGEST:
            texts = found.groups()[1:]
            mark = "," if "," in texts[-1] else "." if "." in texts[-1] else ""
            numbers = [float(text.replace(",", ".")) for text in texts]
            marked = len(numbers) == 1 or bool(re.search("['°]", body))
            bodies.append(((numbers, mark), found[1], marked))
    return bodies


def _pair(one: _Angle, other: _Angle) -> DegreePair | None:
    """Put two halves together; None where no hand would have written them so.

    Raises
    ------
    PositionRefusedError
        For two halves that belong together and still are no place.
    """
    marks = {one.decimal_mark, other.decimal_mark} - {""}
    if len(marks) > 1 or (one.axis and one.axis == other.axis):
        return None
    if one.parts != other.parts and not (one.axis or other.axis):
        return None
    if one.overfull or other.overfull:
        rule = "has minutes or seconds of 60 and more"
        raise PositionRefusedError(rule, f"Check the digits. {_LIKE_THIS}.")
    _check_letters(one, other)
    swapped = one.axis == "λ" or other.axis == "φ"
    latitude, longitude = (other, one) if swapped else (one, other)
    _check_range(latitude.value, longitude.value)
    return DegreePair(
        latitude_deg=latitude.value,
        longitude_deg=longitude.value,
        how=_how(one, other, "," in marks),
    )


def _check_letters(one: _Angle, other: _Angle) -> None:
    for half in (one, other):
        if half.lettered and half.signed:
            rule = "carries a sign and a letter for the same side of the Earth"
            raise PositionRefusedError(rule, f'{_LIKE_THIS} or like "36.512 N 84.231 W".')
    for half, mate in ((one, other), (other, one)):
        if half.lettered and not mate.axis and not mate.signed:
            sides = "N or as S" if half.axis == "λ" else "E or as W"
            rule = f"can be read as {abs(mate.value):.6g} {sides}: one letter is missing"
            raise PositionRefusedError(rule, 'Write both letters, like "36.512 N 84.231 W".')


def _check_range(latitude: float, longitude: float) -> None:
    if abs(latitude) > 90.0:
        rule = f"has latitude {latitude:.8g}, but latitudes run from -90 to 90"
        swapped = abs(latitude) <= 180.0 and abs(longitude) <= 90.0
        order = f'Latitude comes first: perhaps "{longitude:.8g}, {latitude:.8g}".'
        raise PositionRefusedError(rule, order if swapped else f"{_LIKE_THIS}.")
    if abs(longitude) > 180.0:
        rule = f"has longitude {longitude:.8g}, but longitudes run from -180 to 180"
        raise PositionRefusedError(rule, f"{_LIKE_THIS}.")


def _how(one: _Angle, other: _Angle, commas: bool) -> str:  # noqa: FBT001
    how = ["decimal commas"] if commas else []
    parts = max(one.parts, other.parts)
    if parts > 1 and not (one.marked and other.marked):
        how.append("degrees and minutes" + (" and seconds" if parts == 3 else ""))
    return ", ".join(how)
