"""Whether a dated grid-magnetic angle goes with its own date, and what became of it since."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from audit.leg_card.angle_finding import angle_finding
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.told_numbers import told_angle
from audit.magnetics.declination import Declination, declination
from audit.moments import years_between
from audit.positions import Position
from audit.settings import CardSettings
from audit.units import turn_degrees
from audit.words import Sentence, sentence
from audit.words.figures import Number, Turn


@dataclass(frozen=True, slots=True, kw_only=True)
class DatedAngle:
    """The angle of a plan with its date, beside the model's on that date and on the walk's.

    Attributes
    ----------
    dated : str
        Its date as the plan writes it, a day or a year.
    then : Declination or None
        By the model of its date; None where there is none.
    now : Declination or None
        By the model of the day of the walk.
    walk : date or None
        The day of the walk.
    """

    given_deg: float
    of: dt.date
    dated: str
    convergence_deg: float
    then: Declination | None
    now: Declination | None
    walk: dt.date | None
    settings: CardSettings

    @property
    def later(self) -> bool:
        """Tell whether it is of a year after the walk; a map may well be for its whole year."""
        return self.walk is not None and self.of.year > self.walk.year

    @property
    def fits_its_date(self) -> bool | None:
        """Tell whether it is that of its date; None where no model covers that."""
        return None if self.then is None or self.later else self._fits(self.then)

    def findings(self) -> tuple[CardFinding, ...]:
        """Find an angle that is not that of its date, one of a day to come, and an old one."""
        if self.later:
            return (self._of_its_date(self._later_words(), None),)
        if self.then is not None and not self._fits(self.then):
            return (self._at_odds(self.then),)
        if self.walk is None or (self.walk - self.of).days <= self.settings.stale_days:
            return ()
        return (self._old(self.walk),)

    def _angle_deg(self, field: Declination) -> float:
        return turn_degrees(self.convergence_deg, field.degrees)

    def _off_deg(self, field: Declination) -> float:
        return turn_degrees(self._angle_deg(field), self.given_deg)

    def _room_deg(self, field: Declination) -> float:
        return self.settings.model_sigmas * field.sd_deg + self.settings.angle_slack_deg

    def _fits(self, field: Declination) -> bool:
        return abs(self._off_deg(field)) <= self._room_deg(field)

    def _later_words(self) -> Sentence:
        walk = "" if self.walk is None else self.walk.isoformat()
        return sentence("finding-angle-later", of=self.dated, walk=walk)

    def _at_odds(self, then: Declination) -> CardFinding:
        """Say that angle and date do not go together, and what may have been meant."""
        angle_deg = self._angle_deg(then)
        walk: Sentence | str = ""
        if self.now is not None and self._fits(self.now):
            walk = sentence("finding-angle-of-walk", now=told_angle(self._angle_deg(self.now)))
        return angle_finding(
            "finding-angle-at-odds",
            self.given_deg,
            angle_deg,
            self.convergence_deg,
            self._room_deg(then),
            of=self.dated,
            then=told_angle(angle_deg),
            error=Turn(degrees=then.sd_deg),
            walk=walk,
        )

    def _old(self, walk: dt.date) -> CardFinding:
        """Say how old the angle is, with the sum that brings it up to date where that is one."""
        said, then, now = self._age_words(walk), self.then, self.now
        if now is None:
            message = sentence("finding-angle-bring-up", said=said, model="")
            return self._of_its_date(message, None)
        now_deg = self._angle_deg(now)
        model, error = told_angle(now_deg), Turn(degrees=now.sd_deg)
        if then is None:
            told = sentence("finding-angle-model", model=model, error=error)
            message = sentence("finding-angle-bring-up", said=said, model=told)
            return self._of_its_date(message, None)
        if abs(self._off_deg(now)) < abs(self._off_deg(then)):
            # Who moved it once more would move it away from the walk's.
            message = sentence(
                "finding-angle-nearer",
                said=said,
                given=told_angle(self.given_deg),
                then=told_angle(self._angle_deg(then)),
                model=model,
                error=error,
            )
            return self._of_its_date(message, now_deg)
        moved_deg = turn_degrees(then.degrees, now.degrees)
        current_deg = turn_degrees(0.0, self.given_deg + moved_deg)
        message = sentence(
            "finding-angle-moves",
            said=said,
            moved=told_angle(moved_deg),
            given=told_angle(self.given_deg),
            current=told_angle(current_deg),
            model=model,
            error=error,
        )
        return self._of_its_date(message, current_deg)

    def _age_words(self, walk: dt.date) -> Sentence:
        if self.dated != self.of.isoformat():  # a year alone
            return sentence("finding-angle-years", of=self.dated, years=walk.year - self.of.year)
        years = Number(value=years_between(self.of, walk), decimals=1)
        return sentence("finding-angle-age", of=self.dated, years=years)

    def _of_its_date(self, message: str, current_deg: float | None) -> CardFinding:
        return CardFinding(
            leg=None,
            what="grid_magnetic_angle_date",
            given=self.dated,
            computed=current_deg,
            message=message,
            slips=() if self.later else ("gm-angle-stale",),
        )


def field_of(place: Position, date: dt.date) -> Declination | None:
    """Give the magnetic field of a day; None where no model at hand covers it."""
    try:
        return declination(place.longitude_deg, place.latitude_deg, date=date)
    except ValueError:
        return None
