"""What stands in the walker's log and nowhere else: noted otherwise than it was done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from audit.coaching.steps import Hop


def with_log_noted(to_log: Hop, from_log: Hop, past_log: Hop) -> Sequence[Hop]:
    """Give the hops to a number of the log and from it, both noted only where they cancel.

    ``past_log`` leads over both: where it is ordinary, the walk went as if the number had
    not been there. An error that the next one takes back was not made, and nobody is blamed
    for it.
    """
    if to_log.over and from_log.over and not past_log.over:
        return replace(to_log, noted=True), replace(from_log, noted=True)
    return to_log, from_log
