"""The legs of which enough is sure to praise the walker for them, or to blame him."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from audit.diagnosis.finding import Finding
from audit.diagnosis.steady_sizes import STEADY
from audit.guide.cause_names import WITHIN_SKILL
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import CoachingSettings


def is_sure(leg: LegAudit, settings: CoachingSettings) -> bool:
    """Tell whether a leg's part of the walk is sure enough to say of the walker what it shows."""
    return leg.confidence >= settings.sure_portion


def sure_legs(legs: Sequence[LegAudit], settings: CoachingSettings) -> dict[str, LegMeasures]:
    """Give the walked legs whose portion is sure and of which both ends were seen, by name."""
    return {
        leg.card.name: leg.measures
        for leg in legs
        if leg.measures is not None
        and is_sure(leg, settings)
        and not any(leg.measures.ends_reckoned)
    }


def spoilt_legs(
    causes: Mapping[str, Sequence[Finding]], mistakes: frozenset[str], settings: CoachingSettings
) -> set[str]:
    """Give the legs that one of these mistakes has likely put out."""
    return {
        name
        for name, findings in causes.items()
        if sum(one.probability for one in findings if one.cause in mistakes)
        >= settings.spoilt_probability
    }


def unlike_legs(causes: Mapping[str, Sequence[Finding]], settings: CoachingSettings) -> set[str]:
    """Give the legs that were likelier not walked as the card has them, for whatever reason.

    Ordinary error, a steady turn and a pace count that is off leave a leg what it is.
    """
    return {
        name
        for name, findings in causes.items()
        if sum(one.probability for one in findings if one.cause not in {*STEADY, WITHIN_SKILL})
        >= settings.named_probability
    }
