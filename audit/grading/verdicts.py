"""The verdict of a point and of a walk: frozen records, no arithmetic."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from audit.measurement.leg_details import PointReached

PointGrade = Literal["found", "missed", "doubtful", "no-evidence"]
WalkGrade = Literal["pass", "fail", "doubtful", "no-evidence"]
Proof = Literal["punch", "track"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Approach:
    """How near a walk came to a point.

    Attributes
    ----------
    distance_m, sd_m : float
        Nearest approach; its standard error per axis, receiver, logging gap and the
        precision of the reference together.
    unseen_m : float
        By how much nearer the walker may have come in silences of the recording.
    time_s : float or None
        When; None in a recording without times.
    in_turn : bool
        On the way to this point, and not at some other time of the walk.
    begins_here : bool
        The recording begins there; the way to the point was not recorded.
    fix_m, fix_s : float or None
        The nearest single fix of the whole recording as it was recorded, nothing cleaned, and
        when; None where nobody looked, or it has no time.
    debriefed : PointReached or None
        What the walker's debrief makes of the way to this point, which also weighs that
        another part of the recording was it; None of a leg that it has no part for.
    """

    distance_m: float
    sd_m: float
    unseen_m: float = 0.0
    time_s: float | None = None
    in_turn: bool = True
    begins_here: bool = False
    fix_m: float | None = None
    fix_s: float | None = None
    debriefed: PointReached | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Punch:
    """What the walker brought back from a point. ``right`` is None where no key tells.

    ``time`` is as it was written beside the code, ``noted_s`` what that is in seconds after
    midnight UTC; None where it is no time.
    """

    code: str
    right: bool | None = None
    time: str = ""
    noted_s: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PointVerdict:
    """Whether a point was found, and what speaks for and against it.

    Attributes
    ----------
    grade : "found", "missed", "doubtful" or "no-evidence"
    proof : "punch", "track" or None
        What decided; None where nothing did.
    radius_m, error_m : float
        Found within the first; missed only beyond both together.
    left_out : bool
        The point is left out of all grades, as one that the course itself got wrong.
    evidence_for, evidence_against : tuple of str
        One sentence each, for the appeal sheet.
    """

    grade: PointGrade
    proof: Proof | None
    radius_m: float
    error_m: float
    approach: Approach | None = None
    punch: Punch | None = None
    left_out: bool = False
    evidence_for: tuple[str, ...] = ()
    evidence_against: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkTime:
    """How long the walk took by the clock. None where it cannot be told.

    ``error_s`` is what the two moments may be off together. ``from_roster_s`` is how long it
    took from the roster's start; None unless that lies so far from the recording's own that
    one of the clocks may be wrong, and not so far that one is.
    """

    begun_s: float | None
    ended_s: float | None
    elapsed_s: float | None
    error_s: float
    from_roster_s: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkVerdict:
    """What the standard makes of a walk; a proposal, which a human signs.

    Attributes
    ----------
    reasons : tuple of str
        One sentence each: what the verdict rests on.
    found, missed, doubtful, without_evidence : int
        Points, those that are left out not among them.
    needed : int
        Points that the standard asks for, less those left out.
    late_s : float or None
        Beyond the time limit; 0 where in time, None where it cannot be told or no
        limit is set.
    score : float or None
        For coaching, 0 to 100; None without evidence. It never overrides the grade.
    score_parts : tuple of (str, float or None, float)
        Each part's name, its share (0 to 1), and its weight.
    """

    grade: WalkGrade
    reasons: tuple[str, ...]
    found: int
    missed: int
    doubtful: int
    without_evidence: int
    needed: int
    late_s: float | None
    score: float | None
    score_parts: tuple[tuple[str, float | None, float], ...] = ()
