"""Who is in a class: names, lanes, devices, compasses, starts; and what is planted."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field, replace

import numpy as np

SKILLS = ("trained", "ordinary", "novice")
SKILL_CHANCES = (0.4, 0.45, 0.15)
NAMES = (
    "Adder", "Bittern", "Crake", "Dunlin", "Egret", "Finch", "Gannet", "Heron", "Ibis", "Jay",
    "Kestrel", "Linnet", "Merlin", "Nuthatch", "Osprey", "Plover", "Quail", "Raven", "Siskin",
    "Teal", "Vole", "Wren", "Otter", "Stoat", "Badger", "Curlew", "Dipper", "Eider", "Fieldfare",
    "Grouse", "Hobby", "Knot", "Lapwing", "Martin", "Newt", "Ouzel", "Pipit", "Redstart", "Shrike",
    "Tern",
)  # fmt: skip
FORMULA = '=HYPERLINK("x","Avocet")'
"""A name that a spreadsheet would run."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plants:
    """What a class is made with. Nothing where left out.

    Attributes
    ----------
    misplaced_m : tuple or None
        How far east and north of its point one marker of the first lane stands.
    compass_deg : float
        What one compass reads wrong.
    swapped, followed, broken, formula : bool
        Two devices exchanged; one who walks behind another; a file cut short; a name
        that begins with an equals sign.
    """

    misplaced_m: tuple[float, float] | None = None
    compass_deg: float = 0.0
    swapped: bool = False
    followed: bool = False
    broken: bool = False
    formula: bool = False
    second_attempts: int = 0


EVERYTHING = Plants(
    misplaced_m=(85.0, -70.0),
    compass_deg=6.0,
    swapped=True,
    followed=True,
    broken=True,
    formula=True,
    second_attempts=2,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """One row of the roster, and the truth behind it.

    ``follows`` is the file of the walker that this one walks behind; ``holds`` the file
    whose recording really is in this one's, where two were exchanged.
    """

    name: str
    lane: int
    device: str
    compass: str
    file: str
    start: dt.datetime
    attempt: int
    skill: str
    interval_s: float
    follows: str = ""
    holds: str = ""
    broken: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Waves:
    """When a class sets off: every lane sends one after so many minutes."""

    first: dt.datetime = field(default=dt.datetime(2026, 9, 19, 13, 0, tzinfo=dt.UTC))
    apart_min: float = 6.0


def draw_members(
    rng: np.random.Generator, walkers: int, lanes: int, compasses: int, plants: Plants
) -> tuple[tuple[Member, ...], str]:
    """Draw the roster, and the number of the compass that is bad ("" where none is)."""
    waves = _Waves()
    members = []
    for number in range(walkers):
        lane, turn = number % lanes, number // lanes
        late_s = float(rng.normal(0.0, 30.0))
        start = waves.first + dt.timedelta(minutes=waves.apart_min * turn, seconds=round(late_s))
        name = NAMES[number % len(NAMES)]
        name += "" if number < len(NAMES) else f" {number // len(NAMES) + 1}"
        members.append(
            Member(
                name=name,
                lane=lane,
                device=f"R{number + 1:02d}",
                compass=f"C{rng.integers(compasses) + 1:02d}",
                file=f"R{number + 1:02d}.gpx",
                start=start,
                attempt=1,
                skill=str(rng.choice(SKILLS, p=SKILL_CHANCES)),
                interval_s=float(rng.choice([1.0, 1.0, 2.0, 3.0, 4.0, 5.0])),
            )
        )
    return _planted(rng, members, plants)


def _planted(
    rng: np.random.Generator, members: list[Member], plants: Plants
) -> tuple[tuple[Member, ...], str]:
    order = [int(one) for one in rng.permutation(len(members))]
    bad = ""
    if plants.compass_deg:
        held = [one.compass for one in members]
        bad = max(sorted(set(held)), key=held.count)
    if plants.formula:
        _change(members, order.pop(), name=FORMULA)
    if plants.broken:
        _change(members, order.pop(), broken=True)
    if plants.followed:
        _follow(members, order)
    if plants.swapped:
        _swap(members, order)
    for number in range(plants.second_attempts):
        member = members[order[number]]
        again = f"{member.device}-2"
        later = member.start + dt.timedelta(hours=5)
        other = (member.lane + 1) % (1 + max(one.lane for one in members))
        members.append(
            replace(member, lane=other, file=f"{again}.gpx", start=later, attempt=2,
                    follows="", holds="")
        )  # fmt: skip
    return tuple(members), bad


def _follow(members: list[Member], order: list[int]) -> None:
    """Let one set off right behind another of his lane."""
    behind = order.pop()
    ahead = next(one for one in order if members[one].lane == members[behind].lane)
    order.remove(ahead)
    leader = members[ahead]
    _change(members, behind, follows=leader.file, start=leader.start + dt.timedelta(seconds=30))


def _swap(members: list[Member], order: list[int]) -> None:
    """Let two of different lanes hold each other's device."""
    one = order.pop()
    two = next(other for other in order if members[other].lane != members[one].lane)
    order.remove(two)
    files = members[one].file, members[two].file
    _change(members, one, holds=files[1])
    _change(members, two, holds=files[0])


def _change(members: list[Member], number: int, **fields: object) -> None:
    members[number] = replace(members[number], **fields)
