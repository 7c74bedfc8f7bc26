"""A finished debrief made by hand, for tests of what is written from it.

A course of our own on invented ground. Leg 1 is walked with the grid-magnetic angle
left out, leg 2 cleanly, leg 3 too far, leg 4 not at all. The sums here are the
plain ones of the definitions, so that the figures belong together; they are no test of
the measuring itself.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.azimuths import GridAzimuth, NorthAngles
from audit.coaching.talk import Coaching, Keep, WorkOn
from audit.debriefing.finished_debrief import Debrief, LegDebrief, TrackQuality
from audit.diagnosis.finding import Finding
from audit.geodesy.grids import CourseGrid, course_grid
from audit.leg_card import CardFinding, CardLeg, CardPoint, LegCard
from audit.matching.leg_match import Cleaning, CleanTrack, Gap, LegMatch, Match
from audit.measurement.leg_measures import (
    CrossTrack,
    Heading,
    Ledger,
    LegAudit,
    LegMeasures,
    Place,
    Span,
)
from audit.units import FloatArray, direction_degrees, turn_degrees, unit_vector

START_S = dt.datetime(2026, 10, 3, 8, 30, tzinfo=dt.UTC).timestamp()
GRID = "EPSG:32616"
ORIGIN = np.array([742_350.0, 4_042_600.0])
ANGLE_DEG = -7.0  # west: magnetic north lies left of grid north
CONVERGENCE_DEG = 1.6
NOISE_M = 4.1
RADIUS_M = 30.0
POINTS = {  # east and north of the origin, metres
    "Start": (0.0, 0.0),
    "Post 7": (829.0, 330.0),
    "Post 2": (1010.0, -300.0),
    "Post 5": (420.0, -560.0),
    "Post 9": (-180.0, -280.0),
}


@dataclass
class Stretch:
    """What the walker does next: walk to a place, or stand."""

    kind: str
    leg: int | None
    to: tuple[float, float] | None = None
    stand_s: float = 0.0
    bend_m: float = 0.0


def sample_debrief(
    *,
    interval_s: float = 5.0,
    stretch: float = 1.0,
    timed: bool = True,
    grid: str = GRID,
    origin: FloatArray = ORIGIN,
    names: dict[str, str] | None = None,
    notes: tuple[str, ...] = (),
) -> Debrief:
    """Make the debrief; ``stretch`` scales the course, ``names`` renames points."""
    shape = course_grid(grid)
    names = names or {}
    points = _points(shape, origin, stretch, names)
    legs = _card_legs(points)
    card = _card(shape, points, legs)
    rng = np.random.default_rng(20261003)
    where, kinds = _walk(interval_s, stretch, rng)
    where = where + origin
    spans, gap = _spans(kinds, where, interval_s)
    keep = np.ones(len(where), dtype=bool)
    keep[gap[0] + 1 : gap[1]] = False
    kept = np.cumsum(keep) - 1
    spans = [(int(kept[a]), int(kept[b]), leg, kind) for a, b, leg, kind in spans]
    fix = np.flatnonzero(keep)
    time_s = START_S + fix * interval_s if timed else np.arange(len(fix), dtype=float)
    clean = CleanTrack(
        time_s=time_s,
        east_m=where[keep, 0],
        north_m=where[keep, 1],
        elevation_m=np.full(len(fix), np.nan),
        hdop=np.full(len(fix), np.nan),
        fix=fix,
        timed=timed,
        gaps=(
            Gap(
                before=int(kept[gap[0]]),
                start_s=time_s[kept[gap[0]]],
                end_s=time_s[kept[gap[0]] + 1],
            ),
        ),
        cleaning=(
            Cleaning(what="spike", count=3, detail="further than 6 m/s allows, out and back"),
            Cleaning(what="repeated time", count=1, detail="the first fix of the second was kept"),
        ),
        median_interval_s=interval_s if timed else None,
    )
    audits, matches = [], []
    for number, leg in enumerate(legs):
        own = [s for s in spans if s[2] == number]
        if not own:
            audits.append(LegAudit(card=leg, status="skipped", confidence=0.97, measures=None))
            matches.append(LegMatch(leg=number, status="skipped", confidence=0.97))
            continue
        walking = [s for s in own if s[3] != "search"]
        claim = next(
            (s[0] for s in own if s[3] == "halt" and s[1] == walking[-1][1]), walking[-1][1]
        )
        measures = _measures(leg, clean, shape, own[0][0], claim, own[-1][1])
        audits.append(
            LegAudit(
                card=leg, status="walked", confidence=(0.99, 0.99, 0.93)[number], measures=measures
            )
        )
        matches.append(
            LegMatch(
                leg=number,
                status="walked",
                confidence=0.99,
                start_s=float(clean.time_s[own[0][0]]),
                claim_s=float(clean.time_s[claim]),
                search_end_s=float(clean.time_s[own[-1][1]]),
            )
        )
    causes = _causes()
    return Debrief(
        card=card,
        quality=TrackQuality(
            source="walk.gpx",
            fixes=len(where) + 4,
            start_s=float(time_s[0]) if timed else None,
            end_s=float(time_s[-1]) if timed else None,
            median_interval_s=interval_s if timed else None,
            noise_m=NOISE_M,
            noise_from="3 halts",
            notes=("One silence of the recording falls into leg 3.", *notes),
        ),
        clean=clean,
        match=Match(
            legs=tuple(matches),
            noise_m=NOISE_M,
            halts=np.empty((0, 2)),
            bias_deg=-1.0,
            pace_scale=1.02,
            cost=-14.0,
        ),
        legs=tuple(LegDebrief(audit=one, causes=causes[i]) for i, one in enumerate(audits)),
        coaching=Coaching(
            keep=(
                Keep(
                    what="The distance counted",
                    evidence="Within 2% of the card's.",
                    skill="distance",
                ),
            ),
            work_on=(
                WorkOn(
                    cause="veer",
                    certain=False,
                    what="a line that bends as it is walked",
                    evidence="40 m a leg on average.",
                    exercise="Walk 100 steps & look up.",
                    legs=("1",),
                ),
            ),
        ),
        spans=tuple(
            Span(
                start_s=float(clean.time_s[a]),
                end_s=float(clean.time_s[b]),
                first=a,
                last=b,
                leg=leg,
                kind=kind,
            )
            for a, b, leg, kind in spans
        ),
    )


def _points(
    grid: CourseGrid, origin: FloatArray, stretch: float, names: dict[str, str]
) -> list[CardPoint]:
    made = []
    for name, (east, north) in POINTS.items():
        place = origin + stretch * np.array([east, north])
        lon, lat = grid.to_geographic(float(place[0]), float(place[1]))
        made.append(
            CardPoint(
                name=names.get(name, name),
                east_m=float(place[0]),
                north_m=float(place[1]),
                longitude_deg=lon,
                latitude_deg=lat,
                half_square_m=5.0,
            )
        )
    return made


def _card_legs(points: list[CardPoint]) -> list[CardLeg]:
    angles = NorthAngles(grid_magnetic_angle_deg=ANGLE_DEG, convergence_deg=CONVERGENCE_DEG)
    legs = []
    for number, (start, end) in enumerate(pairwise(points)):
        line = np.array([[start.east_m, start.north_m], [end.east_m, end.north_m]])
        step = line[1] - line[0]
        azimuth = GridAzimuth(round(direction_degrees(*step), 1))
        distance = float(round(np.hypot(*step)))
        legs.append(
            CardLeg(
                name=str(number + 1),
                start=start,
                end=end,
                azimuth=azimuth,
                magnetic=angles.magnetic(azimuth),
                true=angles.true(azimuth),
                distance_m=distance,
                paces=float(round(distance * 0.65)),
                line=line,
                one_place_m=0.01,
                note="handrail: stream on the left" if number == 1 else "",
            )
        )
    return legs


def _card(grid: CourseGrid, points: list[CardPoint], legs: list[CardLeg]) -> LegCard:
    return LegCard(
        name="Sourwood Knob, practice lane",
        grid=grid,
        date=dt.date(2026, 10, 3),
        date_source="plan",
        angles=NorthAngles(grid_magnetic_angle_deg=ANGLE_DEG, convergence_deg=CONVERGENCE_DEG),
        angle_source="plan",
        declination_deg=-5.5,
        declination_sd_deg=0.36,
        model_grid_magnetic_angle_deg=-7.1,
        model="WMM2025",
        points=tuple(points),
        legs=tuple(legs),
        paces_per_100m=65.0,
        pace="double",
        arrival_radius_m=RADIUS_M,
        findings=(
            CardFinding(
                leg="2",
                what="distance",
                given=legs[1].distance_m + 20,
                computed=legs[1].distance_m,
                message="Leg 2: the plan gives 675 m, its points lie 655 m apart.",
            ),
        ),
        notes=("The plan gives no pace count for rough ground; 65 to 100 m was taken for all.",),
    )


def _walk(
    interval_s: float, stretch: float, rng: np.random.Generator
) -> tuple[FloatArray, list[tuple[str, int | None]]]:
    """Give positions every interval, and what the walker was doing at each."""
    at = {name: np.array(place) for name, place in POINTS.items()}
    leg_1 = at["Post 7"] - at["Start"]
    turned = unit_vector(direction_degrees(*leg_1) + ANGLE_DEG - 0.2)
    claim_1 = tuple(turned * (np.hypot(*leg_1) - 22))
    leg_3 = at["Post 5"] - at["Post 2"]
    beyond = unit_vector(direction_degrees(*leg_3) + 0.8)
    claim_3 = tuple(at["Post 2"] + beyond * (np.hypot(*leg_3) + 96))
    near_2 = tuple(at["Post 2"] + np.array([-9.0, 6.0]))
    # Nothing turns at the very ends: the walker comes and goes by the start.
    steps = [
        Stretch("approach", None, (-60, 160)), Stretch("approach", None, (0, 0)),
        Stretch("at-point", None, stand_s=150),
        Stretch("walking", 0, tuple(0.55 * np.array(claim_1)), bend_m=6),
        Stretch("halt", 0, stand_s=75),
        Stretch("walking", 0, claim_1, bend_m=-5),
        Stretch("halt", 0, stand_s=60),
        Stretch("search", 0, (claim_1[0] + 45, claim_1[1] + 10)),
        Stretch("search", 0, (claim_1[0] + 40, claim_1[1] - 50)),
        Stretch("search", 0, (claim_1[0] - 15, claim_1[1] - 55)),
        Stretch("search", 0, tuple(at["Post 7"])),
        Stretch("at-point", None, stand_s=120),
        Stretch("walking", 1, tuple(at["Post 7"] + 0.4 * (at["Post 2"] - at["Post 7"]))),
        Stretch("bypass", 1, tuple(at["Post 7"] + 0.4 * (at["Post 2"] - at["Post 7"]) + (40, 10))),
        Stretch("bypass", 1, tuple(at["Post 7"] + 0.6 * (at["Post 2"] - at["Post 7"]) + (40, 10))),
        Stretch("bypass", 1, tuple(at["Post 7"] + 0.6 * (at["Post 2"] - at["Post 7"]))),
        Stretch("walking", 1, near_2),
        Stretch("at-point", None, stand_s=100),
        Stretch("walking", 2, tuple(at["Post 2"] + beyond * 700), bend_m=12),
        Stretch("walking", 2, claim_3),
        Stretch("halt", 2, stand_s=90),
        Stretch("search", 2, tuple(at["Post 5"])),
        Stretch("at-point", None, stand_s=80),
        Stretch("walk-off", None, (330, -250)), Stretch("walk-off", None, (20, -20)),
    ]  # fmt: skip
    here = np.array([-160.0, 240.0])
    places, kinds = [], []
    for step in steps:
        to = here if step.to is None else np.array(step.to, dtype=float)
        seconds = step.stand_s or np.hypot(*(to - here)) * stretch / 1.15
        count = max(2, round(seconds / interval_s))
        share = np.linspace(0.0, 1.0, count, endpoint=False)[:, None]
        across = np.array([[(to - here)[1], -(to - here)[0]]]) / max(np.hypot(*(to - here)), 1.0)
        places.append(here + share * (to - here) + across * step.bend_m * np.sin(np.pi * share))
        kinds += [(step.kind, step.leg)] * count
        here = to
    exact = np.vstack(places) * stretch
    return exact + _wander(len(exact), interval_s, rng), kinds


def _wander(count: int, interval_s: float, rng: np.random.Generator) -> FloatArray:
    """Receiver noise, correlated over half a minute."""
    keep = np.exp(-interval_s / 30.0)
    steps = rng.normal(scale=2.0 * np.sqrt(1 - keep**2), size=(count, 2))
    noise = np.zeros((count, 2))
    for i in range(1, count):
        noise[i] = keep * noise[i - 1] + steps[i]
    return noise


def _spans(
    kinds: list[tuple[str, int | None]], where: FloatArray, interval_s: float
) -> tuple[list[tuple[int, int, int | None, str]], tuple[int, int]]:
    """Give spans that share their ends, with a gap cut into leg 3, and that gap."""
    spans, first = [], 0
    for i in range(1, len(kinds) + 1):
        if i == len(kinds) or kinds[i] != kinds[first]:
            spans.append((first, min(i, len(where) - 1), kinds[first][1], kinds[first][0]))
            first = i
    third = next(s for s in spans if s[2] == 2)
    cut = third[0] + (third[1] - third[0]) // 2
    gap = (cut, cut + max(2, round(45 / interval_s)))
    made = []
    for span in spans:
        if span == third:
            made += [
                (span[0], gap[0], 2, "walking"),
                (gap[0], gap[1], 2, "gap"),
                (gap[1], span[1], 2, "walking"),
            ]
        else:
            made.append(span)
    return made, gap


def _place(clean: CleanTrack, grid: CourseGrid, fix: int) -> Place:
    east, north = float(clean.east_m[fix]), float(clean.north_m[fix])
    lon, lat = grid.to_geographic(east, north)
    return Place(
        fix=fix,
        time_s=float(clean.time_s[fix]) if clean.timed else None,
        east_m=east,
        north_m=north,
        longitude_deg=lon,
        latitude_deg=lat,
    )


def _curve(walk: FloatArray, origin: FloatArray, azimuth_deg: float) -> CrossTrack:
    ahead, right = unit_vector(azimuth_deg), unit_vector(azimuth_deg + 90)
    offset = (walk - origin) @ right
    return CrossTrack(
        along_m=(walk - origin) @ ahead,
        offset_m=offset,
        end_m=float(offset[-1]),
        max_abs_m=float(np.abs(offset).max()),
        rms_m=float(np.sqrt(np.mean(offset**2))),
    )


def _measures(
    leg: CardLeg, clean: CleanTrack, grid: CourseGrid, first: int, claim: int, last: int
) -> LegMeasures:
    walk = np.column_stack([clean.east_m, clean.north_m])[first : claim + 1]
    begin, end = walk[0], walk[-1]
    from_point, to_point = leg.line[0], leg.line[-1]
    chord = end - begin
    straight = float(np.hypot(*chord))
    heading = GridAzimuth(direction_degrees(*chord))
    sd = float(np.degrees(NOISE_M * 1.4 / straight))
    line_deg = direction_degrees(*(to_point - from_point))
    planned = _curve(walk, from_point, line_deg)
    own = _curve(walk, begin, leg.azimuth.degrees)
    miss = end - to_point
    card_vector = unit_vector(leg.azimuth.degrees) * leg.distance_m
    walked_unit, card_unit = unit_vector(heading.degrees), unit_vector(leg.azimuth.degrees)
    along = float(chord @ walked_unit)
    parts = {
        "inherited": begin - from_point,
        "plan": card_vector - (to_point - from_point),
        "heading": (leg.distance_m + along) / 2 * (walked_unit - card_unit),
        "distance": (along - leg.distance_m) / 2 * (walked_unit + card_unit),
        "detour": chord - along * walked_unit,
        "total": miss,
    }
    after = np.hypot(
        clean.east_m[first : last + 1] - to_point[0], clean.north_m[first : last + 1] - to_point[1]
    )
    nearest = first + int(after.argmin())
    duration = float(clean.time_s[claim] - clean.time_s[first]) if clean.timed else None
    return LegMeasures(
        start=_place(clean, grid, first),
        claim=_place(clean, grid, claim),
        heading=Heading(
            azimuth=heading,
            low_deg=heading.turned(-1.96 * sd).degrees,
            high_deg=heading.turned(1.96 * sd).degrees,
            sd_deg=sd,
        ),
        straight_m=straight,
        straight_sd_m=4.6,
        path_m=straight * 1.03,
        paces=straight * 0.65,
        paces_from="pace count",
        duration_s=duration,
        halted_s=75.0 if clean.timed and leg.name == "1" else (0.0 if clean.timed else None),
        azimuth_error_deg=turn_degrees(leg.azimuth.degrees, heading.degrees),
        distance_error_m=straight - leg.distance_m,
        distance_ratio=straight / leg.distance_m,
        cross_track=planned,
        own_cross_track=own,
        miss_m=float(np.hypot(*miss)),
        miss_azimuth=GridAzimuth(direction_degrees(*miss)),
        miss_along_m=float(miss @ unit_vector(line_deg)),
        miss_across_m=float(miss @ unit_vector(line_deg + 90)),
        miss_sd_m=5.0,
        nearest_m=float(after.min()),
        nearest_s=float(clean.time_s[nearest]) if clean.timed else None,
        found=bool(after.min() <= RADIUS_M),
        ledger=Ledger(**{name: (float(v[0]), float(v[1])) for name, v in parts.items()}),
        gap_share=0.07 if leg.name == "3" else 0.0,
        curve_time_s=clean.time_s[first : claim + 1],
        noise_m=NOISE_M,
        along_planned_m=float(chord @ card_unit),
        along_heading_m=along,
        path_sd_m=4.6,
        nearest_after_m=float(after[claim - first :].min()),
    )


def _causes() -> tuple[tuple[Finding, ...], ...]:
    return (
        (
            Finding(cause="gm-angle-omitted", probability=0.94,
                    evidence="7.0° left predicted by the grid-magnetic angle, 7.1° left seen."),
            Finding(cause="dial-misread", probability=0.04,
                    evidence="5° left predicted by one graduation, 7.1° left seen."),
            Finding(cause="cannot-tell", probability=0.02, evidence="What is left."),
        ),
        (
            Finding(cause="within-skill", probability=0.98,
                    evidence="The miss is no larger than ordinary error and receiver noise."),
            Finding(cause="cannot-tell", probability=0.02, evidence="What is left."),
        ),
        (
            Finding(cause="hundred-miscounted", probability=0.62,
                    evidence="100 m too far predicted by one hundred too many, 90 m seen."),
            Finding(cause="overshoot", probability=0.30, evidence="90 m too far on one leg."),
            Finding(cause="cannot-tell", probability=0.08, evidence="What is left."),
        ),
        (),
    )  # fmt: skip
