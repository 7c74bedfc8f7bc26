"""The result of a class: one frozen tree that every report only walks."""

from __future__ import annotations

from dataclasses import dataclass, field

from audit.classroom.class_document import class_document
from audit.classroom.class_shape import ClassDocument
from audit.classroom.lane_result import LaneResult
from audit.classroom.walker_result import WalkerResult
from audit.plan import Order
from audit.standard import Standard


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassLeg:
    """One leg of one lane over all its walkers.

    Attributes
    ----------
    mean_miss : (float, float) or None
        East and north in metres, over those who walked it.
    spread_m : float or None
        Standard deviation of the misses about their mean, per axis.
    finding : str or None
        What the class shows of it, such as "point-misplaced".
    """

    lane: str
    name: str
    point: str
    walkers: int
    walked: int
    found: int
    missed: int
    doubtful: int
    without_evidence: int
    mean_miss: tuple[float, float] | None
    spread_m: float | None
    finding: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassFinding:
    """Something that the class shows, or that a person is asked about.

    Attributes
    ----------
    what : str
        A telling name, such as "device-swapped", "point-misplaced", "broken-file".
    message : str
        The whole of it in a sentence or two.
    question : bool
        It is put to a person, and changes nothing by itself.
    walkers : tuple of str
        Their idents.
    leaves_out : bool
        The point of the leg is left out of the grades.
    """

    what: str
    message: str
    lane: str | None = None
    leg: str | None = None
    walkers: tuple[str, ...] = ()
    question: bool = False
    leaves_out: bool = False
    probability: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassResult:
    """A class set against its lanes by a standard.

    Attributes
    ----------
    name : str
        Of the class.
    shift_s : float
        Added to the clocks of all recordings; ``shift_from`` says on what ground.
    private : bool
        Names are left out.
    """

    name: str
    version: str
    standard: Standard
    fingerprint: str
    lanes: tuple[LaneResult, ...]
    walkers: tuple[WalkerResult, ...]
    legs: tuple[ClassLeg, ...]
    findings: tuple[ClassFinding, ...]
    shift_s: float = 0.0
    shift_from: str = ""
    private: bool = False
    notes: tuple[str, ...] = field(default=())

    def to_dict(self) -> ClassDocument:
        """Give the document of class.json."""
        return class_document(self)

    @property
    def order_asked(self) -> Order:
        """Give the order that is asked: free where all plans leave it so, else the standard's."""
        free = bool(self.lanes) and all(lane.order == "free" for lane in self.lanes)
        return "free" if free else self.standard.order

    def lane(self, name: str) -> LaneResult:
        """Give the lane of a name."""
        return next(lane for lane in self.lanes if lane.name == name)
