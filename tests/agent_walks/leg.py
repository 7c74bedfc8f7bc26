"""The walker on a leg: marks, needle, count, tracks. All numbers are chosen."""

from __future__ import annotations

import math
from dataclasses import dataclass
from random import Random

from agent_walks.body import Body
from agent_walks.course import Point, ahead
from agent_walks.eyes import Eyes, Marker
from agent_walks.faults import NEVER, Fault
from agent_walks.halts import halt_on_way, plan_halts
from agent_walks.land import Land

_OF_DISTANCE = (
    "hundred-miscounted",
    "single-double-pace",
    "early-stop",
    "overshoot",
    "pace-long",
    "pace-short",
)
_STRAIGHT_SHARE = {"marks": 0.98, "leapfrog": 0.985, "needle": 0.955, "feel": 0.96}
"""Of each metre walked on open ground, what goes toward the point."""

_LURE = {"marks": 0.35, "leapfrog": 0.2, "needle": 0.4, "feel": 0.7}
"""How often a track that leads about his way is taken."""

_GOES_BACK_FROM_TRACK = {"marks": 0.85, "leapfrog": 0.85, "needle": 0.55, "feel": 0.25}


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """What he means to walk: grid azimuth and length as he has them, and to which point."""

    azimuth_deg: float
    length_m: float
    point: int


class Navigator:
    """Decides, second by second, for one walker on one piece of ground."""

    def __init__(self, rng: Random, land: Land, body: Body, markers: list[Marker]) -> None:
        self.rng, self.land, self.body, self.who = rng, land, body, body.who
        self.eyes = Eyes(rng, land, body, markers)

    def walk(self, order: Order, fault: Fault) -> str:
        """Walk a leg; how it ended: found, other, count, back or gave-up."""
        self.order, self.fault = order, fault
        rng, who = self.rng, self.who
        self.begin, self.start_s = self.body.place, self.body.now
        self.count_m = 0.0
        self.aimed_deg = rng.gauss(0.0, who.set_sd_deg) + who.bias_deg
        self.goal_m = max(30.0, order.length_m * fault.length_factor + fault.length_add_m)
        self.tally = who.pace_ratio * self._tuned() * math.exp(rng.gauss(0.0, who.pace_ratio_sd))
        if fault.early is not None:
            self.goal_m *= fault.early
        self.stop_at_m = self.goal_m * fault.give_up if fault.give_up is not None else NEVER
        self.noticed = fault.notice_m == NEVER
        self.drift_deg = 0.0
        self.pushed_m = self.kept_m = 0.0
        self.next_knot_m = 100.0
        self.no_track_before_s = -1
        self.halts = plan_halts(self.body, self.goal_m)
        who.slide *= fault.slide_factor
        end = ""
        while not end:
            end = self._stretch()
        if end != "back":
            self.ended_s = self.body.now
        who.slide /= fault.slide_factor
        self.body.side = 0
        self._name_causes(end)
        return end

    def heading_deg(self) -> float:
        """The grid direction he holds to be right, here and now."""
        fault = self.fault
        heading = self.order.azimuth_deg + self.aimed_deg + self.drift_deg
        if self.count_m < fault.notice_m:
            heading += fault.turn_deg
        heading += fault.veer_deg * (self.count_m / self.goal_m)
        if fault.iron is not None:
            off = (self.count_m - fault.iron.at * self.goal_m) / (0.6 * fault.iron.width_m)
            heading += fault.iron.turn_deg * math.exp(-(off**2))
        return heading

    def _tuned(self) -> float:
        """His pace number was taken on ground like this, so the mean shortening is in it."""
        stride = self.land.mean_stride
        return _STRAIGHT_SHARE[self.who.style] * stride / (1.0 - self.who.adjust * (1.0 - stride))

    def _stretch(self) -> str:
        """One bit of way: a mark, a glance at the needle, a stretch by feel, a track."""
        rng, who, body = self.rng, self.who, self.body
        if self._takes_track():
            return self._along_track()
        if abs(self.pushed_m) > 5.0 and not body.side:
            return self._make_good()
        if who.style == "needle":
            self.drift_deg = 0.75 * self.drift_deg + rng.gauss(0.0, who.sight_sd_deg * 0.7)
            return self._to(ahead(body.place, self.heading_deg(), 120.0), rng.uniform(12, 30))
        if who.style == "feel":
            self.drift_deg += rng.gauss(0.0, who.veer_sd_deg)
            if self.count_m > 0.0 and rng.random() < 0.09:
                # Takes the compass out again.
                self.drift_deg = rng.gauss(0.0, who.sight_sd_deg)
                body.stand(rng.uniform(3, 18))
            return self._to(ahead(body.place, self.heading_deg(), 60.0), rng.uniform(7, 13))
        return self._to_mark()

    def _to_mark(self) -> str:
        """Sight something ahead, walk up to it, and stand there a while."""
        rng, who, body = self.rng, self.who, self.body
        cell = self.land.cell(body.east, body.north)
        clear = 1.0 - 0.68 * self.land.canopy[cell] - 0.25 * self.land.thick[cell]
        left_m = self.goal_m - self.count_m
        far_m = max(14.0, min(rng.uniform(30, 150) * clear, left_m + 8.0))
        if who.style == "leapfrog":
            far_m = min(far_m, rng.uniform(20, 60))
        self.drift_deg = rng.gauss(0.0, who.sight_sd_deg)
        aim_deg = self.heading_deg() + math.degrees(rng.gauss(0, 0.7) / far_m)
        end = self._to(ahead(body.place, aim_deg, far_m), far_m * 1.6 + 60.0)
        if not end and who.style == "leapfrog":
            body.stand(rng.uniform(12, 45), 0.15)
        elif not end and rng.random() < 0.7:
            body.stand(rng.expovariate(1.0) * who.resight_s)
        return end

    def _to(self, mark: Point, most_m: float, hurry: float = 1.0) -> str:
        """Walk to a mark or for so many metres, with all that may come between."""
        body, walked_m = self.body, 0.0
        while walked_m < most_m and body.away(*mark) > 1.8:
            walked_m += body.toward(*mark, hurry)
            self._tally_step()
            end = self._after_step()
            if end:
                return end
        return ""

    def _tally_step(self) -> None:
        """Count the paces of the last second as metres of the leg."""
        body, who = self.body, self.who
        metres = body.paces * (1.0 - who.adjust * (1.0 - body.stride)) * self.tally
        angle = math.radians(self.heading_deg())
        along = body.facing_east * math.sin(angle) + body.facing_north * math.cos(angle)
        if body.side and who.style in ("needle", "feel"):
            aside = body.facing_east * math.cos(angle) - body.facing_north * math.sin(angle)
            self.pushed_m += aside * metres
        if along < 0.94 and not who.counts_bypass:
            # Only what goes his way counts for the leg.
            metres *= along
        self.count_m += metres

    def _after_step(self) -> str:
        """Eyes, beads, halts and the end of the count."""
        body, rng = self.body, self.rng
        late = body.now > self.start_s + 3.2 * self.goal_m + 900
        if late or self.count_m >= self.stop_at_m:
            return "gave-up"
        post = self._sees()
        if post is not None:
            self.eyes.found = post
            body.go(*post.at, hurry=1.0, reach=1.5)
            return "found" if self.order.point in post.points else "other"
        if self.count_m >= self.goal_m:
            return "count"
        if self.count_m >= self.next_knot_m:
            self.next_knot_m += 100.0
            if rng.random() < 0.7:
                body.stand(self.who.knot_s)
        while self.halts and self.count_m >= self.halts[0][0]:
            _, kind = self.halts.pop(0)
            heading_deg = self.heading_deg()
            halt_on_way(body, kind, heading_deg=heading_deg, leg_began_s=self.start_s)
        if not self.noticed and self.count_m >= self.fault.notice_m:
            self.noticed, self.ended_s = True, body.now
            body.stand(rng.uniform(15, 120))
            if rng.random() < 0.4:
                return "back"
        return ""

    def _sees(self) -> Marker | None:
        """Look out for the point, the more the farther he has come."""
        part = self.count_m / self.goal_m
        eager = 0.9 if part > 0.8 else 0.4 if part > 0.6 else 0.06
        if self.fault.early is not None:
            eager *= 0.3
        if self.count_m <= 25.0:
            return None
        return self.eyes.look(self.order.point, eager, rejects=part < 0.85)

    def _takes_track(self) -> bool:
        """Does a track that runs about his way tempt him?"""
        body = self.body
        if body.now < self.no_track_before_s or self.goal_m - self.count_m < 60.0:
            return False
        off_m, track_east, track_north = self.land.line_near(self.land.track, *body.place)
        if abs(off_m) > 12.0:
            return False
        angle = math.radians(self.heading_deg())
        along = track_east * math.sin(angle) + track_north * math.cos(angle)
        if abs(along) < 0.87:
            return False
        self.no_track_before_s = body.now + 120
        self.sense = 1.0 if along > 0 else -1.0
        return self.rng.random() < _LURE[self.who.style]

    def _along_track(self) -> str:
        """Go with the track, quicker, while it serves; careful hands make good the offset."""
        body, rng, land = self.body, self.rng, self.land
        angle = math.radians(self.heading_deg())
        begin = body.place
        most_m = rng.uniform(40, 220)
        walked_m, end, aside_m = 0.0, "", 0.0
        while walked_m < most_m and not end:
            off_m, track_east, track_north = land.line_near(land.track, *body.place)
            track_east, track_north = track_east * self.sense, track_north * self.sense
            along = track_east * math.sin(angle) + track_north * math.cos(angle)
            if abs(off_m) > 25.0 or along < 0.6:
                break
            side = -self.sense * off_m
            next_place = (
                body.east + 14 * track_east + side * track_north * 0.8,
                body.north + 14 * track_north - side * track_east * 0.8,
            )
            end = self._to(next_place, 7.0, 1.12)
            walked_m += 7.0
            aside_m = self._aside_m(begin, angle)
        if not end and abs(aside_m) > 8.0:
            if rng.random() < _GOES_BACK_FROM_TRACK[self.who.style]:
                back_m = aside_m * rng.gauss(1.0, 0.2)
                body.stand(rng.uniform(3, 25))
                end = self._sidle(back_m)
            elif abs(aside_m) > 22.0:
                self.fault.name("handrail")
        return end

    def _aside_m(self, begin: Point, angle: float) -> float:
        """How far to the right he is of a line from a place on."""
        east, north = self.body.east - begin[0], self.body.north - begin[1]
        return east * math.cos(angle) - north * math.sin(angle)

    def _make_good(self) -> str:
        """Round the thicket, he gains his line again by guess, or forgets to."""
        aside_m, self.pushed_m = self.pushed_m, 0.0
        if self.rng.random() < (0.85 if self.who.style == "needle" else 0.7):
            back_m = aside_m * self.rng.gauss(0.95, 0.25)
            self.kept_m += aside_m - back_m
            return self._sidle(back_m)
        self.kept_m += aside_m
        return ""

    def _sidle(self, back_m: float) -> str:
        """Slant back toward the line by so many metres to the left."""
        angle = math.radians(self.heading_deg())
        on_m = abs(back_m) * self.rng.uniform(0.3, 1.5)
        place = (
            self.body.east - back_m * math.cos(angle) + on_m * math.sin(angle),
            self.body.north + back_m * math.sin(angle) + on_m * math.cos(angle),
        )
        return self._to(place, 400.0)

    def _name_causes(self, end: str) -> None:
        """Name what happened of itself, and drop what was planted but had no effect."""
        fault = self.fault
        if end == "other":
            fault.name("wrong-point")
        if end == "found":
            fault.causes[:] = [cause for cause in fault.causes if cause not in _OF_DISTANCE]
        aside_m = self._aside_m(self.begin, math.radians(self.order.azimuth_deg))
        if "sidehill" in fault.causes and abs(aside_m) < 0.06 * self.goal_m:
            fault.causes.remove("sidehill")
        self.kept_m += self.pushed_m
        if abs(self.kept_m) > max(18.0, 0.07 * self.goal_m) and end != "gave-up":
            fault.name("obstacle-one-side")
        if end == "count" and self._passed():
            fault.name("passed-unseen")

    def _passed(self) -> bool:
        """Did he go by the post of this point, close, and on?"""
        body, point = self.body, self.order.point
        post = next((one for one in self.eyes.markers if point in one.points), None)
        if post is None or body.away(*post.at) < 30.0:
            return False
        since = slice(self.start_s + 30, None, 3)
        return any(
            (east - post.at[0]) ** 2 + (north - post.at[1]) ** 2 < 100.0
            for east, north in zip(body.easts_m[since], body.norths_m[since], strict=True)
        )
