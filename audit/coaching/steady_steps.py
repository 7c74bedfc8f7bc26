"""A turn past the log's setting that all legs share: a slip at the compass is not all it fits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.finding import Finding
from audit.leg_card.slips import fits_sentence
from audit.words import Sentence, sentence

STEADY = "steady-bias"


def with_steady_turn(
    steps: Mapping[str, LegSteps], causes: Mapping[str, Sequence[Finding]]
) -> dict[str, LegSteps]:
    """Give the steps of all legs, with the steady turn beside the slip that it looks like.

    Whether the compass was set otherwise than noted no log tells; where the legs together hold a
    steady turn to be likelier, the step does not name the slip alone.
    """
    return {name: _with_both(of, causes.get(name, ())) for name, of in steps.items()}


def _with_both(of: LegSteps, findings: Sequence[Finding]) -> LegSteps:
    sure = {one.cause: one.probability for one in findings}
    hops = tuple(_either(hop) if _is_likelier(hop, sure) else hop for hop in of.hops)
    return replace(of, hops=hops, sentences=step_sentences(hops)) if hops != of.hops else of


def _is_likelier(hop: Hop, sure: Mapping[str, float]) -> bool:
    if hop.steps != ("set", "walked") or not hop.slips:
        return False
    return sure.get(STEADY, 0.0) > max(sure.get(slip, 0.0) for slip in hop.slips)


def _either(hop: Hop) -> Hop:
    """Say that a hop fits the steady turn first, and then its slips."""
    said = hop.sentence
    told = said.values["fits"] if isinstance(said, Sentence) else ""
    if not isinstance(said, Sentence) or not isinstance(told, Sentence):
        return hop
    slips = getattr(told.values["slips"], "things", ())
    fits = fits_sentence([sentence("slip-steady-turn"), *slips], link="or")
    return replace(
        hop,
        slips=(STEADY, *hop.slips),
        sentence=sentence(said.ident, **{**said.values, "fits": fits}),
    )
