"""Which one slip in the reference of a via position would make its leg right."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from audit.geodesy.grids import CourseGrid
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import leg_line, points_say
from audit.leg_card.slip_candidate import Candidate, explains_itself, fits_well, misfits
from audit.leg_card.via_checks import line_astray, via_name, vias_astray
from audit.leg_card.written_degrees import written_degrees
from audit.leg_card.written_reference import ReferenceSlip, written_reference


def via_slips(check: LegCheck, grid: CourseGrid) -> Iterator[Candidate]:
    """Give the slips of one via position after which the leg is right.

    Only the length of the line speaks for it. Where that merely disagrees with the plan's
    distance, no more than slips with few outcomes are tried: some digit would always fit.
    Without a distance a slip is told only where it is the one that brings the line back.
    """
    found = list(_fitting(check, grid))
    few = [one for one in found if one.slip.rank == 0] or found
    if len(few) == 1 or check.leg.distance_m is not None:
        yield from few


def _fitting(check: LegCheck, grid: CourseGrid) -> Iterator[Candidate]:
    far = vias_astray(check)
    astray = bool(far) or line_astray(check)
    off = sum(one > 1.0 for one in misfits(check))
    if check.said is None or not (astray or off) or (not astray and explains_itself(check)):
        return
    for number in far or range(len(check.leg.via)):
        via = check.leg.via[number]
        written = written_reference(via, grid) or written_degrees(via)
        if written is None:
            continue
        slips = [slip for slip in written.slips() if astray or slip.rank == 0]
        if astray:
            slips += written.elsewhere(check.start.longitude_deg, check.start.latitude_deg)
        for slip in slips:
            after = _moved(check, number, slip, grid)
            if after is None or after.said is None or _wrong(after, check):
                continue
            misfit = max(misfits(after), default=0.0)
            yield Candidate(
                name=via_name(check.leg.name, number + 1),
                given=via.given,
                slip=slip,
                legs=frozenset({check.leg.name}),
                key=(-float(off), slip.rank + misfit, after.said.along_m),
            )


def _wrong(check: LegCheck, before: LegCheck) -> bool:
    return bool(vias_astray(check)) or line_astray(check) or not fits_well(check, before)


def _moved(check: LegCheck, number: int, slip: ReferenceSlip, grid: CourseGrid) -> LegCheck | None:
    """Give a leg with one of its via positions where the slip taken back has it."""
    here = replace(
        check.leg.via[number],
        longitude_deg=slip.longitude_deg,
        latitude_deg=slip.latitude_deg,
        given=slip.text,
    )
    leg = replace(check.leg, via=(*check.leg.via[:number], here, *check.leg.via[number + 1 :]))
    try:
        line = leg_line(leg, check.start, check.end, grid)
    except ValueError:
        return None
    said = points_say(leg, check.start, check.end, line, check.settings)
    return replace(check, leg=leg, said=said)
