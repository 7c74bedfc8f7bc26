"""What a check finds in the plans that a command works with: said before anything else."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from audit import words
from audit.cli.messages import command_line
from audit.leg_card.check_plan import check_plan
from audit.plan import Plan
from audit.readers.plain_text import writable


def put_right_first(plans: Iterable[tuple[Path, Plan]]) -> tuple[str, ...]:
    """Say of each plan how much is to be put right in it; nothing of one that is right.

    All that a command works out goes by the plan as it stands, wrong or not.
    """
    counts = [(path, len(check_plan(plan).findings)) for path, plan in plans]
    return tuple(
        words.say(
            "check-first",
            plan=writable(str(path)),
            count=count,
            command=writable(command_line("check", path)),
        )
        for path, count in counts
        if count
    )
