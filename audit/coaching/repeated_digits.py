"""A difference that comes again on leg after leg is no slip of a digit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from audit.coaching.direction_steps import DIGITS
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.settings import CoachingSettings
from audit.words import Sentence, sentence


def without_repeated_digits(
    steps: Mapping[str, LegSteps], settings: CoachingSettings
) -> dict[str, LegSteps]:
    """Give the steps with no digit told of differences that stand on several legs alike."""
    turned = [hop for of in steps.values() for hop in of.hops if hop.kind == "direction"]
    return {name: _told_anew(of, turned, settings) for name, of in steps.items()}


def _told_anew(of: LegSteps, turned: Sequence[Hop], settings: CoachingSettings) -> LegSteps:
    hops = tuple(
        _without_digit(hop) if _comes_again(hop, turned, settings) else hop for hop in of.hops
    )
    if hops == of.hops:
        return of
    said = step_sentences(hops)
    return replace(of, hops=hops, sentences=(*said, *of.sentences[len(said) :]))


def _comes_again(hop: Hop, turned: Sequence[Hop], settings: CoachingSettings) -> bool:
    """Tell whether a difference that a digit fits stands on more legs, to one side and as large."""
    if hop.slips != (DIGITS,):
        return False
    alike = [
        other
        for other in turned
        if other.steps == hop.steps
        and abs(other.error - hop.error) <= settings.set_azimuth_deg
        and other.error * hop.error > 0.0
    ]
    return len(alike) > settings.same_digit_most


def _without_digit(hop: Hop) -> Hop:
    said = hop.sentence
    if isinstance(said, Sentence):
        said = sentence(said.ident, **{**said.values, "fits": ""})
    return replace(hop, slips=(), sentence=said)
