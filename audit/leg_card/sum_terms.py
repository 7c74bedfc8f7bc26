"""The terms of a worked sum, with so many digits that they come to the result that is shown."""

from __future__ import annotations

from dataclasses import dataclass

from audit.units import wrap_degrees
from audit.words import Sentence, Words, sentence
from audit.words.figures import Azimuth, Figure
from audit.words.in_other_units import CIRCLE, to_place

_SAME = 1e-6


def turned_sum(azimuth_deg: float, angle_deg: float, *, less: bool) -> Sentence:
    """Write "041.5 - (-7.5)", or with a plus: an azimuth and the angle that turns it."""
    turn_deg = -angle_deg if less else angle_deg
    terms = {"azimuth_deg": azimuth_deg, "turn_deg": turn_deg}
    return sentence(
        "check-less" if less else "check-plus",
        azimuth=_Begin(**terms),
        angle=_Angle(**terms, angle_deg=angle_deg),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Term(Figure):
    """A term of the sum of an azimuth and a turn.

    Both are written to the tenth of the card. Where they are finer than that, tenths may
    come to another tenth than the result's: then they are written to one digit more.
    """

    azimuth_deg: float
    turn_deg: float

    def decimals(self, words: Words) -> int:
        """Give the decimals in degrees."""
        units = words.units
        result_deg = wrap_degrees(self.azimuth_deg + self.turn_deg)
        azimuth_deg, turn_deg, shown_deg = (
            units.as_stated(one) for one in (self.azimuth_deg, self.turn_deg, result_deg)
        )
        off = units.angle_from(azimuth_deg + turn_deg - shown_deg) % CIRCLE[units.angle]
        return 1 if min(off, CIRCLE[units.angle] - off) < _SAME else 2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Begin(_Term):
    """The azimuth that is turned."""

    def shown(self, words: Words) -> str:
        """Write "041.5"."""
        decimals = self.decimals(words)
        azimuth = Azimuth(degrees=self.azimuth_deg, degrees_decimals=decimals, of_card=True)
        return azimuth.shown(words)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Angle(_Term):
    """The angle that turns it, in brackets where it is negative."""

    angle_deg: float

    def shown(self, words: Words) -> str:
        """Write "(-7.5)"."""
        units = words.units
        place = units.stated_angle_place(-self.decimals(words))
        text = words.decimal(to_place(units.angle_from(self.angle_deg), place))
        return f"({text})" if self.angle_deg < 0.0 else text
