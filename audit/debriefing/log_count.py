"""The count of a walker's log laid along a leg as it was matched."""

from __future__ import annotations

from dataclasses import dataclass

from audit.geodesy.along_line import metres_long
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.noted_moments import NotedMoment
from audit.settings import Settings
from audit.walkers_log import WalkersLog


@dataclass(frozen=True, slots=True, kw_only=True)
class LogCount:
    """The count of a leg as metres from its start, what one is out by, and what this one is.

    ``ordinary_m`` is what a count is ordinarily out by, ``most_m`` what it may be at the most;
    ``claimed_m`` by how much it is out at the leg's claim.
    """

    start_s: float
    metres: float
    ordinary_m: float
    most_m: float
    claimed_m: float

    @property
    def speaks_for_claim(self) -> bool:
        """Whether it leads to the claim."""
        return self.claimed_m <= self.ordinary_m

    @property
    def speaks_against_claim(self) -> bool:
        """Whether it leads plainly elsewhere."""
        return self.claimed_m > self.most_m

    def leads_to(self, noted: NotedMoment, walk: CleanTrack) -> bool:
        """Tell whether it leads to where the walker was at a moment, and not to the claim."""
        if self.start_s >= noted.time_s:
            return False
        there_m = _out_m(self.metres, walk, self.start_s, noted.time_s)
        return there_m <= self.most_m and self.claimed_m > max(self.ordinary_m, there_m)


def log_count(
    number: int, log: WalkersLog, card: LegCard, match: Match, walk: CleanTrack, settings: Settings
) -> LogCount | None:
    """Give the count of a walked leg; None where none was noted, or it is no distance.

    A count is told as a distance straight from the start: along a line that bends it is none.
    """
    leg, of_card = match.legs[number], card.legs[number]
    entry, start_s, claim_s = log.entry(of_card.name), leg.start_s, leg.claim_s
    if entry is None or not entry.paces or not card.paces_per_100m or len(of_card.line) > 2:
        return None
    if start_s is None or claim_s is None:
        return None
    metres, noise_m = 100.0 * entry.paces / card.paces_per_100m, 2.0 * match.noise_m
    return LogCount(
        start_s=start_s,
        metres=metres,
        ordinary_m=settings.coaching.pace_length_share * metres + noise_m,
        most_m=settings.quality.counted_out_most * metres + noise_m,
        claimed_m=_out_m(metres, walk, start_s, claim_s),
    )


def _out_m(metres: float, walk: CleanTrack, start_s: float, end_s: float) -> float:
    return abs(metres_long(walk.places_at((start_s, end_s))) - metres)
