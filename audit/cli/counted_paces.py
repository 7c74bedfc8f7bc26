"""Whether a pace count goes with the kind of pace that somebody says is counted."""

from __future__ import annotations

from audit.cli.messages import say_note
from audit.leg_card.pace_kind import PaceKind, pace_unit, step_note
from audit.settings import PaceSettings

_SETTINGS = PaceSettings()


def note_step(per_100m: float | None, said: str | None) -> None:
    """Note a step that nobody walks with, where another pace is said than the count shows.

    Of the pace that the count itself shows the leg card notes it.
    """
    kind: PaceKind = "single" if said == "single" else "double"
    if said and kind != pace_unit(per_100m, _SETTINGS):
        note = step_note(per_100m, kind, _SETTINGS)
        if note:
            say_note(note)
