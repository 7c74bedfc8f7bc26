"""A whole made class: lanes, roster, recordings, and what was planted."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from walks.difficulties import Difficulty
from walks.families import DIFFICULTIES
from walks.receivers import draw_receiver
from walks.walk import Walk, walk_on

from audit.track import Track
from classes.followers import walk_behind
from classes.lanes import Lane, make_lane
from classes.members import EVERYTHING, Member, Plants, draw_members


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeWalk:
    """One member's recording; ``walk`` is the truth, the leader's for one who follows."""

    member: Member
    walk: Walk
    track: Track


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeClass:
    """A class: ``walks`` in the order of the roster, before files were exchanged.

    ``bad_compass`` is the number of the compass that reads wrong, "" where none does;
    ``misplaced`` the name of the point whose marker stands elsewhere.
    """

    seed: int
    plants: Plants
    lanes: tuple[Lane, ...]
    walks: tuple[MadeWalk, ...]
    bad_compass: str
    misplaced: str


def make_class(
    seed: int,
    *,
    walkers: int = 40,
    lanes: int = 2,
    legs: int = 6,
    compasses: int = 8,
    plants: Plants = EVERYTHING,
    family: Difficulty | None = None,
    interval_s: float | None = None,
) -> MadeClass:
    """Make the class of a seed: the same arguments give the same bytes.

    ``family`` is how everybody walks; left out, trained, ordinary and novice walkers mix.
    ``interval_s`` is how often every receiver logs; left out, each its own 1 to 5 s.
    """
    roots = np.random.SeedSequence(seed).spawn(2 + 4 * (walkers + 8))
    rng = np.random.default_rng(roots[0])
    off = None
    if plants.misplaced_m is not None:
        off = (int(rng.integers(2, legs - 1)), np.array(plants.misplaced_m))
    made = tuple(
        make_lane(rng, number, legs, off if number == 0 else None) for number in range(lanes)
    )
    members, bad = draw_members(np.random.default_rng(roots[1]), walkers, lanes, compasses, plants)
    if interval_s is not None:
        members = tuple(replace(member, interval_s=interval_s) for member in members)
    walks: dict[str, MadeWalk] = {}
    for number, member in sorted(enumerate(members), key=lambda pair: bool(pair[1].follows)):
        streams = [np.random.default_rng(root) for root in roots[2 + 4 * number :][:4]]
        course = made[member.lane].course
        how = _family(member, family)
        if member.follows:
            leader = walks[member.follows].walk
            receiver = draw_receiver(streams[3], how)
            track = walk_behind(streams[3], leader, receiver)
            walks[member.file] = MadeWalk(member=member, walk=leader, track=track)
            continue
        turn = plants.compass_deg if bad and member.compass == bad else 0.0
        walk = walk_on(
            course, how, streams[:3], seed=seed, first_s=member.start.timestamp(), turn_deg=turn
        )
        walks[member.file] = MadeWalk(member=member, walk=walk, track=walk.track)
    return MadeClass(
        seed=seed,
        plants=plants,
        lanes=made,
        walks=tuple(walks[member.file] for member in members),
        bad_compass=bad,
        misplaced=made[0].point_names[off[0]] if off else "",
    )


def _family(member: Member, family: Difficulty | None) -> Difficulty:
    """Give how a member walks: skill by the roster, on foot only, points marked."""
    how = family or DIFFICULTIES[member.skill]
    return replace(
        how,
        marked=1.0,
        misplaced=0.0,
        vehicle=0.0,
        pace_strip=0.0,
        two_walks=0.0,
        starts_late=0.0,
        ends_early=0.0,
        by_distance=0.0,
        interval_s=(member.interval_s,),
        approach_m=(20.0, 150.0),
        speed_m_s=(0.9, 1.4),
    )
