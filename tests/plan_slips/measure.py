"""How many planted slips are found, named, and how much is said that is not so."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from audit.errors import InputRefusedError
from plan_slips.right_plans import right_plan
from plan_slips.slips import PLANTERS, Planted


@dataclass(frozen=True, kw_only=True)
class Tally:
    """Counts over the plans of one kind of slip."""

    planted: int
    found: int
    named: int
    false: int
    refused: int
    """By the reader, which names the place: a square that does not exist, say."""


def tally(kind: str, plans: int, seed: str) -> Tally:
    """Plant a slip into a number of plans and count what the check says."""
    random = Random(f"{seed}: {kind}")
    planted = found = named = false = refused = tries = 0
    while planted < plans:
        tries += 1
        assert tries < 60 * plans, kind
        one = PLANTERS[kind](random)
        if one is None:
            continue
        planted += 1
        try:
            seen, said, wrong = _judged(one)
        except InputRefusedError:
            refused += 1
            continue
        found += seen
        named += said
        false += wrong
    return Tally(planted=planted, found=found, named=named, false=false, refused=refused)


def false_on_right_plans(plans: int, seed: str) -> int:
    """Count the right plans of which the check has anything to say."""
    random = Random(f"{seed}: right plans")
    made = (right_plan(random, degrees=number % 4 == 3) for number in range(plans))
    return sum(bool(plan.check().findings) for plan in made)


def _judged(planted: Planted) -> tuple[bool, bool, bool]:
    """Tell whether the slip was found, whether it was named, and whether anything false was."""
    findings = planted.plan.check().findings
    places = {(None if leg is None else str(leg + 1), what) for leg, what in planted.fields}
    there = [one for one in findings if (one.leg, one.what) in places]
    touched = {str(leg + 1) for leg in planted.touched}
    false = any(one.leg is not None and one.leg not in touched for one in findings)
    names = {planted.name, planted.also} - {""}
    named = any(not names or names & set(one.slips) for one in there)
    return bool(there), named, false
