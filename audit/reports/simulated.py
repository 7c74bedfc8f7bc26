"""Whether a walk is a simulated one, which every report for people must say."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief


def simulated_notes(debrief: Debrief) -> tuple[str, ...]:
    """Give the notes of plan and track that call it simulated, each once."""
    notes = (*debrief.card.notes, *debrief.quality.notes)
    return tuple(dict.fromkeys(note for note in notes if "simulated" in note.lower()))
