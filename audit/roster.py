"""Who walked which lane with which recording, and what was brought back: nothing computed."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterEntry:
    """One attempt of one walker as the roster has it; "" and None where it says nothing.

    Attributes
    ----------
    files : tuple of str
        Names of the recordings of this one walk, in order.
    start : datetime, time or None
        When the walker was let go; a clock time is of the walk's day. UTC unless it says.
    shift_s : float or None
        Added to the clock of this recording, in place of what is added to all.
    line : int
        Of the roster, for what is said of it.
    """

    name: str
    lane: str = ""
    device: str = ""
    files: tuple[str, ...] = ()
    start: dt.datetime | dt.time | None = None
    attempt: int = 1
    compass: str = ""
    shift_s: float | None = None
    line: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Roster:
    """The entries in the order of the file."""

    entries: tuple[RosterEntry, ...]
    notes: tuple[str, ...] = ()
    source: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class PunchEntry:
    """A code that somebody brought back from a point of a lane.

    ``name`` is "" for the key: the code that the marker of the point really bears.
    ``lane`` is "" where the point has that name on whichever lane. ``noted_s`` is ``time``
    in seconds after midnight UTC; None where it is no time.
    """

    point: str
    code: str
    name: str = ""
    lane: str = ""
    attempt: int = 1
    time: str = ""
    noted_s: float | None = None
    line: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class PunchList:
    """Codes brought back, and the key where the list holds it."""

    entries: tuple[PunchEntry, ...]
    notes: tuple[str, ...] = ()
    source: str = field(default="", compare=False)
