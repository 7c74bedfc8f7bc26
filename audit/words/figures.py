"""Figures that a sentence carries, shown in the units and the language of the reader."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from audit.moments import calendar_moment
from audit.words.in_other_units import CIRCLE, LENGTH_SIGN, to_place

if TYPE_CHECKING:
    from audit.words.spoken_words import Words


class Figure:
    """Something that is shown as words have it."""

    __slots__ = ()

    def shown(self, words: Words) -> str:
        """Write it."""
        raise NotImplementedError


@dataclass(frozen=True, slots=True, kw_only=True)
class Number(Figure):
    """A bare number to a decimal place."""

    value: float
    decimals: int = 0

    def shown(self, words: Words) -> str:
        """Write "1.25"."""
        return words.decimal(to_place(self.value, -self.decimals))


@dataclass(frozen=True, slots=True, kw_only=True)
class Length(Figure):
    """A length, no finer than its standard error bears; a stated one has none."""

    metres: float
    standard_error_m: float = 0.0
    bare: bool = False

    def shown(self, words: Words) -> str:
        """Write "111 m"."""
        units = words.units
        place = units.length_place(self.standard_error_m)
        text = to_place(units.length_from(self.metres), place)
        return text if self.bare else f"{text} {LENGTH_SIGN[units.length]}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn(Figure):
    """The size of a turn: as its half interval allows, or to a stated place in degrees."""

    degrees: float
    half_interval_deg: float | None = None
    degrees_decimals: int = 1
    signed: bool = False

    def shown(self, words: Words) -> str:
        """Write "7.2°"."""
        units = words.units
        place = units.stated_angle_place(-self.degrees_decimals)
        if self.half_interval_deg is not None:
            place = units.angle_place(self.half_interval_deg)
        size = self.degrees if self.signed else abs(self.degrees)
        text = to_place(units.angle_from(size), place).replace("-", "−")
        return f"{words.decimal(text)}{words.angle_sign()}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Azimuth(Figure):
    """An azimuth in [0, circle): as its half interval allows, or to a stated place.

    One ``of_card`` is written with leading noughts and, in degrees, without a sign, as
    on a leg card: "068.3".
    """

    degrees: float
    half_interval_deg: float | None = None
    degrees_decimals: int = 1
    of_card: bool = False

    def shown(self, words: Words) -> str:
        """Write "61°"; 359.97 to tenths is 0.0."""
        from audit.units import wrap_degrees  # noqa: PLC0415 (help needs words and no numbers)

        units = words.units
        place = units.stated_angle_place(-self.degrees_decimals)
        if self.half_interval_deg is not None:
            place = units.angle_place(self.half_interval_deg)
        value = round(units.angle_from(wrap_degrees(self.degrees)), -place)
        text = to_place(0.0 if value >= CIRCLE[units.angle] else value, place)
        digits = 4 if "mil" in units.angle else 3
        if self.of_card or digits == 4:
            whole, stop, rest = text.partition(".")
            text = f"{whole:0>{digits}}{stop}{rest}"
        sign = "" if self.of_card and units.angle == "degrees" else words.angle_sign()
        return f"{words.decimal(text)}{sign}"


@dataclass(frozen=True, slots=True, kw_only=True)
class HalfInterval(Figure):
    """Half a 95 % interval of a direction, with its leading digit."""

    degrees: float

    def shown(self, words: Words) -> str:
        """Write "±1°"."""
        units = words.units
        place = units.angle_place(self.degrees)
        least: float = 10.0**place
        size = max(least, round(units.angle_from(self.degrees), -place))
        return f"±{words.decimal(to_place(size, place))}{words.angle_sign()}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Share(Figure):
    """A probability in whole percent, short of certainty at either end."""

    share: float

    def shown(self, words: Words) -> str:
        """Write "94 %"."""
        if self.share < 0.01:
            return words.say("figure-under-one")
        if self.share > 0.99:
            return words.say("figure-over-ninety-nine")
        return f"{self.share * 100:.0f} %"


@dataclass(frozen=True, slots=True, kw_only=True)
class Percent(Figure):
    """Any share in percent."""

    share: float
    decimals: int = 0

    def shown(self, words: Words) -> str:
        """Write "1.3 %"."""
        return f"{words.decimal(to_place(self.share * 100.0, -self.decimals))} %"


@dataclass(frozen=True, slots=True, kw_only=True)
class Paces(Figure):
    """A count of paces as the walker counts them; the word is the sentence's own."""

    counted: float
    decimals: int = 0

    def shown(self, words: Words) -> str:
        """Write "474"."""
        return words.decimal(to_place(words.units.paces_from(self.counted), -self.decimals))


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment(Figure):
    """A moment in UTC; ``day`` tells its day too."""

    time_s: float
    day: bool = False

    def shown(self, words: Words) -> str:  # noqa: ARG002 (alike in all languages)
        """Write "17:36:41Z", or "2026-09-19T17:36:41Z"."""
        moment = calendar_moment(round(self.time_s)).replace(tzinfo=None)
        return f"{moment.isoformat() if self.day else moment.time().isoformat()}Z"


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed(Figure):
    """Several things in a row: "2, 3 and 5"; ``link`` is a message with the last two."""

    things: Sequence[object]
    link: str = "and"

    def shown(self, words: Words) -> str:
        """Write them."""
        texts = [words.shown(one) for one in self.things]
        if len(texts) < 2:
            return "".join(texts)
        return words.say(f"figure-{self.link}", before=", ".join(texts[:-1]), last=texts[-1])
