"""Times by the rules of walking, and what each rule says."""

from __future__ import annotations

import re
from collections.abc import Iterable

from audit.reports.wording import reckoned_time
from audit.walking_times import WALKING_RULES
from audit.words import say


def rule_name(rule: str) -> str:
    """Give what a rule is called."""
    return say(_message(rule))


def times_by_rules(times: Iterable[tuple[str, float]]) -> str:
    """Give times, each with its rule: "Naismith 17 min; 3 km/h 20 min"."""
    each = (f"{rule_name(rule)} {reckoned_time(seconds)}" for rule, seconds in times)
    return "; ".join(one.replace(" ", "\N{NO-BREAK SPACE}") for one in each)


def rules_told() -> tuple[str, ...]:
    """Say of every rule what it says in figures, and who says so."""
    return tuple(say(f"{_message(rule.name)}-says") for rule in WALKING_RULES)


def _message(rule: str) -> str:
    return "rule-" + re.sub(r"\W", "-", rule.lower())
