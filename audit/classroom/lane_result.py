"""What a class keeps of a lane: the course that it is, as the plan and the day make it."""

from __future__ import annotations

from dataclasses import dataclass

from audit.plan import Order


@dataclass(frozen=True, slots=True, kw_only=True)
class LanePoint:
    """A point of a lane on the grid of its course. ``code`` is the marker's, where known."""

    name: str
    east_m: float
    north_m: float
    longitude_deg: float
    latitude_deg: float
    half_square_m: float
    code: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneLeg:
    """A leg of a lane; ``line`` holds (east, north) of start, via positions and end.

    ``climb_m`` and ``descent_m`` are the middle of what the walkers' own trusted
    elevations give for it; None where none can be trusted.
    """

    name: str
    start: str
    end: str
    azimuth_deg: float
    magnetic_deg: float
    distance_m: float
    line: tuple[tuple[float, float], ...]
    climb_m: float | None = None
    descent_m: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneResult:
    """One lane: the course that it is.

    Attributes
    ----------
    name : str
        Of the lane: as the roster calls it, else the file of the plan without its suffix.
    plan_file, course, grid : str
        Name of the file, of the course, and the code of its grid.
    date : str or None
    length_m : float or None
        Of all legs; None where nobody planned any.
    difficulty : float or None
        The middle over the legs of the chance that an ordinary walk ends out of sight
        of its point, 0 to 1, by the forecast; before anyone has walked.
    fingerprint : str
        Of plan, standard and program version.
    findings : tuple of str
        What a check of the plan has found, one sentence each.
    angle_at_fault : bool
        Whether the plan's own grid-magnetic angle is to be put right.
    order : "planned" or "free"
        "free": the points may be visited in any order, and a leg only stands for its point.
    """

    name: str
    plan_file: str
    course: str
    grid: str
    date: str | None
    grid_magnetic_angle_deg: float
    arrival_radius_m: float
    points: tuple[LanePoint, ...]
    legs: tuple[LaneLeg, ...]
    length_m: float | None
    climb_m: float | None = None
    difficulty: float | None = None
    fingerprint: str = ""
    findings: tuple[str, ...] = ()
    angle_at_fault: bool = False
    order: Order = "planned"
    notes: tuple[str, ...] = ()

    @property
    def is_free(self) -> bool:
        """Tell whether the points may be visited in any order, so that no leg is planned."""
        return self.order == "free"
