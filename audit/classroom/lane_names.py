"""What lanes are called: by their plans, and by whoever writes a roster."""

from __future__ import annotations

import re
from collections.abc import Sequence

from audit.plan import Plan

_OTHER = re.compile(r"[\W_]+")


def lane_names(plans: Sequence[Plan]) -> list[str]:
    """Name the lanes after the files of their plans, each differently."""
    names: list[str] = []
    for plan in plans:
        stem = plan.source.rsplit(".", 1)[0] or plan.name or "lane"
        name, number = stem, 2
        while name in names:
            name, number = f"{stem} {number}", number + 1
        names.append(name)
    return names


def lane_called(written: str, lanes: Sequence[tuple[str, str]]) -> str | None:
    """Give the lane that is meant, of (name, name of course); None where none or several are.

    Capitals, spaces and signs do not matter, and the last word is enough where only one
    lane has it: "2" for lane-2.
    """
    wanted = _plain(written)
    if not wanted:
        return None
    for of in (0, 1):
        same = [lane[0] for lane in lanes if _plain(lane[of]) == wanted]
        if len(same) == 1:
            return same[0]
    ends = [name for name, _ in lanes if _plain(_OTHER.split(name)[-1]) == wanted]
    return ends[0] if len(ends) == 1 else None


def _plain(name: str) -> str:
    return _OTHER.sub("", name).casefold()
