"""The sums of a leg, line by line as an instructor writes them beside the card."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.leg_card.azimuth_checks import grid_at_odds
from audit.leg_card.finished_card import CardLeg
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.leg_pieces import LegPiece, leg_pieces
from audit.leg_card.length_checks import paced_m
from audit.leg_card.sum_terms import turned_sum
from audit.leg_card.told_numbers import told_distance
from audit.words import Sentence, Words, sentence
from audit.words.figures import Figure, Length


@dataclass(frozen=True, slots=True, kw_only=True)
class SumLine:
    """One line of a worked sum.

    Attributes
    ----------
    what : str
        The field of the plan that it gives, such as "magnetic_azimuth_deg";
        "back_magnetic_azimuth_deg", which no plan has a field for, is for the compass.
    working : str
        The sum in figures.
    computed : float
        Its result, in the unit of the field's name.
    given : float or None
        What the plan says, None where it says nothing.
    agrees : bool or None
        Whether plan and sum agree; None where the plan says nothing.
    by_course : bool
        Whether they differ by the fault of the course's angle alone.
    in_mils : bool
        Whether the plan says it in mils.
    """

    what: str
    working: str
    computed: float
    given: float | None = None
    agrees: bool | None = None
    by_course: bool = False
    in_mils: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceSums:
    """The worked sums of a straight piece of a leg along via positions.

    ``first`` and ``last`` are the places of the leg's line that it joins: 0 is the start.
    """

    first: int
    last: int
    lines: tuple[SumLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSums:
    """The worked sums of one leg, from point to point.

    A leg along via positions has ``pieces``, which are walked; its azimuths in ``lines`` are
    straight across then.
    """

    leg: str
    start: str
    end: str
    lines: tuple[SumLine, ...]
    pieces: tuple[PieceSums, ...] = ()


def worked_sums(check: LegCheck, worked: CardLeg, disputed: Collection[str]) -> LegSums:
    """Give the sums of a leg of the card; ``disputed`` are the fields that a finding is about."""
    lines = []
    for line in _lines(check, disputed):
        given = _given(check, line.what)
        by_course = given is not None and line.what in check.by_course
        agrees = None
        if given is not None:
            # With a wrong angle a leg may be right by its sum, and told to be wrong all the same.
            alike = round(line.computed, 1) == round(given, 1)
            agrees = alike or (not by_course and line.what not in disputed)
        lines.append(
            SumLine(
                what=line.what,
                working=line.working,
                computed=line.computed,
                given=given,
                agrees=agrees,
                by_course=by_course,
                in_mils=given is not None and line.what.partition("_")[0] in check.leg.in_mils,
            )
        )
    leg = check.leg
    pieces = leg_pieces(worked, check.angles, check.paces_per_100m)
    return LegSums(
        leg=leg.name,
        start=check.start.name,
        end=check.end.name,
        lines=tuple(lines),
        pieces=tuple(_piece(check, worked, one) for one in pieces) if len(pieces) > 1 else (),
    )


def _piece(check: LegCheck, worked: CardLeg, piece: LegPiece) -> PieceSums:
    east_m, north_m = (float(one) for one in worked.line[piece.last] - worked.line[piece.first])
    lines = [
        _between(east_m, north_m, piece.azimuth),
        *_magnetic_lines(check, piece.azimuth),
        SumLine(what="distance_m", working=_root(east_m, north_m), computed=piece.distance_m),
    ]
    if check.paces_per_100m is not None:
        lines.append(
            _pacing(Length(metres=piece.distance_m), piece.distance_m, check.paces_per_100m)
        )
    return PieceSums(first=piece.first, last=piece.last, lines=tuple(lines))


def _lines(check: LegCheck, disputed: Collection[str]) -> Iterator[SumLine]:
    said, angles = check.said, check.angles
    east_m = check.end.east_m - check.start.east_m
    north_m = check.end.north_m - check.start.north_m
    grid = check.leg.grid_azimuth
    if said is not None and said.azimuth is not None:
        yield _between(east_m, north_m, said.azimuth)
        if grid is None or grid_at_odds(check) is not None:
            grid = said.azimuth
    true = check.leg.true_azimuth
    if grid is not None and true is not None:
        working: str = _plus(grid.degrees, angles.convergence_deg)
        yield SumLine(what="true_azimuth_deg", working=working, computed=angles.true(grid).degrees)
    only_true = check.leg.grid_azimuth is None and check.leg.magnetic_azimuth is None
    if true is not None and only_true and "true_azimuth_deg" not in disputed:
        # The card goes by what the plan states, not by the points.
        grid = angles.grid_from_true(true)
        working = _plus(true.degrees, -angles.convergence_deg)
        yield SumLine(what="grid_from_true_deg", working=working, computed=grid.degrees)
    if grid is not None:
        yield from _magnetic_lines(check, grid)
    elif check.leg.magnetic_azimuth is not None:
        yield from _reckoned_lines(check, check.leg.magnetic_azimuth)
    if said is not None:
        working = sentence("check-via") if check.leg.via else _root(east_m, north_m)
        yield SumLine(what="distance_m", working=working, computed=said.along_m)
    if check.paces_per_100m is not None:
        distance_m = paced_m(check)
        yield _pacing(_paced(check, distance_m), distance_m, check.paces_per_100m)


def _between(east_m: float, north_m: float, azimuth: GridAzimuth) -> SumLine:
    """Give the azimuth of a straight way between two places."""
    sides = (_side(east_m, "east", "west"), _side(north_m, "north", "south"))
    working = sentence("figure-comma", before=sides[0], last=sides[1])
    return SumLine(what="grid_azimuth_deg", working=working, computed=azimuth.degrees)


def _root(east_m: float, north_m: float) -> Sentence:
    return sentence(
        "check-root",
        east=Length(metres=abs(east_m), bare=True),
        north=Length(metres=abs(north_m), bare=True),
    )


def _pacing(told: Length | Sentence, distance_m: float, rate: float) -> SumLine:
    working = sentence("check-pacing", distance=told, rate=_Rate(per_100m=rate))
    return SumLine(what="paces", working=working, computed=distance_m * rate / 100.0)


def _paced(check: LegCheck, distance_m: float) -> Length | Sentence:
    """Give the distance that is paced as the plan states it, or as it was worked out."""
    stated = check.leg.distance_m is not None and distance_m == check.distance_m
    return told_distance(distance_m) if stated else Length(metres=distance_m)


def _magnetic_lines(check: LegCheck, grid: GridAzimuth) -> Iterator[SumLine]:
    angle_deg = check.angles.grid_magnetic_angle_deg
    magnetic = check.angles.magnetic(grid)
    yield SumLine(
        what="magnetic_azimuth_deg",
        working=turned_sum(grid.degrees, angle_deg, less=True),
        computed=magnetic.degrees,
    )
    yield _back(magnetic)


def _reckoned_lines(check: LegCheck, magnetic: MagneticAzimuth) -> Iterator[SumLine]:
    """Give what a magnetic azimuth alone leads to, where no end says another."""
    working = turned_sum(magnetic.degrees, check.angles.grid_magnetic_angle_deg, less=False)
    grid = check.angles.grid_from_magnetic(magnetic)
    yield SumLine(what="grid_azimuth_deg", working=working, computed=grid.degrees)
    yield _back(magnetic)


def _back(magnetic: MagneticAzimuth) -> SumLine:
    half_turn_deg = magnetic.back().degrees - magnetic.degrees
    return SumLine(
        what="back_magnetic_azimuth_deg",
        working=_plus(magnetic.degrees, half_turn_deg),
        computed=magnetic.back().degrees,
    )


def _given(check: LegCheck, what: str) -> float | None:
    leg = check.leg
    azimuths = {
        "grid_azimuth_deg": leg.grid_azimuth,
        "magnetic_azimuth_deg": leg.magnetic_azimuth,
        "true_azimuth_deg": leg.true_azimuth,
    }
    azimuth = azimuths.get(what)
    if azimuth is not None:
        return azimuth.degrees
    return {"distance_m": leg.distance_m, "paces": leg.paces}.get(what)


def _side(metres: float, positive: str, negative: str) -> Sentence:
    side = positive if metres >= 0.0 else negative
    return sentence(f"finding-{side}-of", size=Length(metres=abs(metres)))


def _plus(azimuth_deg: float, turn_deg: float) -> Sentence:
    return turned_sum(azimuth_deg, abs(turn_deg), less=turn_deg < 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rate(Figure):
    """Paces to a hundred of the reader's lengths, in the reader's paces."""

    per_100m: float

    def shown(self, words: Words) -> str:
        """Write "65"."""
        units = words.units
        rate = units.paces_from(self.per_100m) / units.length_from(1.0)
        return words.decimal(f"{rate:.4g}")
