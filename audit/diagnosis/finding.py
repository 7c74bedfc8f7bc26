"""A cause with its probability and the figures behind it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One candidate cause of a leg's miss.

    ``cause`` is a name of the catalogue of causes; the probabilities of one leg's
    findings add up to 1. ``evidence`` is one sentence: the number predicted, the
    number seen.
    """

    cause: str
    probability: float
    evidence: str
