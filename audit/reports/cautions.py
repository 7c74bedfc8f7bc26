"""The cautions that every debrief, card and guide shows."""

from __future__ import annotations

CAUTIONS: tuple[str, ...] = (
    "This is a training aid. It is no navigation aid and no tracker: nobody watches it.",
    "Account for people by head-count, and start a search at once for anyone not back.",
    "Check the grid-magnetic angle and its date on the map in hand.",
    "Follow local rules and qualified instructors.",
    "Positions have error and a cause is a hypothesis: a human signs the grade.",
    "A recording of a walk is personal data. Share it no further than the training needs.",
)
