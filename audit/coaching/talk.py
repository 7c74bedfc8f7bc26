"""Two things to keep and two to work on, each with its evidence: the talk after the walk."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Skill = Literal["azimuth", "distance", "arriving", "finding", "through", "log", "recording"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Keep:
    """Something that went well.

    Attributes
    ----------
    what, evidence : str
        A title, and a sentence with figures.
    skill : Skill
        What was done well: an azimuth held, a distance kept, a point met at once or
        found after a miss; or, for want of more, a habit.
    legs : tuple of str
        The legs that show it; none for a habit.
    """

    what: str
    evidence: str
    skill: Skill
    legs: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkOn:
    """Something to practise.

    Attributes
    ----------
    cause : str
        Name of the cause that the exercise would prove or clear.
    certain : bool
        Whether a mistake is named; otherwise it is one of two, or only a part of what
        remains.
    what, evidence, exercise : str
        A title, a sentence with figures, and five minutes with map, compass and a road.
    legs : tuple of str
        The legs that show it.
    one_of : tuple of str
        Both causes, where it was one of two and no leg tells them apart; otherwise empty.
    """

    cause: str
    certain: bool
    what: str
    evidence: str
    exercise: str
    legs: tuple[str, ...]
    one_of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Coaching:
    """Two of each at most, fewer where nothing else stands out.

    ``left_aside`` names the walked legs that are neither praised nor blamed: which part of
    the walk is theirs, or where they ended, is not sure. All is empty for a walk of which
    no leg was found.
    """

    keep: tuple[Keep, ...] = ()
    work_on: tuple[WorkOn, ...] = ()
    left_aside: tuple[str, ...] = ()
