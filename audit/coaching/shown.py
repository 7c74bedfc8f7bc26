"""What a walk shows, as the talk after it takes it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from audit.coaching.steps import Kind, LegSteps
from audit.diagnosis.carried_over import CarriedOver
from audit.diagnosis.finding import Finding
from audit.diagnosis.one_of_two import OneOfTwo
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.leg_card import CardPoint
from audit.measurement.leg_measures import LegAudit, LegMeasures

LogHolds = Literal["both", "set", "counted", "ends", "nothing"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """Legs in the order of the plan, and by their names what is known of them.

    Attributes
    ----------
    legs : sequence of LegAudit
    radius_m : float
        The arrival radius.
    causes, one_of : mappings
        Findings, most probable first; two mistakes that a leg does not tell apart.
    steps : mapping
        Where card, log and walk show that an error entered.
    taken : mapping
        The point at which a leg ended that was walked in another order.
    aside : set of str
        Those legs, the ones that set out from there, and those along via positions that were
        walked another way.
    carried : mapping
        The legs measured from where the one before had been plotted: what put them out is told
        of that one.
    logged : bool
        Whether the walker kept a log.
    disputed : set of str
        The legs that by the log ended elsewhere, or at another time, than they are taken to.
    log_holds : "both", "set", "counted", "ends" or "nothing"
        Of what it speaks: azimuths set, paces counted, or only when the legs ended.
    under_way : set of str
        The legs on which the walker was when the recording began: where they were begun,
        and how long they were, nobody saw.
    displaced : bool
        The whole walk lies off: where legs began, and by what they passed, is no walker's.
    scatter : WalkersScatter
        By what his ordinary legs scatter.
    shared : mapping
        By mistake that legs share, as the head tells it, their names.
    """

    legs: Sequence[LegAudit]
    radius_m: float
    causes: Mapping[str, Sequence[Finding]] = field(default_factory=dict)
    one_of: Mapping[str, OneOfTwo] = field(default_factory=dict)
    steps: Mapping[str, LegSteps] = field(default_factory=dict)
    taken: Mapping[str, CardPoint] = field(default_factory=dict)
    aside: frozenset[str] = frozenset()
    carried: Mapping[str, CarriedOver] = field(default_factory=dict)
    logged: bool = False
    disputed: frozenset[str] = frozenset()
    log_holds: LogHolds = "both"
    under_way: frozenset[str] = frozenset()
    displaced: bool = False
    scatter: WalkersScatter = field(default_factory=WalkersScatter)
    shared: Mapping[str, Sequence[str]] = field(default_factory=dict)

    @property
    def bent(self) -> frozenset[str]:
        """Give the legs of several pieces, which have no one azimuth to hold."""
        return frozenset(leg.card.name for leg in self.legs if len(leg.card.line) > 2)

    def entered(self, kind: Kind) -> set[str]:
        """Give the legs on which card or log show an error of this kind, ordinary or not."""
        return {
            name
            for name, of in self.steps.items()
            if any(hop.kind == kind and hop.over and not hop.noted for hop in of.hops)
        }

    @property
    def walked(self) -> dict[str, LegMeasures]:
        """Give the measures of the walked legs."""
        return {leg.card.name: leg.measures for leg in self.legs if leg.measures is not None}
