"""The facts about a leg that a cause may look at: frozen, and all that it may look at."""

from __future__ import annotations

from dataclasses import dataclass

from audit.diagnosis.line_shape import LineShape
from audit.diagnosis.on_paper import OnPaper
from audit.measurement.leg_details import Bypass

Metres2 = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class StartPlot:
    """A wrong place of a leg's start on the walker's map: (east, north) metres from the point.

    ``probability`` is that the leg before was made for it; ``sd_m`` how well it is known.
    """

    shift_m: Metres2
    sd_m: float
    probability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LegEvidence:
    """One walked leg as the diagnosis sees it.

    Attributes
    ----------
    turn_deg, turn_sd_deg : float
        r: walked grid azimuth less planned, and its standard error.
    log_ratio, log_ratio_sd : float
        Logarithm of distance walked over distance planned, and its standard error.
    planned_magnetic_deg : float
        M: what the compass should have been set to.
    grid_magnetic_angle_deg, convergence_deg : float
        G and C, east positive.
    stale_turn_deg : float or None
        Turn that an out-of-date angle on the plan gives: the model's angle less the
        plan's. None where the plan gives none.
    confidence : float
        That this portion of the walk is the leg's.
    planned_deg, length_m : float
        A and L: planned grid azimuth and distance.
    bent : bool
        The leg follows a line that is not straight: only its distance and its chord
        can be judged.
    another_way_m : float or None
        Walked over the ground where such a line was not followed: then neither can.
    end_m, half_square_m : (east, north) and float
        Planned end on the course grid, and half the side of the square its reference
        names (0 where it is given as a place).
    start_off_m : (east, north)
        Where the walker began, less the planned start.
    under_way : bool
        The recording began on this leg.
    other_magnetic_deg : tuple of (magnetic azimuth, weight)
        What the card says for the other legs; the neighbours weigh more.
    other_points_m : tuple of (east, north)
        The other known points, from the planned end.
    went_on : bool or None
        The walker set out on the next leg from where this one ended; False where he went
        somewhere else first, None where the next leg was not walked.
    next_off_m : (east, north) or None
        The way walked on the next leg less its planned one, where it was begun from where
        this one ended: who plotted this end wrongly measured the next leg from there.
    next_m : float
        Planned distance of the next leg.
    start_plots : tuple of StartPlot
        Where the leg before says that this start stood on the walker's map, off its point: who
        plotted it wrongly measured this leg from there.
    passed_m : float or None
        How far on the walker went after passing close to the point without a halt.
    shape : LineShape or None
        How the line was held; None where it cannot be seen.
    bypasses : tuple of Bypass
        The obstacles that were walked round, as measured; none where the line shows none.
    arrived : bool
        The leg ended within the arrival radius of its point.
    walked_up : bool
        From there the walker went straight up to his point: it was in sight.
    aside_m : float
        How far right of the walked heading the leg ended.
    grade, slope_ratio, downhill_right : float or None
        Rise over distance; map over slope distance; the part of the fall line that
        points to the right of travel, in [-1, 1]. None without elevations.
    set_turn_deg : float or None
        What the walker's log says was set on the compass, less what should have been.
    set_rounding_deg : float
        How finely that azimuth, and the card's, are written.
    log_count_ratio : float or None
        Logarithm of paces counted by the log over paces planned.
    on_paper : OnPaper or None
        What the walker's own card says of the leg; None where he carried none of his own.
    half_interval_deg : float or None
        Half the 95 % interval of the heading; None: 1.96 standard errors.
    class_shift_m, course_shift_m : (east, north) or None
        What the point's marker, and what all points are off by. One walk cannot show it: None
        in a debrief. Both are rehearsed, and a class tells the first by itself.
    """

    leg: int
    turn_deg: float
    turn_sd_deg: float
    log_ratio: float
    log_ratio_sd: float
    planned_magnetic_deg: float
    grid_magnetic_angle_deg: float
    convergence_deg: float
    confidence: float
    stale_turn_deg: float | None = None
    planned_deg: float = 0.0
    length_m: float = 500.0
    bent: bool = False
    another_way_m: float | None = None
    end_m: Metres2 | None = None
    half_square_m: float = 0.0
    start_off_m: Metres2 = (0.0, 0.0)
    under_way: bool = False
    other_magnetic_deg: tuple[tuple[float, float], ...] = ()
    other_points_m: tuple[Metres2, ...] = ()
    went_on: bool | None = None
    next_off_m: Metres2 | None = None
    next_m: float = 0.0
    start_plots: tuple[StartPlot, ...] = ()
    passed_m: float | None = None
    shape: LineShape | None = None
    bypasses: tuple[Bypass, ...] = ()
    arrived: bool = False
    walked_up: bool = False
    aside_m: float = 0.0
    grade: float | None = None
    slope_ratio: float | None = None
    downhill_right: float | None = None
    set_turn_deg: float | None = None
    set_rounding_deg: float = 0.0
    log_count_ratio: float | None = None
    on_paper: OnPaper | None = None
    half_interval_deg: float | None = None
    class_shift_m: Metres2 | None = None
    course_shift_m: Metres2 | None = None
