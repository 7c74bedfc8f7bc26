"""The ten steps from a point given to a point recognised, and what each did on one leg."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Step = Literal[
    "given",
    "plotted",
    "measured",
    "converted",
    "set",
    "walked",
    "distance measured",
    "turned into paces",
    "paced",
    "recognised",
]
"""In the order in which a leg is worked: the ten gates of common practice."""

Kind = Literal["direction", "distance", "point"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Hop:
    """From one known number to the next one known, and the steps that lie between.

    Attributes
    ----------
    steps : tuple of Step
        More than one where the numbers between them are not known.
    kind : "direction", "distance" or "point"
    error : float
        What was added on the way: degrees clockwise, or metres.
    tolerance : float
        What is ordinary there, in the same unit.
    off_m : float
        How far off the error alone leads at the end of the leg.
    slips : tuple of str
        Names of the slips that fit.
    sentence : str
        The numbers, the error and what it fits.
    ordinary : bool
        All legs weighed together, it is ordinary for this walker, be it over the tolerance.
    in_sight : bool
        So it is called, though he scatters by less: the walk ended at the point, before the
        count was out.
    noted : bool
        Only the log says so, and the walk shows nothing of it.
    made_good : bool
        It leads past the point, and the leg ended there: another error undid it, or the point
        was seen.
    carried : bool
        It is inherited: the leg was measured from where the one before had been plotted.
    written : bool
        The numbers before and after are both written down: no scatter of the walk is in it.
    unlikely : bool
        No walker counts so wrong, and no slip fits: the number, or the part of the walk, is
        in doubt.
    """

    steps: tuple[Step, ...]
    kind: Kind
    error: float
    tolerance: float
    off_m: float
    slips: tuple[str, ...]
    sentence: str
    ordinary: bool = False
    in_sight: bool = False
    made_good: bool = False
    noted: bool = False
    carried: bool = False
    written: bool = False
    unlikely: bool = False

    @property
    def over(self) -> bool:
        """Whether the error is more than the tolerance."""
        return abs(self.error) > self.tolerance

    @property
    def entered(self) -> bool:
        """Whether an error entered here: not ordinary, nor carried over, nor in the log alone."""
        aside = self.ordinary or self.noted or self.carried or self.unlikely
        return self.over and not aside


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSteps:
    """The steps of one leg, as far as card, log and recording show them.

    ``sentences`` say where an error entered, the one that leads furthest off first.
    """

    leg: str
    hops: tuple[Hop, ...]
    sentences: tuple[str, ...]

    @property
    def entered(self) -> tuple[Step, ...]:
        """Give the steps at which an error entered, where the step can be told."""
        return tuple(hop.steps[0] for hop in self.hops if hop.entered and len(hop.steps) == 1)
