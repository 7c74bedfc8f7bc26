"""A slip in a point's reference, told beside the point left out where it explains it as well."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.diagnosis.causes import digit_wrong, digits_transposed, point_skipped, wrong_grid_line
from audit.diagnosis.finding import Finding
from audit.diagnosis.finding_words import place_words
from audit.diagnosis.slipped_reference import SlippedReference, slipped_reference
from audit.leg_card import CardPoint, LegCard
from audit.matching.leg_match import CleanTrack
from audit.settings import DiagnosisSettings
from audit.words import Sentence, sentence
from audit.words.figures import Length, Moment

_CAUSES = {of.CAUSE.name: of.CAUSE for of in (digit_wrong, digits_transposed, wrong_grid_line)}
_SKIPPED = point_skipped.CAUSE.name


def slip_between(
    moments_s: tuple[float, float],
    point: CardPoint,
    card: LegCard,
    clean: CleanTrack,
    noise_m: float,
    settings: DiagnosisSettings,
) -> SlippedReference | None:
    """Find the slip that leads to where the walker turned off between two moments."""
    first, last = (clean.index_at(time_s) for time_s in moments_s)
    length_m = max(leg.distance_m for leg in card.legs if point in (leg.start, leg.end))
    most_m = min(settings.digit_shift_most_m, settings.digit_shift_lengths * length_m)
    between = clean.part(slice(first, last + 1))
    others = np.array([(of.east_m, of.north_m) for of in card.points if of.name != point.name])
    return slipped_reference(point, between, others, noise_m, most_m, settings)


def with_slip(
    found: tuple[Finding, ...],
    slipped: SlippedReference | None,
    point: CardPoint,
    settings: DiagnosisSettings,
    *,
    timed: bool,
) -> tuple[Finding, ...]:
    """Share what speaks for a point left out between that and the slip, the likelier first."""
    if slipped is None:
        return found
    sure = next(one.probability for one in found if one.cause == _SKIPPED)
    priors = dict(settings.leg_priors)
    odds = slipped.odds * priors[slipped.slip] / priors[_SKIPPED]
    share = min(odds / (1.0 + odds), settings.slip_told_most)
    slip = Finding(
        cause=slipped.slip,
        probability=sure * share,
        evidence=_words(point.name, slipped, timed=timed),
        predicted=abs(sum(slipped.shift_m)),
        seen=slipped.turned_m,
        unit="m",
        made=sure * share,
        runner_up=_SKIPPED,
        settles=_CAUSES[slipped.slip].settles,
    )
    rest = sure * (1.0 - share)
    others = [
        replace(one, probability=rest, made=rest, runner_up=slipped.slip)
        if one.cause == _SKIPPED
        else one
        for one in found
    ]
    return tuple(sorted([*others, slip], key=lambda one: -one.probability))


def _words(point: str, slipped: SlippedReference, *, timed: bool) -> Sentence:
    return sentence(
        "evidence-slipped-reference",
        what="halts" if slipped.halted else "bends",
        time=sentence("evidence-at-time", time=Moment(time_s=slipped.time_s)) if timed else "",
        place=place_words(slipped.shift_m),
        point=point,
        away=Length(metres=slipped.away_m),
        axis="easting" if slipped.shift_m[0] else "northing",
        slipped=slipped.slipped,
        written=slipped.written,
    )
