"""The sentences that say at which steps of a leg an error entered."""

from __future__ import annotations

from collections.abc import Sequence

from audit.coaching.steps import Hop
from audit.words import Sentence, sentence
from audit.words.figures import Listed


def step_sentences(hops: Sequence[Hop]) -> tuple[str, ...]:
    """Give one a step, the one that leads furthest off first; then what is no error after all."""
    over = [hop for hop in hops if hop.over]
    # What is only noted leads to the log's number and back again: told once.
    told = [hop for number, hop in enumerate(over) if not hop.noted or not _back(over, number)]
    over = sorted(told, key=lambda hop: (not hop.entered, -hop.off_m))
    return tuple(_sentence(hop) for hop in over) if over else (sentence("step-none"),)


def _back(over: Sequence[Hop], number: int) -> bool:
    """Tell whether a hop is the second of two that cancel."""
    return number > 0 and over[number - 1].noted and over[number - 1].kind == over[number].kind


def _sentence(hop: Hop) -> Sentence:
    said: str = hop.sentence
    if hop.noted:
        return sentence("step-noted", said=said)
    if hop.carried:
        return sentence("step-carried", said=said)
    if hop.ordinary:
        said = sentence("step-in-sight" if hop.in_sight else "step-ordinary", said=said)
    if hop.unlikely:
        said = sentence("step-unlikely", said=said)
    if hop.made_good:
        said = sentence("step-made-good", said=said)
    names = [step.replace(" ", "-") for step in hop.steps]
    if len(names) == 1:
        return sentence("step-at", step=sentence(f"step-begin-{names[0]}"), said=said)
    steps = Listed(things=[sentence(f"step-name-{name}") for name in names], link="or")
    return sentence("step-cannot-tell", steps=steps, said=said)
