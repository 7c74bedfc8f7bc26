"""Made walks: seeded recordings whose every second and every leg is known.

``make_walk(seed, "ordinary")`` gives a plan, a track as a receiver would have
recorded it, and the truth behind it. Nothing here imports the matcher or its
settings: the two must not share a constant.
"""

from walks.difficulties import Difficulty
from walks.families import CLEAN, DIFFICULTIES
from walks.truth import KINDS, LegTruth, Planted, Truth
from walks.walk import Walk, make_walk

__all__ = [
    "CLEAN",
    "DIFFICULTIES",
    "KINDS",
    "Difficulty",
    "LegTruth",
    "Planted",
    "Truth",
    "Walk",
    "make_walk",
]
