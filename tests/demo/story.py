"""What happens on the demo's walk: one person, seven legs, some mistakes on purpose."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
from walks.trails import Gait, Tag, Trail, along

from audit.units import wrap_degrees
from demo.course import CAR_PARK, GRID_MAGNETIC_ANGLE_DEG, ORDER, PACES_PER_100M, card, place_m

GAIT = Gait(speed_m_s=1.15, wander_deg=3.5, wander_s=25.0, sighting_deg=1.2)
LOOKING = replace(GAIT, speed_m_s=0.9)
UP_TO_A_POST = replace(GAIT, wander_deg=0.0, sighting_deg=0.0)
PATH_BENDS = 2


@dataclass(slots=True, kw_only=True)
class LoggedLeg:
    """What the walker writes down of a leg; ``arrived`` is a second of the trail."""

    magnetic_deg: float
    paces: float
    arrived: int
    note: str = ""


@dataclass(slots=True)
class Story:
    """The walk as it grows."""

    rng: np.random.Generator
    trail: Trail = field(init=False)
    log: list[LoggedLeg] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.trail = Trail(self.rng, CAR_PARK)


def walk(rng: np.random.Generator) -> Story:
    """Walk from the car park over the course and back."""
    story = Story(rng)
    trail = story.trail
    trail.halt(150.0, Tag(kind="approach"))
    trail.go_by_way_of(place_m("Gate"), PATH_BENDS, GAIT, Tag(kind="approach"))
    trail.halt(240.0, Tag(kind="at-point"))
    _leg(story, 0, turn_deg=1.1, length_m=497.0)
    _overshot_leg(story)
    _boxed_leg(story)
    _short_leg_with_search(story)
    _leg(story, 4, turn_deg=-0.7, length_m=729.0, rest=(0.55, 170.0))
    _leg_without_the_angle(story)
    _leg(story, 6, turn_deg=0.6, length_m=806.0)
    trail.go_by_way_of(CAR_PARK, PATH_BENDS, GAIT, Tag(kind="walk-off"))
    trail.halt(120.0, Tag(kind="walk-off"))
    return story


def _held_deg(leg: int, turn_deg: float) -> float:
    return wrap_degrees(card()[leg]["grid"] + turn_deg)


def _straight(story: Story, leg: int, azimuth_deg: float, length_m: float, kind: str) -> None:
    places = story.trail.straight_places(azimuth_deg, length_m, GAIT)
    story.trail.add(places, Tag(kind=kind, label=leg))


def _arrive(story: Story, leg: int, counted_m: float, *, note: str = "") -> None:
    """Write the log where the count ends."""
    paces = round(counted_m * PACES_PER_100M / 100.0 * float(story.rng.normal(1.0, 0.008)))
    story.log.append(
        LoggedLeg(
            magnetic_deg=card()[leg]["magnetic"],
            paces=float(paces),
            arrived=story.trail.second,
            note=note,
        )
    )


def _go_to_post(story: Story, leg: int, kind: str, gait: Gait = UP_TO_A_POST) -> None:
    story.trail.go_through(place_m(ORDER[leg + 1]), gait, Tag(kind=kind, label=leg))


def _rest_at_post(story: Story, seconds: float) -> None:
    story.trail.halt(seconds, Tag(kind="at-point"))


def _leg(
    story: Story,
    leg: int,
    *,
    turn_deg: float,
    length_m: float,
    rest: tuple[float, float] | None = None,
) -> None:
    """Walk a leg with nothing but ordinary error; the post comes into sight at the end."""
    azimuth = _held_deg(leg, turn_deg)
    if rest is None:
        _straight(story, leg, azimuth, length_m, "walking")
    else:
        share, seconds = rest
        _straight(story, leg, azimuth, share * length_m, "walking")
        story.trail.halt(seconds, Tag(kind="halt", label=leg))
        _straight(story, leg, azimuth, (1.0 - share) * length_m, "walking")
    _arrive(story, leg, length_m)
    _go_to_post(story, leg, "walking")
    _rest_at_post(story, float(story.rng.uniform(80.0, 140.0)))


def _overshot_leg(story: Story) -> None:
    """Leg 2: past the post unseen, on for 66 m, then back."""
    leg, beyond_m = 1, 66.0
    distance = card()[leg]["distance"] + beyond_m
    _straight(story, leg, _held_deg(leg, -1.5), distance, "walking")
    _arrive(story, leg, distance, note="no post at the count, went on")
    story.trail.halt(75.0, Tag(kind="search", label=leg))
    _go_to_post(story, leg, "search", LOOKING)
    _rest_at_post(story, 110.0)


def _boxed_leg(story: Story) -> None:
    """Leg 3: a marsh walked round with right angles, out and back the same."""
    leg, out_m, past_m = 2, 45.0, 95.0
    azimuth = _held_deg(leg, 0.4)
    distance = card()[leg]["distance"]
    _straight(story, leg, azimuth, 0.38 * distance, "walking")
    for turn, length in ((90.0, out_m), (0.0, past_m), (-90.0, out_m)):
        _straight(story, leg, azimuth + turn, length, "bypass")
    rest_m = distance - 0.38 * distance - past_m + 7.0
    _straight(story, leg, azimuth, rest_m, "walking")
    _arrive(story, leg, distance + 7.0, note="boxed the marsh, 30 paces out and back")
    _go_to_post(story, leg, "walking")
    _rest_at_post(story, 150.0)


def _short_leg_with_search(story: Story) -> None:
    """Leg 4: a little short and to the right; no post in sight, a square search finds it."""
    leg = 3
    azimuth, length = _held_deg(leg, 3.2), 0.94 * card()[leg]["distance"]
    _straight(story, leg, azimuth, length, "walking")
    _arrive(story, leg, length, note="square search")
    story.trail.halt(60.0, Tag(kind="search", label=leg))
    here, step = story.trail.position_m.copy(), 25.0
    corners = [(0.0, step), (step, step), (step, -step), (-step, -step), (-step, 2.0 * step)]
    for ahead, right in corners:
        corner = here + along(azimuth, ahead) + along(azimuth + 90.0, right)
        story.trail.go_through(corner, LOOKING, Tag(kind="search", label=leg))
    _go_to_post(story, leg, "search", LOOKING)
    _rest_at_post(story, 130.0)


def _leg_without_the_angle(story: Story) -> None:
    """Leg 6: the grid azimuth set on the compass as it stands on the card; then a long look."""
    leg = 5
    azimuth, length = _held_deg(leg, GRID_MAGNETIC_ANGLE_DEG + 0.5), 0.99 * card()[leg]["distance"]
    _straight(story, leg, azimuth, length, "walking")
    _arrive(story, leg, length, note="nothing here")
    story.log[-1].magnetic_deg = card()[leg]["grid"]
    looking = Tag(kind="search", label=leg)
    story.trail.halt(140.0, looking)
    aside = story.trail.position_m + along(azimuth - 60.0, 70.0)
    story.trail.go_through(aside, LOOKING, looking)
    story.trail.halt(45.0, looking)
    story.trail.go_by_way_of(place_m(ORDER[leg + 1]), 1, LOOKING, looking)
    _rest_at_post(story, 200.0)
