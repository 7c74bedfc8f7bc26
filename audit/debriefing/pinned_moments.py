"""The boundaries that an instructor settles, read and checked against plan and recording."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from itertools import pairwise

from audit.errors import InputRefusedError, Problem
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack
from audit.matching.pins import Pin, PinnedEnd
from audit.moments import DAY_S, read_moment, utc_text
from audit.settings import MatchingSettings

Moment = str | dt.datetime
_CLOCK = re.compile(
    r"(\d{1,2})(?::(\d{2})(?::(\d{2}(?:\.\d+)?))?|(\d{2}))(Z|[+-]\d{2}:?\d{2})?", re.ASCII
)
_FORMS = (
    "Write a clock time of that day in UTC, like 09:15 or 09:15:30, by another clock like "
    "11:15+02:00, or 2026-10-03T09:15:30Z"
)
_SLACK_S = 1.0  # a second is the last digit that people write


def read_pins(
    starts: Mapping[str, Moment],
    claims: Mapping[str, Moment],
    card: LegCard,
    clean: CleanTrack,
    source: str,
    settings: MatchingSettings,
) -> tuple[Pin, ...]:
    """Give the pins in the order of the plan.

    Parameters
    ----------
    starts, claims
        By name of leg: when the walker left for it, and when he claimed its end.
    source
        The recording's file, for problems.

    Raises
    ------
    InputRefusedError
        With every pin that names no leg, is no moment of the recording, or comes before
        one that it must follow.
    """
    names = {leg.name: number for number, leg in enumerate(card.legs)}
    problems: list[Problem] = []
    pins: list[Pin] = []
    given: tuple[tuple[PinnedEnd, Mapping[str, Moment]], ...] = (
        ("from", starts),
        ("claim", claims),
    )
    for end, moments in given:
        for name, moment in moments.items():
            try:
                pin = Pin(leg=_number(name, names), end=end, time_s=_moment_s(moment, clean, end))
            except _WrongPinError as wrong:
                problems.append(_problem(source, end, f'"{name}={moment}"', wrong))
            else:
                pins.append(pin)
    pins.sort(key=lambda pin: (pin.leg, pin.end == "claim"))
    if not problems:
        problems = _out_of_order(pins, card, source, settings)
    if problems:
        raise InputRefusedError(problems)
    return tuple(pins)


class _WrongPinError(Exception):
    def __init__(self, rule: str, remedy: str) -> None:
        super().__init__(rule)
        self.rule, self.remedy = rule, remedy


def _number(name: str, names: Mapping[str, int]) -> int:
    if name not in names:
        rule = f'is for leg "{name}", which the plan does not have'
        raise _WrongPinError(rule, f"Its legs are {', '.join(names)}")
    return names[name]


def _problem(source: str, end: PinnedEnd, value: str, wrong: _WrongPinError) -> Problem:
    return Problem(
        file=source, place=f"option {end}", value=value, rule=wrong.rule, remedy=f"{wrong.remedy}."
    )


def _moment_s(moment: Moment, clean: CleanTrack, end: PinnedEnd) -> float:
    """Give the moment of the recording that is meant."""
    if not clean.timed:
        rule = "cannot be found in a recording without times"
        raise _WrongPinError(rule, "Leave it out, or give the recording with its times")
    begin_s, end_s = float(clean.time_s[0]), float(clean.time_s[-1])
    meant = _meant_s(moment, begin_s, end_s)
    within = [time_s for time_s in meant if begin_s - _SLACK_S <= time_s <= end_s + _SLACK_S]
    runs = f"the recording, which runs from {utc_text(begin_s)} to {utc_text(end_s)}"
    if not within:
        rule = f"lies outside {runs}"
        raise _WrongPinError(rule, _FORMS)
    if len(within) > 1:
        rule = f"comes on {len(within)} days of {runs}"
        raise _WrongPinError(rule, f"Give the day too, like {utc_text(within[0])}")
    time_s = min(max(within[0], begin_s), end_s)
    if time_s == (end_s if end == "from" else begin_s):
        rest = "after" if end == "from" else "before"
        rule = f"leaves nothing of the recording {rest} it for the leg to be walked in"
        raise _WrongPinError(rule, "Give the moment that the map shows")
    return time_s


def _meant_s(moment: Moment, begin_s: float, end_s: float) -> list[float]:
    """Give the moments that a text may mean: a clock time comes once every day."""
    if isinstance(moment, dt.datetime):
        return [_in_utc(moment).timestamp()]
    text = moment.strip().upper()
    clock = _CLOCK.fullmatch(text)
    try:
        if clock is None:
            return [_in_utc(read_moment(text)).timestamp()]
        hours, minutes, seconds = int(clock[1]), int(clock[2] or clock[4]), float(clock[3] or 0.0)
        dt.time(hours, minutes, int(seconds))
        ahead_s = _ahead_of_utc_s(clock[5] or "Z")
    except ValueError:
        rule = "is no moment"
        raise _WrongPinError(rule, _FORMS) from None
    midnight_s = begin_s // DAY_S * DAY_S
    days = range(-1, int((end_s - midnight_s) // DAY_S) + 2)
    into_day_s = 3600.0 * hours + 60.0 * minutes + seconds - ahead_s
    return [midnight_s + DAY_S * day + into_day_s for day in days]


def _ahead_of_utc_s(zone: str) -> float:
    """Give by how much a clock of "Z", "+02:00" or "-0500" is ahead of UTC."""
    if zone == "Z":
        return 0.0
    hours, minutes = int(zone[1:3]), int(zone[-2:])
    ahead_s = dt.timedelta(hours=dt.time(hours, minutes).hour, minutes=minutes).total_seconds()
    return -ahead_s if zone[0] == "-" else ahead_s


def _in_utc(moment: dt.datetime) -> dt.datetime:
    return moment if moment.tzinfo else moment.replace(tzinfo=dt.UTC)


def _out_of_order(
    pins: list[Pin], card: LegCard, source: str, settings: MatchingSettings
) -> list[Problem]:
    """Give a problem for each pin that comes before one that it must follow."""
    problems = []
    for before, after in pairwise(pins):
        if card.order == "free" and before.leg != after.leg:
            continue
        least_s = settings.shortest_pinned_s if before.leg == after.leg else 0.0
        if after.time_s - before.time_s >= least_s:
            continue
        wrong = _WrongPinError(
            f"comes too early: {_told(before, card)} at {utc_text(before.time_s)}",
            "Give the moments in the order of the course",
        )
        value = f'"{card.legs[after.leg].name}={utc_text(after.time_s)}"'
        problems.append(_problem(source, after.end, value, wrong))
    return problems


def _told(pin: Pin, card: LegCard) -> str:
    name = card.legs[pin.leg].name
    return f"leg {name} is pinned to begin" if pin.end == "from" else f"leg {name} is claimed"
