"""Made classes: many walkers on a few lanes, with planted truths to find.

``make_class(seed)`` gives the lanes, the roster and every recording; nothing here
imports the grading or its settings.
"""

from classes.class_files import write_class
from classes.lanes import Lane
from classes.made_class import MadeClass, MadeWalk, make_class
from classes.members import Member, Plants, draw_members

__all__ = [
    "Lane",
    "MadeClass",
    "MadeWalk",
    "Member",
    "Plants",
    "draw_members",
    "make_class",
    "write_class",
]
