"""What the walker sees: the posts at points, and posts of others. All numbers are chosen."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from agent_walks.body import Body
from agent_walks.course import Point
from agent_walks.land import Land

_FARTHEST_M = 75.0
"""No post shows from farther off."""


@dataclass(slots=True, kw_only=True, eq=False)
class Marker:
    """A post on the ground and the points of the plan it stands for; none: foreign."""

    at: Point
    points: set[int]


class Eyes:
    """The walker's eyes for posts; ``found`` is the post that he came to last."""

    def __init__(self, rng: Random, land: Land, body: Body, markers: list[Marker]) -> None:
        self.rng, self.land, self.body, self.markers = rng, land, body, markers
        self.found: Marker | None = None
        self.blind_until_s = -1
        self.bright = rng.uniform(0.55, 1.4)

    def look(self, point: int, eager: float, *, rejects: bool = False) -> Marker | None:
        """Glance round for the post of a point; give the post that shows, if one does."""
        body = self.body
        if body.now < self.blind_until_s:
            return None
        nearest_m = 1e9
        for marker in self.markers:
            far_m = body.away(*marker.at)
            nearest_m = min(nearest_m, far_m)
            foreign = point not in marker.points
            if far_m > _FARTHEST_M or (foreign and (rejects or marker is self.found)):
                continue
            reach_m = self._sight_m(marker)
            if far_m > reach_m or not self._is_ahead(marker, far_m):
                continue
            ease = 0.04 + 0.4 * (1.0 - far_m / reach_m)
            if foreign:
                ease *= 0.4
            if self.rng.random() < ease * eager * body.who.alert:
                return marker
        # No post can show before he has walked this far.
        self.blind_until_s = body.now + int((nearest_m - _FARTHEST_M) / 2.3)
        return None

    def _sight_m(self, marker: Marker) -> float:
        """From how far a post shows here."""
        cell = self.land.cell(*marker.at)
        open_m = 46.0 - 20.0 * self.land.canopy[cell] - 10.0 * self.land.thick[cell]
        return max(10.0, open_m * self.bright)

    def _is_ahead(self, marker: Marker, far_m: float) -> bool:
        """Say whether a post lies where he looks; close by he sees it anyway."""
        body = self.body
        if far_m <= 6.0:
            return True
        east, north = marker.at[0] - body.east, marker.at[1] - body.north
        return east * body.facing_east + north * body.facing_north >= 0.25 * far_m
