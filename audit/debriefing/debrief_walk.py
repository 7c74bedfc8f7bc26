"""The pipeline of one walk: plan and recording in, finished debrief out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from audit.coaching.card_on_paper import on_paper
from audit.coaching.talk_over import AgainstLog, TalkedOver, talk_over
from audit.coaching.walkers_card import beside_course
from audit.coaching.what_if import what_if
from audit.debriefing.another_course import called_off
from audit.debriefing.days_and_watches import ended_at_another_time, notes_of_days
from audit.debriefing.doubts import doubts
from audit.debriefing.ended_by_log import EndedByLog, ended_by_log, told_less_sure
from audit.debriefing.far_walks import refuse_far_walk
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.debriefing.forecast_of_leg import forecast_of_leg
from audit.debriefing.given_by_path import check_plan_and_track, given_card, given_log
from audit.debriefing.log_counts import without_slips_of_the_pen
from audit.debriefing.log_legs import with_legs_by_number
from audit.debriefing.log_norths import with_magnetic_azimuths, without_another_north
from audit.debriefing.noted_by_log import matched_with_log
from audit.debriefing.on_no_leg import on_no_leg
from audit.debriefing.order_told import with_order_told
from audit.debriefing.pinned_moments import Moment, read_pins
from audit.debriefing.quality import judge_quality
from audit.debriefing.tried_before import tried_before, with_first_tries
from audit.debriefing.walk_day import refuse_unset_day, track_date
from audit.diagnosis.displaced import (
    displaced,
    displaced_words,
    pairs_without_wrong_start,
    without_wrong_start,
)
from audit.diagnosis.explain import Explanation, explain_walk
from audit.diagnosis.gather_evidence import WalkFacts, gather_evidence
from audit.diagnosis.ground import fall_line
from audit.diagnosis.left_out import explain_left_out
from audit.diagnosis.on_paper import OnPaper
from audit.diagnosis.order_of_passing import OrdersOfPassing
from audit.errors import refuse
from audit.forecast.place_of_miss import MissInForecast
from audit.leg_card import LegCard, work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.free_order import match_free_order
from audit.matching.leg_match import CleanTrack
from audit.matching.outings import MatchedOuting, match_outings
from audit.matching.pins import Pin
from audit.measurement.leg_measures import LegAudit
from audit.measurement.measure_walk import WalkMeasures, measure_walk
from audit.one_thread import on_one_thread
from audit.plan import Plan
from audit.settings import Settings
from audit.track import Track
from audit.units import FloatArray
from audit.walkers_log import WalkersLog

HeightsOnGrid = Callable[[str, FloatArray], FloatArray]


@on_one_thread
def debrief(  # noqa: PLR0913 (what may be known beside plan and recording)
    plan: Plan,
    track: Track,
    *,
    log: WalkersLog | str | Path | None = None,
    own_card: Plan | str | Path | None = None,
    starts: Mapping[str, Moment] | None = None,
    claims: Mapping[str, Moment] | None = None,
    heights: HeightsOnGrid | None = None,
    settings: Settings | None = None,
) -> Debrief:
    """Set a recorded walk against its plan.

    Parameters
    ----------
    plan, track
        As `read_plan` and `read_track` give them.
    log
        What the walker noted: azimuths set, paces counted; or the path of its file.
    own_card
        The plan as the walker wrote it, where that is known: which step went wrong. Of a
        path, its file may name the plan's points without their positions.
    starts, claims
        By name of leg, when the walker left for it and when he claimed its end, where
        somebody knows: clock times of that day in UTC ("09:15"), ISO 8601, or datetimes.
        The rest is matched around them.
    heights
        Of a grid's code and places on it, shape (n, 2): heights in metres, NaN where none
        are known. In place of the recording's own for the ground of the legs, and for what
        slopes do to a walk.
    settings
        Thresholds; the defaults of `Settings` where left out.

    Raises
    ------
    InputRefusedError
        The walk never comes near the course, no declination can be had for its date, or
        a start or claim cannot be what it is said to be.
    TypeError
        Where plan or recording are not read yet.
    """
    check_plan_and_track(plan, track)
    settings = settings or Settings()
    noted, own = given_log(log, settings), given_card(own_card, plan, settings)
    refuse_unset_day(plan, track)
    card = work_out_card(plan, track_date=track_date(track), settings=settings)
    noted = None if noted is None else _log_of_card(noted, card, settings)
    clean = _cleaned(track, card, settings)
    pins = read_pins(starts or {}, claims or {}, card, clean, track.source, settings.matching)
    card, outing, clean = _matched(clean, card, noted, settings, pins, track.source)
    by_log = ended_by_log(noted, card, outing.match, clean, settings)
    outing = replace(outing, match=told_less_sure(outing.match, by_log, settings))
    on_ground = _on_the_ground(clean, card, heights)
    laid = None if own is None else beside_course(card, own, plan)
    papers = {} if laid is None else on_paper(card, laid.legs, settings)
    noted, measured = _measured(track, on_ground, outing, card, noted, papers, settings)
    orders = OrdersOfPassing(measured.legs, card, clean)
    explanation = _explained(on_ground, measured, card, noted, papers, orders, settings)
    against = _against_log(card, by_log, clean, noted, measured.legs, settings)
    talk = talk_over(
        card, measured, explanation, against, log=noted, own_card=laid, settings=settings
    )
    doubtful = doubts(card, measured.match, clean, settings.quality, by_log)
    quality = judge_quality(track, clean, outing, measured, doubtful, settings.quality, noted)
    tries = tried_before(measured, clean, settings.quality)
    doubtful = with_first_tries(doubtful, tries)
    days = notes_of_days(card, clean, noted, measured.legs, settings.quality, against.ended, outing)
    return Debrief(
        card=card,
        quality=replace(quality, notes=(*quality.notes, *days, *talk.notes)),
        clean=clean,
        match=measured.match,
        legs=_legs(measured, explanation, doubtful, talk, card, noted, settings),
        spans=measured.spans,
        stories=explanation.stories,
        paces=measured.paces,
        coaching=talk.coaching,
        settings=settings,
        on_no_leg=on_no_leg(measured, card, clean, orders, settings.quality),
        displaced=_displaced(explanation, measured),
        tried_before=tries,
    )


def _log_of_card(log: WalkersLog, card: LegCard, settings: Settings) -> WalkersLog:
    """Give the log in the terms of the card: its legs, its north, and counts that are paced."""
    log = with_magnetic_azimuths(with_legs_by_number(log, card), card.angles)
    return without_slips_of_the_pen(log, card, settings.reading)


def _measured(
    track: Track,
    clean: CleanTrack,
    outing: MatchedOuting,
    card: LegCard,
    log: WalkersLog | None,
    papers: Mapping[str, OnPaper],
    settings: Settings,
) -> tuple[WalkersLog | None, WalkMeasures]:
    """Measure the walk; again where its measures show that the log is of another north."""
    measure = partial(
        measure_walk, clean, outing.sampled, outing.match, card, settings,
        cadence_per_min=track.cadence_per_min[clean.fix],
    )  # fmt: skip
    measured = measure(log=log)
    if log is None:
        return None, measured
    by_needle = without_another_north(log, card, papers, measured.legs, settings.quality)
    return by_needle, measured if by_needle is log else measure(log=by_needle)


def _legs(
    measured: WalkMeasures,
    explanation: Explanation,
    doubtful: Mapping[int, str],
    talk: TalkedOver,
    card: LegCard,
    log: WalkersLog | None,
    settings: Settings,
) -> tuple[LegDebrief, ...]:
    """Put together what is known of each leg, in the order of the plan."""
    words = {} if log is None else {entry.leg: entry.note for entry in log.entries}
    forecasts = _forecasts(measured, card, settings)
    return tuple(
        LegDebrief(
            audit=leg,
            causes=explanation.findings.get(number, ()),
            one_of=explanation.one_of.get(number),
            carried_from=_carried_from(number, explanation, card),
            portion=measured.match.legs[number],
            doubt=doubtful.get(number),
            steps=talk.steps.get(leg.card.name),
            what_if=what_if(leg.card, leg.measures),
            forecast=forecasts.get(number),
            noted=words.get(leg.card.name, ""),
            scatter=explanation.scatter,
            settings=settings,
        )
        for number, leg in enumerate(measured.legs)
    )


def _carried_from(number: int, explanation: Explanation, card: LegCard) -> str | None:
    """Name the leg from whose wrong plot this one was measured: the one before, in plan order."""
    return card.legs[number - 1].name if number in explanation.carried else None


def _against_log(
    card: LegCard,
    by_log: Mapping[int, EndedByLog],
    clean: CleanTrack,
    log: WalkersLog | None,
    legs: Sequence[LegAudit],
    settings: Settings,
) -> AgainstLog:
    """Name the legs that the log ends elsewhere, and with them those it ends at another time."""
    ended = frozenset(card.legs[leg].name for leg in by_log)
    at_another_time = ended_at_another_time(clean, log, legs, settings.quality)
    return AgainstLog(ended=ended, disputed=ended | at_another_time)


def _displaced(explanation: Explanation, measured: WalkMeasures) -> str:
    shared = explanation.displaced
    names = [leg.card.name for leg in measured.legs]
    return "" if shared is None else displaced_words(shared, names)


def _forecasts(
    measured: WalkMeasures, card: LegCard, settings: Settings
) -> dict[int, MissInForecast]:
    """Hold each miss against the forecast of its leg; one begun before the recording has none."""
    begun = {leg.leg for leg in measured.match.legs if leg.under_way}
    return {
        number: forecast_of_leg(leg.card, leg.measures, card.arrival_radius_m, settings.forecast)
        for number, leg in enumerate(measured.legs)
        if leg.measures is not None and number not in begun
    }


def _on_the_ground(clean: CleanTrack, card: LegCard, heights: HeightsOnGrid | None) -> CleanTrack:
    """Give the track with the heights of the ground under it, where somebody has them."""
    if heights is None:
        return clean
    return replace(clean, elevation_m=heights(card.grid.code, clean.places()))


def _explained(
    clean: CleanTrack,
    measured: WalkMeasures,
    card: LegCard,
    log: WalkersLog | None,
    papers: Mapping[str, OnPaper],
    orders: OrdersOfPassing,
    settings: Settings,
) -> Explanation:
    """Weigh the causes on what was measured, on own card and log, and on the ground."""
    match, log = measured.match, log or WalkersLog(entries=())
    facts = WalkFacts(
        azimuths_set=log.azimuths_set(),
        paces_counted=log.counted_paces(),
        on_paper=papers,
        under_way=frozenset(leg.leg for leg in match.legs if leg.under_way),
        noise_m=match.noise_m,
        fall=fall_line(clean, settings.diagnosis),
    )
    evidence = gather_evidence(measured.legs, card, facts, settings.diagnosis)
    explanation = explain_walk(evidence, settings.diagnosis)
    left_out = explain_left_out(measured.legs, card, clean, match, orders, settings.diagnosis)
    findings = explanation.findings | left_out
    shared, one_of = displaced(measured.legs, settings.diagnosis), explanation.one_of
    if shared is not None:
        findings = without_wrong_start(findings, shared, [leg.card.name for leg in measured.legs])
        one_of = pairs_without_wrong_start(one_of)
    return replace(explanation, findings=findings, one_of=one_of, displaced=shared)


def _matched(
    clean: CleanTrack,
    card: LegCard,
    log: WalkersLog | None,
    settings: Settings,
    pins: tuple[Pin, ...],
    source: str,
) -> tuple[LegCard, MatchedOuting, CleanTrack]:
    """Match the walk; the card is in the order walked, where that is free.

    The track has the usual interval of the outing: of another day it may be another.
    """
    if card.order != "free":
        outing = match_outings(clean, card, settings.matching, pins)
        outing = matched_with_log(outing, card, log, settings, pins)
        outing = replace(outing, match=called_off(outing.match, clean, card, settings.quality))
        return card, outing, clean.at_the_interval_of(outing.sampled.clean)
    free = match_free_order(clean, card, settings.matching, pins)
    if not {pin.leg for pin in pins} <= set(free.odds.order):
        rule = "cannot be kept together with the others in any order of the points"
        raise refuse(source, f"option {pins[0].end}", None, rule, "Look at the times again.")
    match = called_off(free.outing.match, clean, card, settings.quality)
    if match is not free.outing.match:
        free = replace(free, outing=replace(free.outing, match=match), visited=0)
    told = with_order_told(free, card, settings.quality)
    return told, free.outing, clean.at_the_interval_of(free.outing.sampled.clean)


def _cleaned(track: Track, card: LegCard, settings: Settings) -> CleanTrack:
    """Clean a track, and refuse what holds no walk of this course."""
    clean = clean_track(track, card.grid, settings.cleaning)
    if len(clean) < 2:
        raise refuse(
            track.source,
            "",
            f"{len(clean)} usable fix",
            "is no walk",
            "Give the recording of a whole walk.",
        )
    refuse_far_walk(track, clean, card, settings.matching)
    return clean
