"""What a cause is: a name of the catalogue, and what a leg would show had it been made."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.words import Sentence, sentence

CauseKind = Literal["turn", "length", "place", "shape", "behaviour"]
"""What a cause changes: the heading, the distance, where the walker made for, how the line
was held, or which points were gone to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnTrace:
    """What a turn leaves in the card's grid azimuth, by the sum after it, and in the log."""

    measured_deg: float
    converted_deg: float
    noted_deg: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthTrace:
    """What a wrong distance leaves on the walker's card, and how often."""

    log_ratio: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Expected:
    """One way in which a leg would show a mistake.

    Attributes
    ----------
    weight : float
        How often the mistake shows in this way; all ways of a cause add up to 1, or to
        less where some of them cannot be on this leg.
    turn_deg, turn_sd_deg : float
        r, clockwise positive, and its spread beyond the walker's own scatter.
    log_ratio, log_ratio_sd : float
        Logarithm of distance walked over planned, and its spread.
    in_metres : bool
        It is so many metres of the planned distance: as many, not as large a share, of a leg
        that was made for a place nearer or further.
    shift_m : (east, north) or None
        The walker made for a place this far from the planned end.
    shift_sd_m : float
        How well that place is known, per axis.
    plotted : bool
        That place stood on the walker's map, so that he measured the next leg from it.
    aside_m : float
        How far right of its line the leg was left by going round what stood in the way;
        the measured heading leaves such ways out.
    odds : float
        How much likelier the shape of the walked line is than without the mistake.
    pace_follows : bool
        The walker counted what he walked, so that the paces in his log are as far off
        as the distance; False where he believed to have walked the planned distance.
    logged : float
        How often a log shows the turn: 1 where the walker knew the azimuth that he set, 0
        where he believed to have set the card's and wrote down that.
    logged_past_card : float or None
        The same where the walker's own card does not show the turn; None: as often.
    measured, converted : float
        How often the walker's own card shows it: as it was measured off the map (the distance,
        for a distance: its paces too), or by the sum that makes the azimuth magnetic.
    in_log : tuple of (turn, share)
        Of two mistakes at once: what a log shows beside the card's azimuth, and how often.
    traces : tuple of TurnTrace, and tuple of LengthTrace
        The same of what own card and log show.
    """

    weight: float = 1.0
    turn_deg: float = 0.0
    turn_sd_deg: float = 0.0
    log_ratio: float = 0.0
    log_ratio_sd: float = 0.0
    in_metres: bool = False
    shift_m: tuple[float, float] | None = None
    shift_sd_m: float = 0.0
    plotted: bool = False
    aside_m: float = 0.0
    odds: float = 1.0
    pace_follows: bool = False
    logged: float = 1.0
    logged_past_card: float | None = None
    measured: float = 0.0
    converted: float = 0.0
    in_log: tuple[tuple[float, float], ...] = ()
    traces: tuple[tuple[TurnTrace, ...], tuple[LengthTrace, ...]] = ((), ())

    @property
    def noted_deg(self) -> tuple[tuple[float, float], ...]:
        """What a log shows beside the card's azimuth, and how often each: it adds up to 1."""
        return self.in_log or ((self.turn_deg, self.logged), (0.0, 1.0 - self.logged))

    @property
    def turn_traces(self) -> tuple[TurnTrace, ...]:
        """What own card and log show of the turn: what stands on the card is set and noted."""
        if self.traces[0]:
            return self.traces[0]
        turn, off = self.turn_deg, 1.0 - self.measured - self.converted
        logged = self.logged if self.logged_past_card is None else self.logged_past_card
        shown = (
            (turn, 0.0, turn, self.measured),
            (0.0, turn, turn, self.converted),
            (0.0, 0.0, turn, off * logged),
            (0.0, 0.0, 0.0, off * (1.0 - logged)),
        )
        return tuple(
            TurnTrace(measured_deg=on_map, converted_deg=by_sum, noted_deg=noted, share=share)
            for on_map, by_sum, noted, share in shown
            if share > 0.0
        )

    @property
    def length_traces(self) -> tuple[LengthTrace, ...]:
        """What the walker's own card shows of the distance."""
        if self.traces[1]:
            return self.traces[1]
        shown = ((self.log_ratio, self.measured), (0.0, 1.0 - self.measured))
        return tuple(LengthTrace(log_ratio=of, share=share) for of, share in shown if share > 0.0)

    def beside(self, shared: Expected) -> Expected:
        """Give this way of a slip on a leg that shows a mistake of the whole walk as well."""
        return replace(
            self,
            turn_deg=self.turn_deg + shared.turn_deg,
            turn_sd_deg=math.hypot(self.turn_sd_deg, shared.turn_sd_deg),
            log_ratio=self.log_ratio + shared.log_ratio,
            log_ratio_sd=math.hypot(self.log_ratio_sd, shared.log_ratio_sd),
            in_log=tuple(
                (own + other, often * share)
                for own, often in self.noted_deg
                for other, share in shared.noted_deg
            ),
            traces=(_both_turns(self, shared), _both_lengths(self, shared)),
        )


def _both_turns(slip: Expected, shared: Expected) -> tuple[TurnTrace, ...]:
    return tuple(
        TurnTrace(
            measured_deg=own.measured_deg + other.measured_deg,
            converted_deg=own.converted_deg + other.converted_deg,
            noted_deg=own.noted_deg + other.noted_deg,
            share=own.share * other.share,
        )
        for own in slip.turn_traces
        for other in shared.turn_traces
    )


def _both_lengths(slip: Expected, shared: Expected) -> tuple[LengthTrace, ...]:
    return tuple(
        LengthTrace(log_ratio=own.log_ratio + other.log_ratio, share=own.share * other.share)
        for own in slip.length_traces
        for other in shared.length_traces
    )


Expects = Callable[[LegEvidence, DiagnosisSettings], tuple[Expected, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """A mistake of the catalogue.

    Attributes
    ----------
    name : str
        As in the catalogue of causes.
    kind : CauseKind
    expects : function
        Of a leg's evidence and the settings: every way in which the leg would show the
        mistake; none where it would show nothing or is not defined.
    """

    name: str
    kind: CauseKind
    expects: Expects

    @property
    def settles(self) -> Sentence:
        """What would tell it from its look-alikes."""
        return sentence(f"settle-{self.name}")
