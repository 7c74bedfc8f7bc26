"""Walking one planned leg: pieces, obstacles, the claim, and the point that comes into sight."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from audit.units import FloatArray, direction_degrees, turn_degrees, unit_vector, wrap_degrees
from walks.leg_intents import LegIntent
from walks.outings import BEND_DEG, LegRecord, Outing
from walks.trails import Gait, Tag


@dataclass(slots=True, kw_only=True)
class Piece:
    """A straight part of a leg: turn off the azimuth held, length, and a halt after it."""

    turn_deg: float
    length_m: float
    kind: str = "walking"
    halt_s: float = 0.0
    smooth: bool = False


def _split(pieces: list[Piece], at_m: float) -> tuple[list[Piece], list[Piece]]:
    """Cut a list of pieces at a distance along it."""
    before: list[Piece] = []
    after = list(pieces)
    left = at_m
    while after and left > after[0].length_m:
        left -= after[0].length_m
        before.append(after.pop(0))
    if after and left > 0.0:
        whole = after.pop(0)
        before.append(replace(whole, length_m=left, halt_s=0.0))
        after.insert(0, replace(whole, length_m=whole.length_m - left))
    return before, after


def _shorten(pieces: list[Piece], by_m: float) -> list[Piece]:
    """Take a length off the front of the pieces, keeping 10 m at least."""
    rest = sum(piece.length_m for piece in pieces)
    _, after = _split(pieces, min(by_m, max(rest - 10.0, 0.0)))
    return after


def _box(outing: Outing, pieces: list[Piece], intent: LegIntent) -> list[Piece]:
    """Walk round an obstacle: out, past it and back, or not quite back."""
    rng = outing.rng
    length = sum(piece.length_m for piece in pieces)
    before, after = _split(pieces, length * float(rng.uniform(0.2, 0.6)))
    side = float(rng.choice([-90.0, 90.0]))
    # What is counted on the way round must be left of the leg, at 40 % of it or more.
    widest_m = (0.1 if intent.bypass == "bypass-paced" else 0.3) * length
    out_m = float(min(rng.uniform(20.0, 80.0), widest_m))
    ahead_m = float(min(rng.uniform(30.0, 150.0), 0.15 * length))
    back_m = out_m * float(rng.uniform(0.93, 1.07))
    if intent.bypass == "bypass-unequal":
        back_m = out_m * float(rng.choice([0.0, 0.5, 1.6]))
        intent.plant("bypass-unequal", (out_m - back_m) * np.sign(side), "m")
    counted = ahead_m
    if intent.bypass == "bypass-paced":
        counted += out_m + back_m
        intent.plant("bypass-paced", -(out_m + back_m), "m")
    box = [Piece(turn_deg=side, length_m=out_m, kind="bypass")]
    box.append(Piece(turn_deg=0.0, length_m=ahead_m, kind="bypass"))
    if back_m > 0.0:
        box.append(Piece(turn_deg=-side, length_m=back_m, kind="bypass"))
    return before + box + _shorten(after, counted)


def _dodge(outing: Outing, length_m: float, intent: LegIntent) -> list[Piece]:
    """Pass some obstacles on the same side, never coming back to the line."""
    rng = outing.rng
    side = float(rng.choice([-1.0, 1.0]))
    count = int(rng.integers(2, 5))
    part_m = length_m / count
    pieces: list[Piece] = []
    total = 0.0
    for _ in range(count):
        forward_m = float(min(rng.uniform(8.0, 22.0), 0.25 * part_m))
        before_m = part_m * float(rng.uniform(0.1, 0.7))
        pieces.append(Piece(turn_deg=0.0, length_m=before_m))
        slant_m = forward_m * float(np.sqrt(2.0))
        pieces.append(Piece(turn_deg=45.0 * side, length_m=slant_m, kind="bypass"))
        pieces.append(Piece(turn_deg=0.0, length_m=part_m - before_m - forward_m))
        total += side * forward_m
    intent.plant("obstacle-one-side", total, "m")
    return pieces


def _detoured(
    outing: Outing, pieces: list[Piece], turn_deg: float, longest_m: float
) -> list[Piece]:
    """Hold another bearing for a part of the leg; its metres are counted."""
    rng = outing.rng
    length = sum(piece.length_m for piece in pieces)
    part_m = float(min(rng.uniform(0.3, 1.0) * longest_m, 0.5 * length))
    before, after = _split(pieces, float(rng.uniform(0.1, 0.9)) * (length - part_m))
    pulled = Piece(turn_deg=turn_deg, length_m=part_m, smooth=True)
    return [*before, pulled, *_shorten(after, part_m)]


def plan_pieces(outing: Outing, intent: LegIntent, path_m: float) -> list[Piece]:
    """Lay out a leg of ``path_m`` counted metres with all that happens on the way."""
    rng, difficulty = outing.rng, outing.difficulty
    pieces = [Piece(turn_deg=0.0, length_m=path_m)]
    if intent.bypass == "obstacle-one-side":
        pieces = _dodge(outing, path_m, intent)
    if intent.handrail_deg:
        pieces = _detoured(outing, pieces, intent.handrail_deg, 300.0)
    if intent.disturbance_deg:
        pieces = _detoured(outing, pieces, intent.disturbance_deg, 120.0)
    boxed = intent.bypass in ("bypass-paced", "bypass-unequal") or outing.chance(difficulty.boxed)
    if path_m > 150.0 and boxed and intent.bypass != "obstacle-one-side":
        pieces = _box(outing, pieces, intent)
    for _ in range(int(rng.poisson(difficulty.halts_per_km * path_m / 1000.0))):
        length = sum(piece.length_m for piece in pieces)
        before, after = _split(pieces, length * float(rng.uniform(0.1, 0.9)))
        before[-1].halt_s = float(rng.uniform(*difficulty.halt_s))
        pieces = before + after
    if intent.overshoot_m:
        pieces.append(Piece(turn_deg=0.0, length_m=intent.overshoot_m))
    return pieces


def _sideways(outing: Outing, azimuth_deg: float) -> FloatArray | None:
    """Give the slide downhill across the line for every metre walked, or None."""
    if not outing.shared.drift_m_per_m:
        return None
    downhill = unit_vector(outing.shared.downhill_deg)
    across = unit_vector(azimuth_deg + 90.0)
    return outing.shared.drift_m_per_m * float(downhill @ across) * across


def walk_pieces(
    outing: Outing,
    pieces: list[Piece],
    azimuth_deg: float,
    gait: Gait,
    tag: Tag,
    *,
    veer_deg: float = 0.0,
    marker_m: FloatArray | None = None,
) -> bool:
    """Walk the pieces; stop early and say True where the marker comes into sight."""
    trail = outing.trail
    total = sum(piece.length_m for piece in pieces)
    slide = _sideways(outing, azimuth_deg)
    walked = 0.0
    for piece in pieces:
        ends = (walked / total, (walked + piece.length_m) / total)
        bend = (veer_deg * ends[0], veer_deg * ends[1])
        here = replace(gait, wander_deg=0.4 * gait.wander_deg) if piece.smooth else gait
        if piece.smooth:
            here = replace(here, speed_m_s=1.15 * here.speed_m_s, sighting_deg=0.0)
        places = trail.straight_places(
            azimuth_deg + piece.turn_deg, piece.length_m, here, bend_deg=bend, drift_m_per_m=slide
        )
        kind = replace(tag, kind=piece.kind)
        seen = _first_sight(places, marker_m, outing.sight_m, walked, total)
        if seen is not None:
            trail.add(places[: seen + 1], kind)
            return True
        trail.add(places, kind)
        walked += piece.length_m
        if piece.halt_s:
            trail.halt(piece.halt_s, replace(tag, kind="halt"))
    return False


def _first_sight(
    places: FloatArray, marker_m: FloatArray | None, sight_m: float, walked: float, total: float
) -> int | None:
    """Give the second at which the marker comes into sight, in the later part of a leg."""
    if marker_m is None or len(places) == 0:
        return None
    share = (walked + np.linspace(0.0, 1.0, len(places)) * _length_m(places)) / total
    away = np.hypot(*(places - marker_m).T)
    seen = np.flatnonzero((away < sight_m) & (share > 0.5))
    return int(seen[0]) if len(seen) else None


def _length_m(places: FloatArray) -> float:
    return float(np.hypot(*np.diff(places, axis=0).T).sum()) if len(places) > 1 else 0.0


def make_claim(
    outing: Outing, seen: bool, marker_m: FloatArray, azimuth_deg: float, tag: Tag
) -> int:
    """End the walker's own navigation; walk up to a marker in sight. Gives the claim's second."""
    trail = outing.trail
    if not seen:
        return trail.second
    way = marker_m - trail.position_m
    turn = turn_degrees(azimuth_deg, direction_degrees(float(way[0]), float(way[1])))
    sure = replace(outing.gait, wander_deg=0.0, sighting_deg=0.0)
    if abs(turn) > BEND_DEG:
        claim = trail.second
        trail.go_through(marker_m, sure, replace(tag, kind="search"))
        return claim
    trail.go_through(marker_m, sure, tag)
    return trail.second


def held_azimuth_deg(outing: Outing, intent: LegIntent) -> tuple[float, float]:
    """Give the azimuth set, mistakes included, and the one really held."""
    shared = outing.shared
    magnetic = wrap_degrees(intent.azimuth_deg - outing.course.grid_magnetic_angle_deg)
    setting = wrap_degrees(intent.azimuth_deg + shared.turn_deg + shared.mil_circle * magnetic)
    scatter = float(outing.rng.normal(0.0, outing.difficulty.leg_sd_deg))
    return setting, wrap_degrees(setting + outing.bias_deg + scatter)


def record_leg(
    outing: Outing, leg: int, intent: LegIntent, setting_deg: float, pace_factor: float
) -> LegRecord:
    """Open the record of a leg that begins now."""
    now = outing.trail.second
    record = LegRecord(
        leg=leg,
        start=now,
        claim=now,
        search_end=now,
        set_azimuth_deg=setting_deg,
        count_m=intent.count_m,
        pace_factor=pace_factor,
    )
    outing.records[leg] = record
    return record
