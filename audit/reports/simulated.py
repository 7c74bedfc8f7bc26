"""Whether a walk is a simulated one, which every report for people must say."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief
from audit.track import calls_itself_simulated


def simulated_notes(debrief: Debrief) -> tuple[str, ...]:
    """Give the notes of the recording that call it simulated, each once."""
    return calls_itself_simulated(debrief.quality.notes)
