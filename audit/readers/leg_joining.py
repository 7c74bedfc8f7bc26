"""Legs joined end to start: every name, start and end filled in and checked."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches

from audit.plan import PlannedLeg
from audit.positions import Position
from audit.readers.plan_draft import DraftLeg
from audit.readers.point_book import PointBook, same_place
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList
from audit.words import sentence


def joined_legs(drafts: list[DraftLeg], book: PointBook, problems: ProblemList) -> list[PlannedLeg]:
    """Give the legs with every name, start and end filled in."""
    legs: list[PlannedLeg] = []
    ends: list[str] = []  # of legs that end at no point of the plan
    points = book.names()
    last = next(iter(points), None)
    for number, draft in enumerate(drafts, start=1):
        start = _start(draft, last, [*points, *ends], problems, first=number == 1)
        last = end = _end(draft, number, points, ends, problems)
        if end is not None and end not in [*points, *ends]:
            ends.append(end)
        if start is None or end is None or draft.spoilt:
            continue
        _check_length(draft, start, end, book.readings, problems)
        if legs and legs[-1].end != start and draft.start is not None:
            problems.note(sentence("plan-starts-elsewhere", place=draft.place, start=start))
        legs.append(_leg(draft, number, start, end))
    _check_names(drafts, problems)
    return legs


def _leg(draft: DraftLeg, number: int, start: str, end: str) -> PlannedLeg:
    return PlannedLeg(
        name=draft.name or str(number),
        start=start,
        end=end,
        grid_azimuth=draft.values.grid_azimuth,
        magnetic_azimuth=draft.values.magnetic_azimuth,
        true_azimuth=draft.values.true_azimuth,
        distance_m=draft.values.distance_m,
        paces=draft.values.paces,
        grid_azimuth_half_step_deg=draft.values.grid_azimuth_half_step_deg,
        distance_half_step_m=draft.values.distance_half_step_m,
        in_mils=draft.values.in_mils,
        via=draft.via,
        note=draft.note,
    )


def _start(
    draft: DraftLeg, last: str | None, known: list[str], problems: ProblemList, *, first: bool
) -> str | None:
    if draft.start is not None:
        return _known_name(draft.start, known, f"{draft.place}, from", problems)
    if first and last is None and not draft.spoilt:
        remedy = "Give the plan a first point with its position."
        problems.add(f"{draft.place}, from", None, "has no start", remedy)
    elif first and last is not None:
        problems.note(sentence("plan-no-start", place=draft.place, start=last))
    return last


def _end(
    draft: DraftLeg, number: int, points: list[str], ends: list[str], problems: ProblemList
) -> str | None:
    reckoned = draft.values.lead_to_an_end
    if draft.end is not None and not (draft.open_end and reckoned):
        return _known_name(draft.end, points, f"{draft.place}, to", problems, reckoned=reckoned)
    if draft.end is not None:
        known = [*points, *ends]
        if draft.end in points or (draft.end not in ends and _alike(draft.end, known)):
            return _known_name(draft.end, known, f"{draft.place}, to", problems)
        problems.note(sentence("plan-end-reckoned", place=draft.place, end=draft.end))
        return draft.end
    if draft.spoilt:
        return None
    if not reckoned:
        rule = "has neither an end nor both an azimuth and a distance"
        problems.add(f"{draft.place}, to", None, rule, "Name the point where the leg ends.")
        return None
    name: str = sentence("plan-end-name", leg=draft.name or str(number))
    while name in points:
        name += "'"
    problems.note(sentence("plan-no-end", place=draft.place))
    return name


def _known_name(
    name: str, known: list[str], place: str, problems: ProblemList, *, reckoned: bool = False
) -> str | None:
    """Give the known name that is meant: letter for letter, or but for its capitals."""
    if name in known:
        return name
    alike = _alike(name, known)
    if len(alike) == 1:
        problems.note(sentence("plan-taken-as", place=place, name=name, other=alike[0]))
        return alike[0]
    near = get_close_matches(name, known, n=1)
    remedy = f'Perhaps "{near[0]}" is meant.' if near else "Give it a point with its position."
    if reckoned and not near:
        remedy = 'Give it a point with its position, or leave "to" out: azimuth and distance lead.'
    problems.add(place, name, "names no point of the plan", remedy)
    return None


def _alike(name: str, known: list[str]) -> list[str]:
    return [other for other in known if other.casefold() == name.casefold()]


def _check_length(
    draft: DraftLeg,
    start: str,
    end: str,
    readings: Mapping[str, PositionReading],
    problems: ProblemList,
) -> None:
    one, other = readings.get(start), readings.get(end)
    nowhere = start == end
    if one is not None and other is not None:
        nowhere = nowhere or same_place(
            _without_square(one.position), _without_square(other.position), problems.limits
        )
    if nowhere:
        rule = f'starts and ends at one place ("{start}" and "{end}")'
        problems.add(draft.place, None, rule, "Check the points; split a round into two legs.")


def _without_square(position: Position) -> Position:
    return Position(longitude_deg=position.longitude_deg, latitude_deg=position.latitude_deg)


def _check_names(drafts: list[DraftLeg], problems: ProblemList) -> None:
    """Put a problem down for each leg name that comes twice, counting the default names."""
    seen: dict[str, str] = {}
    for number, draft in enumerate(drafts, start=1):
        name = draft.name or str(number)
        if name in seen:
            rule = f"is the name of {seen[name]} too"
            problems.add(draft.place, name, rule, "Give each leg its own name.")
        seen.setdefault(name, draft.place)
