"""The sentences that say at which steps of a leg an error entered."""

from __future__ import annotations

from collections.abc import Sequence

from audit.coaching.steps import Hop
from audit.words import Sentence, sentence
from audit.words.figures import Listed


def step_sentences(hops: Sequence[Hop]) -> tuple[str, ...]:
    """Give one a step, the one that leads furthest off first; then what is ordinary after all."""
    over = sorted((hop for hop in hops if hop.over), key=lambda hop: (hop.ordinary, -hop.off_m))
    return tuple(_sentence(hop) for hop in over) if over else (sentence("step-none"),)


def _sentence(hop: Hop) -> Sentence:
    said: str = hop.sentence
    if hop.ordinary:
        said = sentence("step-ordinary", said=said)
    names = [step.replace(" ", "-") for step in hop.steps]
    if len(names) == 1:
        return sentence("step-at", step=sentence(f"step-begin-{names[0]}"), said=said)
    steps = Listed(things=[sentence(f"step-name-{name}") for name in names], link="or")
    return sentence("step-cannot-tell", steps=steps, said=said)
