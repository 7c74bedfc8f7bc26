"""A grid reference as it is written, digit by digit, and the places that slips make of it."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from audit.geodesy.grids import CourseGrid, course_grid, utm_code, utm_zone_code
from audit.geodesy.mgrs_references import encode_mgrs
from audit.geodesy.national_letters import LETTERED_GRIDS, encode_national
from audit.leg_card.written_digits import carried, one_wrong, swapped
from audit.positions import Position
from audit.words import sentence

_HUNDRED_KM_M = 100_000.0
_GRID_LINE_M = 1_000.0
_MGRS = re.compile(r"\W*(\d{1,2}) ?([C-X]) ?([A-Z]) ?([A-Z])[\d ]*", re.IGNORECASE)
_UTM = re.compile(r"\W*(\d{1,2}) ?([C-X])[ ,;:]", re.IGNORECASE)
_NATIONAL = re.compile(r"\W*([A-Z]{1,2})([\d ,/]+)\W*", re.IGNORECASE)
_DEGREES = re.compile(r"([+-]?\d{1,2})[.](\d{3,})[,; ]+([+-]?\d{1,3})[.](\d{3,})")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReferenceSlip:
    """What a reference becomes when one slip is taken back.

    Attributes
    ----------
    name : str
        As in the catalogue of causes.
    what : str
        The slip, said so that "It has ..." goes before it.
    text : str
        The reference without the slip.
    longitude_deg, latitude_deg : float
        Where that lies.
    rank : int
        0 for slips with few outcomes, 1 for one wrong digit, which has many.
    """

    name: str
    what: str
    text: str
    longitude_deg: float
    latitude_deg: float
    rank: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenReference:
    """A reference as letters and two runs of digits, each of a step in metres.

    Attributes
    ----------
    head : str
        Zone and letters; "" where there are none.
    halves : tuple of str
        The digits of easting and northing.
    origin_m : tuple of float
        Easting and northing of the square of the letters; 0 without letters.
    step_m : float
        What one of the last digit stands for.
    grid : CourseGrid
        The grid that the digits count on.
    lettered : bool
        Whether letters name the square of 100 km; the digits then name a square too.
    """

    head: str
    halves: tuple[str, str]
    origin_m: tuple[float, float]
    step_m: float
    grid: CourseGrid
    lettered: bool

    @property
    def text(self) -> str:
        """The reference in its usual writing."""
        return self.write(self.halves)

    def write(self, halves: tuple[str, str]) -> str:
        """Write a reference of the same letters with other digits."""
        return " ".join(part for part in (self.head, *halves) if part)

    def place(self, halves: tuple[str, str]) -> tuple[float, float]:
        """Give (longitude, latitude) of the middle of the square of some digits.

        Raises
        ------
        ValueError
            Where that is no place on the grid.
        """
        middle = 0.5 if self.lettered else 0.0
        east_m, north_m = (
            origin + (int(half) + middle) * self.step_m
            for origin, half in zip(self.origin_m, halves, strict=True)
        )
        return self.grid.to_geographic(east_m, north_m)

    def slips(self) -> Iterator[ReferenceSlip]:
        """Give the reference with each slip of one hand movement taken back."""
        east, north = self.halves
        if len(east) == len(north):
            yield from self.with_slip(
                "easting-northing-swapped", sentence("slip-axes-swapped"), (north, east)
            )
        for axis, half in (("easting", east), ("northing", north)):
            for other in swapped(half):
                what = sentence("slip-axis-swapped", axis=axis)
                yield from self.with_slip("digits-transposed", what, self._with(axis, other))
            for other in self._next_lines(half):
                what = sentence("slip-axis-next-line", axis=axis)
                yield from self.with_slip("wrong-grid-line", what, self._with(axis, other), rank=1)
            for words, given, meant, other in _misread(half):
                what = sentence(words, axis=axis, given=given, meant=meant)
                if other not in self._next_lines(half):
                    yield from self.with_slip("digit-wrong", what, self._with(axis, other), rank=1)

    def elsewhere(self, longitude_deg: float, latitude_deg: float) -> Iterator[ReferenceSlip]:
        """Give the same digits in the squares of 100 km, or the zone, around a place."""
        national = self.grid.code in LETTERED_GRIDS
        grid = self.grid if national else course_grid(utm_code(longitude_deg, latitude_deg))
        near_m = grid.to_grid(longitude_deg, latitude_deg)
        corners = [(0.0, 0.0)]
        if self.lettered:
            east, north = (value // _HUNDRED_KM_M for value in near_m)
            corners = [
                ((east + right) * _HUNDRED_KM_M, (north + up) * _HUNDRED_KM_M)
                for right in (-1, 0, 1)
                for up in (-1, 0, 1)
            ]
        what = sentence("slip-another-square" if self.lettered else "slip-another-zone")
        for origin_m in corners:
            if (origin_m, grid.code) == (self.origin_m, self.grid.code):
                continue
            moved = replace(self, origin_m=origin_m, grid=grid)
            head = moved.own_head()
            if head:
                moved = replace(moved, head=head)
                yield from moved.with_slip("wrong-100km-square", what, self.halves)

    def own_head(self) -> str:
        """Give the letters that belong to the digits where they lie; "" where none do."""
        try:
            longitude_deg, latitude_deg = self.place(self.halves)
            if self.grid.code in LETTERED_GRIDS:
                east_m, north_m = self.grid.to_grid(longitude_deg, latitude_deg)
                return encode_national(east_m, north_m, self.grid.code, digits=0)
            if utm_code(longitude_deg, latitude_deg) != self.grid.code:
                return ""
            letters = encode_mgrs(longitude_deg, latitude_deg, digits=0)
        except ValueError:
            return ""
        return letters if self.lettered else letters.split()[0]

    def _with(self, axis: str, half: str) -> tuple[str, str]:
        return (half, self.halves[1]) if axis == "easting" else (self.halves[0], half)

    def _next_lines(self, half: str) -> list[str]:
        """Give the digits one grid line of a kilometre to either side."""
        line = round(_GRID_LINE_M / self.step_m)
        numbers = (int(half) - line, int(half) + line) if line else ()
        return [f"{number:0{len(half)}d}" for number in numbers if 0 <= number < 10 ** len(half)]

    def with_slip(
        self, name: str, what: str, halves: tuple[str, str], rank: int = 0
    ) -> Iterator[ReferenceSlip]:
        """Give what other digits mean; nothing where that is no place."""
        try:
            longitude_deg, latitude_deg = self.place(halves)
        except ValueError:
            return
        yield ReferenceSlip(
            name=name,
            what=what,
            text=self.write(halves),
            longitude_deg=longitude_deg,
            latitude_deg=latitude_deg,
            rank=rank,
        )


def _misread(half: str) -> Iterator[tuple[str, str, str, str]]:
    """Give (words, digits, what was meant by them, text) of each digit that may be wrong."""
    for place, other in one_wrong(half):
        yield "slip-axis-wrong", half[place], other[place], other
    for given, meant, other in carried(half):
        yield "slip-axis-carried", given, meant, other


def written_reference(position: Position, course: CourseGrid) -> WrittenReference | None:
    """Give the reference of a position, digit by digit; None for degrees and for no reference."""
    given = " ".join(position.given.split()).upper()
    mgrs, utm = _MGRS.match(given), _UTM.match(given)
    if mgrs and position.half_square_m > 0.0:
        zone = utm_zone_code(int(mgrs[1]), south=mgrs[2] < "N")
        head = f"{int(mgrs[1])}{mgrs[2]} {mgrs[3]}{mgrs[4]}"
        return _lettered(head, position, course_grid(zone))
    if position.half_square_m > 0.0 and course.code in LETTERED_GRIDS:
        national = _NATIONAL.fullmatch(given)
        fits = national and _names_the_square(national[2], position)
        return _lettered(national[1], position, course) if national and fits else None
    if utm:
        band = utm[2]
        zone = utm_zone_code(int(utm[1]), south=position.latitude_deg < 0.0)
        return _metres(f"{int(utm[1])}{band}", position, course_grid(zone))
    if given and not _DEGREES.search(given) and not re.search("[°'NSEW]", given):
        reference = _metres("", position, course)
        if reference is not None and reference.halves[0] in re.sub(r"[ ,.']", "", given):
            return reference
    return None


def _names_the_square(written: str, position: Position) -> bool:
    """Tell whether digits stop at the step that a place is known to; those of degrees do not."""
    digits = sum(sign.isdigit() for sign in written)
    return math.isclose(2.0 * position.half_square_m, 10.0 ** (5.0 - digits / 2.0))


def _lettered(head: str, position: Position, grid: CourseGrid) -> WrittenReference:
    east_m, north_m = grid.to_grid(position.longitude_deg, position.latitude_deg)
    step_m = 2.0 * position.half_square_m
    count = 5 - round(math.log10(step_m))
    origin = (east_m // _HUNDRED_KM_M * _HUNDRED_KM_M, north_m // _HUNDRED_KM_M * _HUNDRED_KM_M)
    halves = tuple(
        f"{int((value - corner) // step_m):0{count}d}"
        for value, corner in zip((east_m, north_m), origin, strict=True)
    )
    return WrittenReference(
        head=head,
        halves=(halves[0], halves[1]),
        origin_m=origin,
        step_m=step_m,
        grid=grid,
        lettered=True,
    )


def _metres(head: str, position: Position, grid: CourseGrid) -> WrittenReference | None:
    east_m, north_m = grid.to_grid(position.longitude_deg, position.latitude_deg)
    if min(east_m, north_m) < 0.0:
        return None
    halves = (f"{round(east_m):06d}", f"{round(north_m):06d}")
    return WrittenReference(
        head=head, halves=halves, origin_m=(0.0, 0.0), step_m=1.0, grid=grid, lettered=False
    )
