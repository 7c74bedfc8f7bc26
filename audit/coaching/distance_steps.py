"""The distance of a leg, step by step: given, measured, turned into paces, paced."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from audit.coaching.noted_steps import with_log_noted
from audit.coaching.steps import Hop, Step
from audit.coaching.walkers_card import OwnLeg
from audit.leg_card import CardLeg
from audit.leg_card.rounding import length_rounding
from audit.leg_card.slips import fits_sentence
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings, Settings
from audit.statistics.spread import TWO_SIDED_95
from audit.words import sentence
from audit.words.figures import Length, Paces

_STEPS: tuple[Step, ...] = (
    "given",
    "plotted",
    "distance measured",
    "turned into paces",
    "paced",
    "paced",
)
_ON_CARD, _COUNTED, _WALKED = 4, 5, 6
_HUNDREDS = (1, 2, 3)


@dataclass(frozen=True, slots=True, kw_only=True)
class DistanceStage:
    """A distance on its way from map to ground; ``reached`` steps lie behind it."""

    reached: int
    metres: float
    tolerance_m: float
    words: str


def distance_hops(
    card: CardLeg,
    own: OwnLeg | None,
    counted: float | None,
    rate: float | None,
    measures: LegMeasures,
    settings: Settings,
    *,
    ended: bool = True,
) -> list[Hop]:
    """Give the hops of a leg's distance; ``rate`` is the paces to 100 m.

    ``ended``: it was walked to where it is taken to have ended, as far as is known.
    """
    own_rate = rate if own is None else own.paces_per_100m
    stages = [
        DistanceStage(
            reached=3 if own is None else 0,
            metres=card.distance_m,
            tolerance_m=0.0,
            words=sentence("step-course-length", length=Length(metres=card.distance_m)),
        ),
        *(_own_stages(card, own, settings) if own is not None else ()),
    ]
    if own_rate:
        paces = card.paces if own is None else own.stated.paces
        if paces is not None:
            stages.append(_card_stage(paces, own_rate, settings))
    hops = [_hop(before, after, settings) for before, after in pairwise(stages)]
    before, walked = stages[-1], _walked_stage(measures, settings)
    if measures.under_way or not ended:  # how far it was walked nobody saw
        if not own_rate or counted is None:
            return hops
        return [*hops, _hop(before, _counted_stage(counted, own_rate, settings), settings)]
    past_log = _hop(before, walked, settings)
    if not own_rate or counted is None:
        return [*hops, past_log]
    noted = _counted_stage(counted, own_rate, settings)
    to_log, from_log = _hop(before, noted, settings), _hop(noted, walked, settings)
    ratio = noted.metres / max(before.metres, 1.0)
    if settings.coaching.unlikely_pace_ratio > max(ratio, 1.0 / max(ratio, 1e-6)):
        return [*hops, to_log, from_log]  # the pace of that day may have been another
    return [*hops, *with_log_noted(to_log, from_log, past_log)]


def _walked_stage(measures: LegMeasures, settings: Settings) -> DistanceStage:
    walked_m = measures.straight_m
    room_m = math.hypot(
        TWO_SIDED_95 * measures.straight_sd_m, settings.coaching.pace_length_share * walked_m
    )
    return DistanceStage(
        reached=_WALKED,
        metres=walked_m,
        tolerance_m=room_m,
        words=sentence("step-length-walked", length=Length(metres=walked_m)),
    )


def _card_stage(paces: float, rate: float, settings: Settings) -> DistanceStage:
    """Give the paces of the card as the distance they stand for."""
    metres = paces * 100.0 / rate
    room = length_rounding(paces, settings.card.pace_rounding_most) * 100.0 / rate
    return DistanceStage(
        reached=_ON_CARD,
        metres=metres,
        tolerance_m=room + settings.coaching.turned_share * metres,
        words=sentence("step-card-paces", paces=Paces(counted=paces), length=Length(metres=metres)),
    )


def _counted_stage(counted: float, rate: float, settings: Settings) -> DistanceStage:
    """Give the paces of the log as the distance they stand for."""
    metres = counted * 100.0 / rate
    return DistanceStage(
        reached=_COUNTED,
        metres=metres,
        tolerance_m=settings.coaching.counted_share * metres,
        words=sentence("step-counted", paces=Paces(counted=counted), length=Length(metres=metres)),
    )


def _own_stages(card: CardLeg, own: OwnLeg, settings: Settings) -> list[DistanceStage]:
    stages = []
    if own.start is not None and own.end is not None and len(card.line) == 2:
        metres = math.hypot(own.end.east_m - own.start.east_m, own.end.north_m - own.start.north_m)
        room_m = own.start.half_square_m + own.end.half_square_m
        room_m += card.start.half_square_m + card.end.half_square_m
        # The course's own distance may be written, and then rounded.
        room_m += length_rounding(card.distance_m, settings.card.distance_rounding_most_m)
        room_m += 2.0 * settings.coaching.written_again_m
        words = sentence("step-between-own", length=Length(metres=metres))
        stages.append(DistanceStage(reached=1, metres=metres, tolerance_m=room_m, words=words))
    given_m = own.stated.distance_m
    if given_m is not None:
        room_m = length_rounding(given_m, settings.card.distance_rounding_most_m)
        stages.append(
            DistanceStage(
                reached=3,
                metres=given_m,
                tolerance_m=room_m + settings.coaching.measured_distance_share * given_m,
                words=sentence("step-card-length", length=Length(metres=given_m)),
            )
        )
    return stages


def _hop(before: DistanceStage, after: DistanceStage, settings: Settings) -> Hop:
    error_m = after.metres - before.metres
    over = abs(error_m) > after.tolerance_m
    slips = _slips(before, after, error_m, settings.coaching) if over else {}
    fits = fits_sentence(list(slips.values()), link="or")
    steps = tuple(dict.fromkeys(_STEPS[before.reached : after.reached]))
    if "distance measured" in steps and "wrong-ruler" in slips:
        steps = ("distance measured",)
    return Hop(
        steps=steps,
        kind="distance",
        error=error_m,
        tolerance=after.tolerance_m,
        off_m=abs(error_m),
        slips=tuple(slips),
        written=after.reached <= _COUNTED,
        unlikely=over and before.reached >= _COUNTED and not slips,
        sentence=sentence(
            "step-more" if error_m > 0.0 else "step-less",
            after=after.words,
            size=Length(metres=abs(error_m)),
            before=before.words,
            fits=fits,
        ),
    )


def _slips(
    before: DistanceStage, after: DistanceStage, error_m: float, settings: CoachingSettings
) -> dict[str, str]:
    """Give the slips that fit, in words by their names.

    Who loses a hundred in counting believes to have counted them all, and notes what his card
    says: a number of the log that differs from the card's was counted so.
    """
    ratio = after.metres / max(before.metres, 1.0)
    room = after.tolerance_m
    near_m = min(room, settings.near_hundred_m)
    hundreds = round(error_m / 100.0)
    slips: dict[str, str] = {}
    doubled = any(abs(after.metres - factor * before.metres) <= room for factor in (0.5, 2.0))
    if doubled and after.reached == 3:
        slips["wrong-ruler"] = sentence("slip-another-scale")
    elif doubled:
        slips["single-double-pace"] = sentence("slip-single-double")
    elif (before.reached, after.reached) == (_ON_CARD, _COUNTED):
        pass
    elif abs(hundreds) in _HUNDREDS and abs(error_m - 100.0 * hundreds) <= near_m:
        way = "many" if hundreds > 0 else "lost"
        slips["hundred-miscounted"] = sentence(f"slip-hundreds-{way}", count=abs(hundreds))
    unlikely = max(ratio, 1.0 / max(ratio, 1e-6)) >= settings.unlikely_pace_ratio
    if not (doubled or unlikely) and before.reached >= _COUNTED:
        name = "pace-long" if ratio > 1.0 else "pace-short"
        slips[name] = sentence("slip-pace-long" if ratio > 1.0 else "slip-pace-short")
    return slips
