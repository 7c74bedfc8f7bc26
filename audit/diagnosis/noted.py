"""How likely what stands on paper is, the walker's card and his log, had a mistake been made.

A card is exact: what it shows right was not made wrong on paper, and what it shows wrong no
bearing and no count on foot has to explain.
"""

from __future__ import annotations

import math

from audit.diagnosis.accounts import Account
from audit.diagnosis.cause import Expected, LengthTrace, TurnTrace
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees

_ROOT = math.sqrt(2.0 * math.pi)


def turn_noted(
    leg: LegEvidence, account: Account, way: Expected, settings: DiagnosisSettings
) -> float:
    """Say how likely the azimuths of card and log are."""
    paper = leg.on_paper
    if paper is None or paper.turn_deg is None:
        if leg.set_turn_deg is None:
            return 1.0
        near = sum(
            often
            * _near(
                turn_degrees(account.aimed_turn_deg + noted_deg, leg.set_turn_deg),
                _setting_sd(leg, settings),
            )
            for noted_deg, often in way.noted_deg
        )
        return _log_or_else(near, settings)
    return sum(
        trace.share
        * _card_of_turn(leg, account, trace, settings)
        * _log_past_card(leg, account, trace, settings)
        for trace in way.turn_traces
    )


def turn_noted_by_something(leg: LegEvidence, settings: DiagnosisSettings) -> float:
    """Say the same where something else turned the leg: on paper, at the compass or on foot."""
    paper = leg.on_paper
    said, set_deg = 1.0, leg.set_turn_deg
    if paper is not None and paper.turn_deg is not None:
        right = _near(paper.turn_deg, _card_sd(leg, settings))
        said = settings.card_right_share * right + (1.0 - settings.card_right_share) / 360.0
        set_deg = None if set_deg is None else turn_degrees(paper.turn_deg, set_deg)
    if set_deg is None:
        return said
    return said * (0.5 * _near(set_deg, _setting_sd(leg, settings)) + 0.5 / 360.0)


def length_noted(
    leg: LegEvidence, account: Account, way: Expected, settings: DiagnosisSettings
) -> float:
    """Say how likely the distance of the card and the count of the log are."""
    paper = leg.on_paper
    if paper is None or paper.log_ratio is None:
        return _log_of_count(leg, account, way, account.aimed_log_ratio, settings)
    planned = paper.log_ratio + (0.0 if account.plotted else account.aimed_log_ratio)
    return sum(
        trace.share
        * _card_of_length(leg, account, trace, settings)
        * _log_of_count(leg, account, way, planned, settings)
        for trace in way.length_traces
    )


def length_noted_by_something(leg: LegEvidence, settings: DiagnosisSettings) -> float:
    """Say the same where something else put the distance out."""
    said, counted, paper = 1.0, leg.log_count_ratio, leg.on_paper
    if paper is not None and paper.log_ratio is not None:
        right = _near(paper.log_ratio, _length_sd(leg, settings))
        anything = (1.0 - settings.card_right_share) / settings.stray_distance_width
        said = settings.card_right_share * right + anything
        counted = None if counted is None else counted - paper.log_ratio
    if counted is None:
        return said
    return said * (0.25 * _near(counted, settings.log_count_sd) + 0.5)


def _card_of_turn(
    leg: LegEvidence, account: Account, trace: TurnTrace, settings: DiagnosisSettings
) -> float:
    """Say how likely the card's azimuths are: measured off the map, then turned by a sum."""
    paper = leg.on_paper
    if paper is None:
        return 1.0
    measured_deg = trace.measured_deg + (account.aimed_turn_deg if account.plotted else 0.0)
    whole = _card_sd(leg, settings)
    if paper.grid_turn_deg is None or paper.magnetic_turn_deg is None:
        both = paper.grid_turn_deg is None
        expected = measured_deg + (trace.converted_deg if both else 0.0)
        near = _near(turn_degrees(expected, paper.turn_deg or 0.0), whole)
        return _card_or_else(leg, near, 1.0 / 360.0, settings)
    by_sum = turn_degrees(paper.grid_turn_deg, paper.magnetic_turn_deg)
    sum_sd = math.hypot(settings.card_sum_sd_deg, paper.rounding_deg)
    measured = _near(turn_degrees(measured_deg, paper.grid_turn_deg), whole)
    summed = _near(turn_degrees(trace.converted_deg, by_sum), sum_sd)
    return _card_or_else(leg, measured, 1.0 / 360.0, settings) * _card_or_else(
        leg, summed, 1.0 / 360.0, settings
    )


def _log_past_card(
    leg: LegEvidence, account: Account, trace: TurnTrace, settings: DiagnosisSettings
) -> float:
    """Say how likely the setting of the log is, counted from the azimuth of the card."""
    paper = leg.on_paper
    if leg.set_turn_deg is None or paper is None or paper.turn_deg is None:
        return 1.0
    on_card = trace.measured_deg
    if paper.magnetic_turn_deg is not None:
        on_card += trace.converted_deg
    aside = trace.noted_deg - on_card + (0.0 if account.plotted else account.aimed_turn_deg)
    off = turn_degrees(paper.turn_deg + aside, leg.set_turn_deg)
    return _log_or_else(_near(off, _setting_sd(leg, settings)), settings)


def _card_of_length(
    leg: LegEvidence, account: Account, trace: LengthTrace, settings: DiagnosisSettings
) -> float:
    paper = leg.on_paper
    if paper is None or paper.log_ratio is None:
        return 1.0
    expected = trace.log_ratio + (account.aimed_log_ratio if account.plotted else 0.0)
    near = _near(paper.log_ratio - expected, _length_sd(leg, settings))
    return _card_or_else(leg, near, 1.0 / settings.stray_distance_width, settings)


def _log_of_count(
    leg: LegEvidence,
    account: Account,
    way: Expected,
    planned: float,
    settings: DiagnosisSettings,
) -> float:
    """Say how likely the paces of the log are; ``planned`` is what was to be counted."""
    if leg.log_count_ratio is None:
        return 1.0
    wrong, sd = settings.log_wrong_share, settings.log_count_sd
    walked = account.aimed_log_ratio + account.log_ratio
    as_planned = _near(leg.log_count_ratio - planned, sd)
    followed = _near(leg.log_count_ratio - walked, math.hypot(sd, settings.own_pace_sd))
    if way.pace_follows:
        near = followed
    elif way.log_ratio == 0.0:
        # Who sees the point stops before his count; who goes on past it makes a mistake, and so
        # does who clearly breaks it off where the point is not to be seen.
        more = leg.log_count_ratio > planned
        share = settings.log_goes_on if more else settings.log_stops_early
        broken_off = planned - leg.log_count_ratio > 2.0 * sd
        unseen = broken_off and not (leg.arrived or leg.walked_up)
        off = settings.log_goes_on if unseen else share
        near = (1.0 - share) * as_planned + off * followed
    else:
        near = as_planned
    return (1.0 - wrong) * near + wrong


def _setting_sd(leg: LegEvidence, settings: DiagnosisSettings) -> float:
    return math.hypot(settings.log_setting_sd_deg, leg.set_rounding_deg)


def _card_sd(leg: LegEvidence, settings: DiagnosisSettings) -> float:
    rounding_deg = 0.0 if leg.on_paper is None else leg.on_paper.rounding_deg
    return math.hypot(settings.card_measured_sd_deg, rounding_deg)


def _length_sd(leg: LegEvidence, settings: DiagnosisSettings) -> float:
    rounding = 0.0 if leg.on_paper is None else leg.on_paper.rounding_ratio
    return math.hypot(settings.card_distance_sd, rounding)


def _log_or_else(near: float, settings: DiagnosisSettings) -> float:
    wrong = settings.log_wrong_share
    return (1.0 - wrong) * near + wrong / 360.0


def _card_or_else(
    leg: LegEvidence, near: float, anything: float, settings: DiagnosisSettings
) -> float:
    """Allow that the card was not gone by, the sooner where the leg ended at its point."""
    wrong = settings.card_put_right if leg.arrived else settings.card_wrong_share
    return (1.0 - wrong) * near + wrong * anything


def _near(off: float, sd: float) -> float:
    return math.exp(-0.5 * (off / sd) ** 2) / (sd * _ROOT)
