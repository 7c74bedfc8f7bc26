"""Every account of one leg: made for its end and held straight, made for a wrong place, bent."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.leg_evidence import LegEvidence, Metres2, StartPlot
from audit.settings import DiagnosisSettings
from audit.units import direction_degrees, turn_degrees, unit_vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """One account of where a leg was aimed and how its line was held.

    Attributes
    ----------
    cause : str or None
        The mistake in it; None for a leg aimed and held as planned.
    weight : float
        How often a leg is of this kind, times how well the shape bears it out.
    turn_deg, log_ratio : float
        What the account leaves of r and of the logarithm of q: to be explained by
        setting, compass and count.
    turn_sd_deg, log_ratio_sd : float
        Errors of measuring them, and of the account itself.
    aimed_turn_deg, aimed_log_ratio : float
        What a log of it would show: azimuth set and paces counted against the card.
    effect_m : float
        How far the account alone puts the end off.
    plotted : bool
        The place made for stood on the walker's map, so that his own card leads to it.
    wild : bool
        Nothing is said of heading and distance: some legs are matched wrong, or go wrong
        in both at once.
    plotted_m : (east, north) or None
        The place on the walker's map that it was made for, from the planned end.
    plotted_sd_m : float
        How well that place is known, per axis.
    carried : bool
        It was measured from where the leg before had put its start on the walker's map.
    """

    cause: str | None
    weight: float
    turn_deg: float
    turn_sd_deg: float
    log_ratio: float
    log_ratio_sd: float
    aimed_turn_deg: float = 0.0
    aimed_log_ratio: float = 0.0
    effect_m: float = 0.0
    plotted: bool = False
    wild: bool = False
    plotted_m: Metres2 | None = None
    plotted_sd_m: float = 0.0
    carried: bool = False


def accounts_of(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Account, ...]:
    """Give the accounts that are worth weighing; the first has no mistake in it."""
    priors = dict(settings.leg_priors)
    told: list[Account] = []
    used = 0.0
    for cause in CAUSES:
        if cause.kind not in ("place", "shape") or cause.name not in priors or leg.bent:
            continue
        ways = cause.expects(leg, settings)
        if not ways:
            continue
        used += priors[cause.name]
        told += [_account(leg, cause, way, priors[cause.name], settings) for way in ways]
    if not leg.bent and leg.leg > 0 and math.hypot(*leg.start_off_m) >= settings.start_off_m:
        told.append(_aimed_from_here(leg, settings))
        used += settings.aims_from_here
    for plot in () if leg.bent else leg.start_plots:
        told.append(_measured_from(leg, plot, settings))
        used += told[-1].weight
    elsewhere = _measured_from_elsewhere(leg, 1.0 - used, settings)
    plain = Account(
        cause=None,
        weight=1.0 - used - sum(one.weight for one in elsewhere),
        turn_deg=leg.turn_deg,
        turn_sd_deg=leg.turn_sd_deg,
        log_ratio=leg.log_ratio,
        log_ratio_sd=leg.log_ratio_sd,
    )
    wild = Account(
        cause=None,
        # Both its heading and its distance are strays, whose shares are counted in there.
        weight=settings.wild / (settings.stray_direction * settings.stray_distance),
        turn_deg=leg.turn_deg,
        turn_sd_deg=leg.turn_sd_deg,
        log_ratio=leg.log_ratio,
        log_ratio_sd=leg.log_ratio_sd,
        wild=True,
    )
    hopeful = sorted((account for account in told if _fit(account) > -18.0), key=_fit, reverse=True)
    return (plain, wild, *elsewhere, *hopeful[: settings.accounts_most])


def _fit(account: Account) -> float:
    """Say roughly how well an account explains a leg: nats, for sorting only."""
    turn = account.turn_deg / math.hypot(4.0, account.turn_sd_deg)
    length = account.log_ratio / math.hypot(0.08, account.log_ratio_sd)
    return math.log(max(account.weight, 1e-12)) - min(0.5 * turn**2, 12.0) - 0.5 * length**2


def _account(
    leg: LegEvidence, cause: Cause, way: Expected, prior: float, settings: DiagnosisSettings
) -> Account:
    weight = prior * way.weight * way.odds
    if way.shift_m is not None:
        made = _made_for(leg, way, cause.name, weight)
        if not way.plotted:
            return made
        odds = _next_leg_odds(leg, way.shift_m, settings)
        odds *= _references_odds(leg, cause.name, way.shift_m, settings)
        return replace(
            made, weight=weight * odds, plotted_m=way.shift_m, plotted_sd_m=way.shift_sd_m
        )
    sideways = leg.length_m * math.sin(math.radians(way.turn_deg)) + way.aside_m
    along = leg.length_m * math.expm1(way.log_ratio)
    return Account(
        cause=cause.name,
        weight=weight,
        turn_deg=turn_degrees(way.turn_deg, leg.turn_deg),
        turn_sd_deg=math.hypot(leg.turn_sd_deg, way.turn_sd_deg),
        log_ratio=leg.log_ratio - way.log_ratio,
        log_ratio_sd=math.hypot(leg.log_ratio_sd, way.log_ratio_sd),
        aimed_log_ratio=way.log_ratio if way.pace_follows else 0.0,
        effect_m=math.hypot(sideways, along),
    )


def _next_leg_odds(
    leg: LegEvidence, shift_m: tuple[float, float], settings: DiagnosisSettings
) -> float:
    """Say how much likelier the next leg is if this end was plotted so far off.

    From the wrong place on his map the walker measured his way to the right next one,
    so that the next leg is off by as much the other way; unless he was given it.
    """
    if leg.next_off_m is None:
        return 1.0
    spread_m = settings.next_leg_spread * leg.next_m
    east, north = leg.next_off_m
    as_planned = _density2(math.hypot(east, north), spread_m)
    from_there = _density2(math.hypot(east + shift_m[0], north + shift_m[1]), spread_m)
    anything = as_planned + settings.next_leg_stray / (math.pi * leg.next_m**2)
    carried = settings.next_leg_carried
    odds = (1.0 - carried) + carried * from_there / anything
    return min(odds, settings.next_leg_odds_most)


def _references_odds(
    leg: LegEvidence, cause: str, shift_m: tuple[float, float], settings: DiagnosisSettings
) -> float:
    """Say how far the references of the walker's own card allow a slip of plotting.

    A wrong one allows the slip that it shows, to where it lies. A right one may have been plotted
    wrong all the same, where the card's azimuth was measured from the map: that azimuth tells.
    """
    paper = leg.on_paper
    if paper is not None and paper.from_elsewhere and not paper.end_off:
        return settings.card_wrong_share
    if paper is None or paper.end_off_m is None:
        return 1.0
    if paper.slips and cause not in paper.slips:
        return settings.card_wrong_share
    if not paper.end_off:
        told = bool(paper.slips) or paper.turn_deg is not None
        return 1.0 if told else settings.card_wrong_share
    apart_m = math.hypot(shift_m[0] - paper.end_off_m[0], shift_m[1] - paper.end_off_m[1])
    room_m = math.hypot(settings.point_sd_m, 2.0 * leg.half_square_m)
    return max(math.exp(-0.5 * (apart_m / room_m) ** 2), settings.card_wrong_share)


def _density2(off_m: float, sd_m: float) -> float:
    return math.exp(-0.5 * (off_m / sd_m) ** 2) / (2.0 * math.pi * sd_m**2)


def _made_for(leg: LegEvidence, way: Expected, cause: str | None, weight: float) -> Account:
    """Take a leg as one that was made for another place than the planned end."""
    shift = way.shift_m or (0.0, 0.0)
    planned = leg.length_m * unit_vector(leg.planned_deg)
    east, north = float(planned[0]) + shift[0], float(planned[1]) + shift[1]
    length = max(math.hypot(east, north), 1.0)
    aimed = turn_degrees(leg.planned_deg, direction_degrees(east, north))
    ratio = math.log(length / leg.length_m)
    spread = way.shift_sd_m / length
    return Account(
        cause=cause,
        weight=weight,
        turn_deg=turn_degrees(aimed, leg.turn_deg),
        turn_sd_deg=math.hypot(leg.turn_sd_deg, math.degrees(spread)),
        log_ratio=leg.log_ratio - ratio,
        log_ratio_sd=math.hypot(leg.log_ratio_sd, spread),
        aimed_turn_deg=aimed,
        aimed_log_ratio=ratio,
        effect_m=math.hypot(*shift),
        plotted=way.plotted,
    )


def _measured_from_elsewhere(
    leg: LegEvidence, weight: float, settings: DiagnosisSettings
) -> tuple[Account, ...]:
    """Take a leg that the card measures from a wrong start as walked by it: no slip of its own."""
    paper = leg.on_paper
    if paper is None or not paper.from_elsewhere or paper.turn_deg is None:
        return ()
    ratio = paper.log_ratio or 0.0
    return (
        Account(
            cause=None,
            weight=weight * (1.0 - settings.card_put_right),
            turn_deg=turn_degrees(paper.turn_deg, leg.turn_deg),
            turn_sd_deg=leg.turn_sd_deg,
            log_ratio=leg.log_ratio - ratio,
            log_ratio_sd=leg.log_ratio_sd,
            aimed_turn_deg=paper.turn_deg,
            aimed_log_ratio=ratio,
            plotted=True,
        ),
    )


def _aimed_from_here(leg: LegEvidence, settings: DiagnosisSettings) -> Account:
    """Take a leg begun off its start as aimed from there at its right end: no mistake."""
    back = (-leg.start_off_m[0], -leg.start_off_m[1])
    way = Expected(shift_m=back, shift_sd_m=settings.other_point_sd_m)
    return _made_for(leg, way, None, settings.aims_from_here)


def _measured_from(leg: LegEvidence, plot: StartPlot, settings: DiagnosisSettings) -> Account:
    """Take a leg as measured from where its start was plotted: the plot's mistake, no new one.

    So is the azimuth and the distance of the card, wherever the walker then set out.
    """
    east, north = plot.shift_m
    way = Expected(shift_m=(-east, -north), shift_sd_m=plot.sd_m)
    made = _made_for(leg, way, None, plot.probability * settings.next_leg_carried)
    return replace(made, carried=True)
