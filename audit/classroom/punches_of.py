"""Which codes one walker brought back, held against the key."""

from __future__ import annotations

from collections.abc import Sequence

from audit.classroom.lane import Lane
from audit.classroom.lane_names import lane_called
from audit.errors import InputRefusedError, Problem
from audit.grading.verdicts import Punch
from audit.roster import PunchEntry, PunchList, RosterEntry

_NAMES_TOLD = 10
"""Of the walkers whom files name; chosen: enough to see how."""


def check_punches(
    punches: PunchList,
    lanes: Sequence[Lane],
    walkers: Sequence[RosterEntry],
    *,
    by_roster: bool,
) -> None:
    """Refuse codes of points, lanes or walkers that the class does not have, or that differ.

    ``walkers`` are those of the roster, or those whom the files name where there is none.

    Raises
    ------
    InputRefusedError
        With every such row.
    """
    names = [(lane.name, lane.card.name) for lane in lanes]
    of_lane = {lane.name: _points(lane) for lane in lanes}
    known = {entry.name.casefold() for entry in walkers}
    problems = []
    for entry in punches.entries:
        lane = lane_called(entry.lane, names) or ""
        if entry.lane and not lane:
            remedy = f"Lanes are named after their plans: {', '.join(one.name for one in lanes)}."
            problems.append(_problem(punches, entry, "lane", entry.lane, remedy))
        points = of_lane.get(lane) or set().union(*of_lane.values())
        if entry.point.casefold() not in points:
            remedy = "Write the name of the point as the plan does."
            problems.append(_problem(punches, entry, "point", entry.point, remedy))
        if entry.name and entry.name.casefold() not in known:
            remedy = "Write the name as the roster does." if by_roster else _as_files(walkers)
            problems.append(_problem(punches, entry, "name", entry.name, remedy))
    problems += _differing(punches, names)
    if problems:
        raise InputRefusedError(problems)


def _as_files(walkers: Sequence[RosterEntry]) -> str:
    names = list(dict.fromkeys(entry.name for entry in walkers))
    told = ", ".join(names[:_NAMES_TOLD]) + (" ..." if len(names) > _NAMES_TOLD else "")
    remedy = f"Without a roster walkers are called as their files are: {told}."
    return remedy


def punches_of(
    entry: RosterEntry, lane: Lane, punches: PunchList | None
) -> tuple[tuple[str, Punch], ...]:
    """Give by name of point what was brought back; a key makes each right or wrong."""
    if punches is None:
        return ()
    names = {leg.end.name.casefold(): leg.end.name for leg in lane.card.legs}
    of_lane = [one for one in punches.entries if _on(lane, one)]
    # The key of the lane itself goes before the one for every lane.
    keys = sorted((one for one in of_lane if not one.name), key=lambda one: bool(one.lane))
    key = {one.point.casefold(): one.code.casefold() for one in keys}
    return tuple(
        (
            names[one.point.casefold()],
            Punch(
                code=one.code,
                right=key[point] == one.code.casefold() if point in key else None,
                time=one.time,
                noted_s=one.noted_s,
            ),
        )
        for one in of_lane
        if _brought_by(entry, one) and (point := one.point.casefold())
    )


def codes_left_over(
    attempts: Sequence[tuple[RosterEntry, Lane]], punches: PunchList
) -> tuple[PunchEntry, ...]:
    """Give the codes of walkers of the class that belong to none of their attempts."""
    return tuple(
        one
        for one in punches.entries
        if one.name
        and not any(_brought_by(entry, one) and _on(lane, one) for entry, lane in attempts)
    )


def _on(lane: Lane, one: PunchEntry) -> bool:
    """Whether a code is of a point of the lane, and of no lane but this."""
    named = lane_called(one.lane, [(lane.name, lane.card.name)]) if one.lane else lane.name
    return named == lane.name and one.point.casefold() in _points(lane)


def _brought_by(entry: RosterEntry, one: PunchEntry) -> bool:
    return one.name.casefold() == entry.name.casefold() and one.attempt == entry.attempt


def _differing(punches: PunchList, names: Sequence[tuple[str, str]]) -> list[Problem]:
    """Give rows that say another code of one point than an earlier row does.

    A key of one lane may differ from that of all lanes, before which it goes; what one
    walker brought back from a point may not.
    """
    problems = []
    for number, entry in enumerate(punches.entries):
        lane = lane_called(entry.lane, names) if entry.lane else ""
        for first in punches.entries[:number]:
            other = lane_called(first.lane, names) if first.lane else ""
            one_lane = lane == other or (bool(entry.name) and not (lane and other))
            if one_lane and _of_one_point(first, entry) and not _same_code(first, entry):
                rule = (
                    f"{f'of {entry.name}' if entry.name else 'of the key'} for this point "
                    f"differs from line {first.line}"
                )
                remedy = "Keep one of the two."
                problems.append(_problem(punches, entry, "code", entry.code, remedy, rule))
                break
    return problems


def _of_one_point(first: PunchEntry, entry: PunchEntry) -> bool:
    return (
        first.name.casefold() == entry.name.casefold()
        and first.point.casefold() == entry.point.casefold()
        and (not entry.name or first.attempt == entry.attempt)
    )


def _same_code(first: PunchEntry, entry: PunchEntry) -> bool:
    return first.code.casefold() == entry.code.casefold()


def _points(lane: Lane) -> set[str]:
    return {leg.end.name.casefold() for leg in lane.card.legs}


def _problem(
    punches: PunchList,
    entry: PunchEntry,
    column: str,
    value: str,
    remedy: str,
    rule: str = "is not known in this class",
) -> Problem:
    return Problem(
        file=punches.source,
        place=f"line {entry.line}, {column}",
        value=f'"{value}"',
        rule=rule,
        remedy=remedy,
    )
