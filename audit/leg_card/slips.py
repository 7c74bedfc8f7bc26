"""A slip that a disagreement in the plan looks like: which fit, and how they are told."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from audit.units import turn_degrees
from audit.words import sentence
from audit.words.figures import Listed

KNOWN, BORROWED, DIGIT = 0, 1, 2
"""How much a slip needs to be believed: a known angle, another leg's number, any one digit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A slip, said so that "It fits ..." goes before it, and how far it turns the number.

    ``name`` is that of the catalogue of causes where the slip has one there. A slip of a
    higher ``rank`` is told only where none of a lower one fits.
    """

    name: str
    what: str
    turn_deg: float = 0.0
    rank: int = KNOWN


def fitting_slips(off_deg: float, slips: Sequence[Slip], tolerance_deg: float) -> tuple[Slip, ...]:
    """Give the slips that fit a disagreement, the nearest first, all of one rank.

    A slip that turns the number by no more than the tolerance explains nothing.
    """
    near = sorted(
        (slip.rank, abs(turn_degrees(slip.turn_deg, off_deg)), number)
        for number, slip in enumerate(slips)
        if abs(turn_degrees(0.0, slip.turn_deg)) > tolerance_deg
    )
    fitting = [slips[number] for _, distance, number in near if distance <= tolerance_deg]
    told = [slip for slip in fitting if slip.rank == fitting[0].rank]
    return tuple(told[:1] if told and told[0].rank == DIGIT else told)


def slip_sentence(slips: Sequence[Slip]) -> str:
    """Say which slips fit; "" where none does."""
    return fits_sentence([slip.what for slip in slips], link="comma-or")


def fits_sentence(whats: Sequence[str], link: str) -> str:
    """Say what fits, each once, after a space; "" where nothing does."""
    things = list(dict.fromkeys(whats))
    return sentence("slip-fits", slips=Listed(things=things, link=link)) if things else ""


def slip_names(slips: Sequence[Slip]) -> tuple[str, ...]:
    """Give the names of slips, each once."""
    return tuple(dict.fromkeys(slip.name for slip in slips))
