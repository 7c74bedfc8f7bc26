"""How a class is graded and put together, beside what the standard itself says."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class GradingSettings:
    """What grading takes for granted where no standard speaks."""

    coverage_factor: float = 2.0
    """Times the standard error per axis is the whole error: some 95 in 100 (JCGM 100:2008,
    6.3.3)."""
    trace_step_s: float = 10.0
    """Between the fixes of a trace for drawing and for who walked with whom; chosen."""
