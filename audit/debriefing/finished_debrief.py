"""The finished debrief: one frozen tree that every report only walks."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from audit.coaching.steps import LegSteps
from audit.coaching.talk import Coaching
from audit.coaching.what_if import WhatIf
from audit.debriefing.document import DebriefDocument, debrief_document
from audit.debriefing.frames import cross_track_frame, legs_frame
from audit.debriefing.on_no_leg import OnNoLeg
from audit.debriefing.tried_before import TriedBefore
from audit.diagnosis.finding import Finding, WalkFinding
from audit.diagnosis.one_of_two import OneOfTwo
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.forecast.place_of_miss import MissInForecast
from audit.leg_card import CardPoint, LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.leg_measures import LegAudit, Span
from audit.measurement.paces_of_walk import WalkPaces
from audit.measurement.receiver_noise import ReceiverNoise
from audit.settings import Settings

if TYPE_CHECKING:
    import pandas as pd


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackQuality:
    """What the recording is worth.

    Attributes
    ----------
    fixes : int
        In the recording, before cleaning.
    start_s, end_s, median_interval_s : float or None
        None in a recording without times.
    noise_m : float
        Receiver noise, standard deviation per axis.
    noise_from : str
        What the noise was estimated from.
    notes : tuple of str
        Everything to know before trusting the figures, one sentence each.
    noise : ReceiverNoise or None
        The noise with its errors, and how long the receiver keeps an error.
    elsewhere : str
        That the walk may be of another course; "" where it is of this one.
    """

    source: str
    fixes: int
    start_s: float | None
    end_s: float | None
    median_interval_s: float | None
    noise_m: float
    noise_from: str
    notes: tuple[str, ...]
    noise: ReceiverNoise | None = None
    elsewhere: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegDebrief:
    """One leg: the card, what was walked, and the causes, most probable first.

    Attributes
    ----------
    carried_from : str or None
        The leg before, where this one was measured from its wrong plot, with no mistake of its
        own.
    portion : LegMatch or None
        Which part of the walk it has, and the likeliest other one.
    one_of : OneOfTwo or None
        Two mistakes of which one was made, where neither is sure enough to be named alone.
    doubt : str or None
        Both readings in words, and how to settle it, where the first is not sure.
    forecast : MissInForecast or None
        Where in the forecast of an ordinary walker the miss lies; None unless walked, and
        where the recording began on the way.
    noted : str
        What the walker wrote beside the leg in his log, in his own words; "" without any.
    scatter : WalkersScatter
        By what the walker's ordinary legs scatter, over the whole walk.
    settings : Settings
        The thresholds that it was judged by, for those who tell of it.
    """

    audit: LegAudit
    causes: tuple[Finding, ...]
    one_of: OneOfTwo | None = None
    carried_from: str | None = None
    portion: LegMatch | None = None
    doubt: str | None = None
    steps: LegSteps | None = None
    what_if: WhatIf | None = None
    forecast: MissInForecast | None = None
    noted: str = ""
    scatter: WalkersScatter = field(default_factory=WalkersScatter)
    settings: Settings = field(default_factory=Settings, compare=False, repr=False)

    @property
    def name(self) -> str:
        """Name of the leg."""
        return self.audit.card.name


@dataclass(frozen=True, slots=True, kw_only=True)
class Debrief:
    """A walk set against its plan.

    Attributes
    ----------
    card : LegCard
        The plan worked out; ``card.findings`` are the plan findings.
    legs : tuple of LegDebrief
        In the order of the plan.
    spans : tuple of Span
        The whole recording, in time order.
    clean : CleanTrack
        The fixes that the figures are made from.
    points : tuple of CardPoint
        The points of the course.
    stories : tuple of WalkFinding
        What several legs have in common, the most probable first.
    paces : WalkPaces or None
        Pace counts of the whole course: from the log, and by the recording's cadence.
    settings : Settings
        The thresholds that it was judged by, for those who tell of it.
    on_no_leg : OnNoLeg
        What was walked of the course on no leg that was found.
    displaced : str
        What the starts of legs share, where the whole walk lies off; "" where it does not.
    tried_before : tuple of TriedBefore
        Searches that went so far that they may have been first tries at the leg after.
    """

    card: LegCard
    quality: TrackQuality
    clean: CleanTrack
    match: Match
    legs: tuple[LegDebrief, ...]
    spans: tuple[Span, ...]
    stories: tuple[WalkFinding, ...] = ()
    paces: WalkPaces | None = None
    coaching: Coaching = field(default_factory=Coaching)
    settings: Settings = field(default_factory=Settings, compare=False, repr=False)
    on_no_leg: OnNoLeg = field(default_factory=OnNoLeg)
    displaced: str = ""
    tried_before: tuple[TriedBefore, ...] = ()

    @property
    def points(self) -> tuple[CardPoint, ...]:
        """The points of the course, dead-reckoned ends among them."""
        return self.card.points

    def to_dict(self) -> DebriefDocument:
        """Give the document of debrief.json."""
        return debrief_document(self)

    def legs_frame(self) -> pd.DataFrame:
        """Give a pandas DataFrame with one row a leg; see `audit.debriefing.frames`."""
        return legs_frame(self)

    def cross_track_frame(self, leg: str) -> pd.DataFrame:
        """Give the cross-track curves of one leg; see `audit.debriefing.frames`."""
        return cross_track_frame(self, leg)
