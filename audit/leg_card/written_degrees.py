"""A place in degrees as it is written, digit by digit, and the places that slips make of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from audit.leg_card.written_digits import one_wrong, swapped
from audit.leg_card.written_reference import ReferenceSlip
from audit.positions import Position
from audit.words import sentence

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_SAME_DEG = 1e-6
_LEAST_DEG = 1e-5
"""About a metre: no leg shows a slip among the digits behind."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Half:
    """A latitude or a longitude: where its numbers stand in the text, and its side."""

    axis: str
    numbers: tuple[re.Match[str], ...]
    sign: float

    def degrees(self, texts: tuple[str, ...]) -> float | None:
        """Give the degrees that numbers in these places mean; None for none at all."""
        parts = [float(text.replace(",", ".")) for text in texts]
        value = sum(part / 60.0**place for place, part in enumerate(parts))
        most = 90.0 if self.axis == "latitude" else 180.0
        if value > most or any(part >= 60.0 for part in parts[1:]):
            return None
        return self.sign * value


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenDegrees:
    """A latitude and a longitude in degrees, or degrees, minutes and seconds."""

    text: str
    halves: tuple[_Half, _Half]
    longitude_deg: float
    latitude_deg: float

    def slips(self) -> Iterator[ReferenceSlip]:
        """Give the place with each slip of one hand movement taken back."""
        yield from self._other_sides()
        for half in self.halves:
            for number, match in enumerate(half.numbers):
                for other in swapped(match[0]):
                    what = sentence("slip-degrees-swapped", axis=half.axis)
                    yield from self._with(half, number, other, "digits-transposed", what)
                for place, other in one_wrong(match[0]):
                    what = sentence(
                        "slip-degrees-wrong",
                        axis=half.axis,
                        given=match[0][place],
                        meant=other[place],
                    )
                    yield from self._with(half, number, other, "digit-wrong", what, rank=1)

    def elsewhere(self, _longitude_deg: float, _latitude_deg: float) -> Iterator[ReferenceSlip]:
        """Give nothing: degrees have no letters that could name another square."""
        yield from ()

    def _other_sides(self) -> Iterator[ReferenceSlip]:
        """Give the place on the other side of Greenwich or the equator, and the two exchanged."""
        east, north = self.longitude_deg, self.latitude_deg
        side, places = "wrong-hemisphere", []
        places.append((side, sentence("slip-degrees-side", axis="longitude"), -east, north))
        places.append((side, sentence("slip-degrees-side", axis="latitude"), east, -north))
        if abs(east) <= 90.0:
            what = sentence("slip-degrees-exchanged")
            places.append(("easting-northing-swapped", what, north, east))
        for name, what, longitude_deg, latitude_deg in places:
            yield ReferenceSlip(
                name=name,
                what=what,
                text=f"{latitude_deg:.6g}, {longitude_deg:.6g}",
                longitude_deg=longitude_deg,
                latitude_deg=latitude_deg,
            )

    def _with(
        self, half: _Half, number: int, other: str, name: str, what: str, rank: int = 0
    ) -> Iterator[ReferenceSlip]:
        """Give what another number in one place means; nothing where that is no place."""
        texts = [match[0] for match in half.numbers]
        texts[number] = other
        degrees = half.degrees(tuple(texts))
        now = self.latitude_deg if half.axis == "latitude" else self.longitude_deg
        if degrees is None or abs(degrees - now) < _LEAST_DEG:
            return
        first, last = half.numbers[number].span()
        north = half.axis == "latitude"
        yield ReferenceSlip(
            name=name,
            what=what,
            text=self.text[:first] + other + self.text[last:],
            longitude_deg=self.longitude_deg if north else degrees,
            latitude_deg=degrees if north else self.latitude_deg,
            rank=rank,
        )


def written_degrees(position: Position) -> WrittenDegrees | None:
    """Give a place digit by digit; None where its text is not a pair of degrees."""
    text = " ".join(position.given.split())
    numbers = tuple(_NUMBER.finditer(text))
    count = len(numbers) // 2
    if count not in (1, 2, 3) or len(numbers) % 2:
        return None
    values = {"latitude": position.latitude_deg, "longitude": position.longitude_deg}
    for axes in (("latitude", "longitude"), ("longitude", "latitude")):
        halves = tuple(
            _Half(axis=axis, numbers=part, sign=-1.0 if values[axis] < 0.0 else 1.0)
            for axis, part in zip(axes, (numbers[:count], numbers[count:]), strict=True)
        )
        if all(_means(half, values[half.axis]) for half in halves):
            return WrittenDegrees(
                text=text,
                halves=(halves[0], halves[1]),
                longitude_deg=position.longitude_deg,
                latitude_deg=position.latitude_deg,
            )
    return None


def _means(half: _Half, value_deg: float) -> bool:
    read = half.degrees(tuple(match[0] for match in half.numbers))
    return read is not None and abs(read - value_deg) < _SAME_DEG
