"""The rows of a class for spreadsheets: walkers, points, legs, findings; no arithmetic."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Literal

from audit.classroom.class_result import ClassLeg, ClassResult
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.moments import utc_if_known
from audit.words import PLAIN_ENGLISH, say, told
from audit.words.spoken_words import message_names

CellKind = Literal["text", "whole", "metres", "degrees", "share", "minutes", "number", "moment"]
Cell = str | int | float | bool | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of a sheet: its heading, what its numbers are, and its width in signs.

    Texts of one that is ``told`` are words of a few, which each language has.
    """

    name: str
    kind: CellKind = "text"
    width: int = 12
    told: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A sheet: columns, and rows with a cell for each."""

    name: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]


def point_sheet(result: ClassResult) -> Sheet:
    """Give one row a walker and leg: everything that a grade rests on."""
    rows = [
        tuple(get(walker, leg) for _, get in _POINT_COLUMNS)
        for walker in result.walkers
        for leg in walker.legs
    ]
    ends = {(lane.name, leg.name): leg.end for lane in result.lanes for leg in lane.legs}
    place = [column.name for column, _ in _POINT_COLUMNS].index("point")
    named = [
        (*row[:place], ends[str(row[1]), str(row[place - 1])], *row[place + 1 :]) for row in rows
    ]
    return Sheet(name="points", columns=tuple(one for one, _ in _POINT_COLUMNS), rows=tuple(named))


def walker_sheet(result: ClassResult) -> Sheet:
    """Give one row a walker."""
    return Sheet(
        name="walkers",
        columns=tuple(one for one, _ in _WALKER_COLUMNS),
        rows=tuple(tuple(get(one) for _, get in _WALKER_COLUMNS) for one in result.walkers),
    )


def leg_sheet(result: ClassResult) -> Sheet:
    """Give one row a leg over all its walkers."""
    return Sheet(
        name="legs",
        columns=tuple(one for one, _ in _LEG_COLUMNS),
        rows=tuple(tuple(get(one) for _, get in _LEG_COLUMNS) for one in result.legs),
    )


def lane_sheet(result: ClassResult) -> Sheet:
    """Give one row a lane."""
    columns = (
        Column(name="lane", width=16), Column(name="plan", width=20),
        Column(name="course", width=28), Column(name="legs", kind="whole"),
        Column(name="length_m", kind="metres"), Column(name="climb_m", kind="metres"),
        Column(name="difficulty", kind="share"), Column(name="fingerprint", width=22),
    )  # fmt: skip
    rows = tuple(
        (lane.name, lane.plan_file, lane.course, len(lane.legs), lane.length_m, lane.climb_m,
         lane.difficulty, lane.fingerprint)
        for lane in result.lanes
    )  # fmt: skip
    return Sheet(name="lanes", columns=columns, rows=rows)


def finding_sheet(result: ClassResult) -> Sheet:
    """Give one row a finding."""
    columns = (
        Column(name="what", width=22), Column(name="lane"), Column(name="leg"),
        Column(name="walkers", width=24), Column(name="a_question", told=True),
        Column(name="left_out_of_grades", told=True), Column(name="message", width=110),
    )  # fmt: skip
    names = {walker.ident: walker.name for walker in result.walkers}
    rows = tuple(
        (one.what, one.lane, one.leg, ", ".join(names[ident] for ident in one.walkers),
         _yes(one.question), _yes(one.leaves_out), one.message)
        for one in result.findings
    )  # fmt: skip
    return Sheet(name="findings", columns=columns, rows=rows)


def standard_sheet(result: ClassResult) -> Sheet:
    """Give the standard, figure by figure with its source, and the fingerprint."""
    standard, sources = result.standard, dict(result.standard.sources)
    minutes = None if standard.time_limit_s is None else standard.time_limit_s / 60.0
    tolerance = standard.distance_tolerance
    everything, none = say("sheet-all"), say("sheet-none")
    figures: list[tuple[str, Cell, str]] = [
        ("name", standard.name, ""),
        ("edition", standard.edition, ""),
        ("file", standard.source, ""),
        ("fingerprint", result.fingerprint, say("sheet-of-what")),
        ("program", f"leg-audit {result.version}", ""),
        ("points_to_find", standard.points_to_find or everything, "points_to_find"),
        ("radius_m", standard.radius_m or say("sheet-as-planned"), "radius_m"),
        ("survey_sd_m", standard.survey_sd_m, "survey_sd_m"),
        ("time_limit_min", minutes or none, "time_limit_min"),
        ("late_grace_min", standard.late_grace_s / 60.0, "late_grace_min"),
        ("late_penalty_per_min", standard.late_penalty_per_min, "late_penalty_per_min"),
        ("azimuth_tolerance_deg", standard.azimuth_tolerance_deg or none, "azimuth_tolerance_deg"),
        ("distance_tolerance_percent", none if tolerance is None else 100.0 * tolerance,
         "distance_tolerance_percent"),
        ("order", say(f"sheet-is-{result.order_asked}"), "order"),
        ("road_rule", say(f"class-roads-{standard.road_rule.replace(' ', '-')}"), "road_rule"),
        ("road_distance_m", standard.road_distance_m, "road_distance_m"),
        ("weight_of_points", standard.weights.points, "weights"),
        ("weight_of_time", standard.weights.time, ""),
        ("weight_of_azimuth", standard.weights.azimuth, ""),
        ("weight_of_distance", standard.weights.distance, ""),
        ("signed_by", "", say("sheet-proposal")),
    ]  # fmt: skip
    rows = tuple(
        (
            say(f"sheet-figure-{name.replace('_', '-')}"),
            value,
            source_words(sources.get(source, source)),
        )
        for name, value, source in figures
    )
    return Sheet(
        name="standard",
        columns=(Column(name="figure", width=28), Column(name="value", kind="number", width=26),
                 Column(name="source", width=90)),
        rows=rows,
    )  # fmt: skip


def source_words(source: str) -> str:
    """Tell a source of a shipped standard in the reader's words; any other is as it was written."""
    ident = _shipped_sources().get(source)
    return source if ident is None else say(ident)


@cache
def _shipped_sources() -> dict[str, str]:
    """Give the messages of what the shipped standards say of their figures, by that text."""
    idents = [ident for ident, topic in message_names("en").items() if topic == "source"]
    return {PLAIN_ENGLISH.say(ident): ident for ident in idents}


def _minutes(seconds: float | None) -> float | None:
    return None if seconds is None else seconds / 60.0


def _yes(true: bool) -> str:  # noqa: FBT001 (a cell)
    return "yes" if true else "no"


_POINT_COLUMNS: tuple[tuple[Column, Callable[[WalkerResult, LegResult], Cell]], ...] = (
    (Column(name="name", width=22), lambda walker, _: walker.name),
    (Column(name="lane", width=16), lambda walker, _: walker.lane),
    (Column(name="attempt", kind="whole", width=8), lambda walker, _: walker.attempt),
    (Column(name="leg", width=8), lambda _, leg: leg.name),
    (Column(name="point", width=18), lambda _, leg: leg.name),
    (Column(name="found", told=True), lambda _, leg: leg.point.grade),
    (Column(name="proof", told=True), lambda _, leg: leg.point.proof),
    (Column(name="left_out", told=True), lambda _, leg: _yes(leg.point.left_out)),
    (Column(name="nearest_m", kind="metres"),
     lambda _, leg: leg.point.approach.distance_m if leg.point.approach else None),
    (Column(name="radius_m", kind="metres"), lambda _, leg: leg.point.radius_m),
    (Column(name="error_m", kind="metres"),
     lambda _, leg: leg.point.error_m if leg.point.approach else None),
    (Column(name="code"), lambda _, leg: leg.point.punch.code if leg.point.punch else None),
    (Column(name="miss_m", kind="metres"),
     lambda _, leg: leg.miss.distance_m if leg.miss else None),
    (Column(name="miss_east_m", kind="metres"),
     lambda _, leg: leg.miss.east_m if leg.miss else None),
    (Column(name="miss_north_m", kind="metres"),
     lambda _, leg: leg.miss.north_m if leg.miss else None),
    (Column(name="miss_sd_m", kind="metres"),
     lambda _, leg: leg.miss.sd_m if leg.miss else None),
    (Column(name="azimuth_error_deg", kind="degrees", width=17),
     lambda _, leg: leg.azimuth_error_deg),
    (Column(name="azimuth_sd_deg", kind="degrees", width=15), lambda _, leg: leg.azimuth_sd_deg),
    (Column(name="distance_error_m", kind="metres", width=16),
     lambda _, leg: leg.distance_error_m),
    (Column(name="cause", width=24), lambda _, leg: leg.cause),
    (Column(name="cause_probability", kind="share", width=17),
     lambda _, leg: leg.cause_probability),
    (Column(name="matched", kind="share"), lambda _, leg: leg.confidence),
    (Column(name="moving_min", kind="minutes"), lambda _, leg: _minutes(leg.moving_s)),
    (Column(name="searching_min", kind="minutes", width=13),
     lambda _, leg: _minutes(leg.searching_s)),
    (Column(name="halted_min", kind="minutes"), lambda _, leg: _minutes(leg.halted_s)),
)  # fmt: skip

_WALKER_COLUMNS: tuple[tuple[Column, Callable[[WalkerResult], Cell]], ...] = (
    (Column(name="name", width=22), lambda one: one.name),
    (Column(name="lane", width=16), lambda one: one.lane),
    (Column(name="attempt", kind="whole", width=8), lambda one: one.attempt),
    (Column(name="device"), lambda one: one.device),
    (Column(name="compass"), lambda one: one.compass),
    (Column(name="recordings", width=22), lambda one: " + ".join(one.tracks)),
    (Column(name="verdict", told=True), lambda one: one.verdict.grade),
    (Column(name="found", kind="whole"), lambda one: one.verdict.found),
    (Column(name="doubtful", kind="whole"), lambda one: one.verdict.doubtful),
    (Column(name="missed", kind="whole"), lambda one: one.verdict.missed),
    (Column(name="no_evidence", kind="whole"), lambda one: one.verdict.without_evidence),
    (Column(name="needed", kind="whole"), lambda one: one.verdict.needed),
    (Column(name="began", kind="moment", width=22), lambda one: utc_if_known(one.time.begun_s)),
    (Column(name="finished", kind="moment", width=22), lambda one: utc_if_known(one.time.ended_s)),
    (Column(name="elapsed_min", kind="minutes"), lambda one: _minutes(one.time.elapsed_s)),
    (Column(name="late_min", kind="minutes"), lambda one: _minutes(one.verdict.late_s)),
    (Column(name="coaching_score", kind="number", width=14), lambda one: one.verdict.score),
    (Column(name="moving_min", kind="minutes"), lambda one: _minutes(one.moving_s)),
    (Column(name="searching_min", kind="minutes", width=13),
     lambda one: _minutes(one.searching_s)),
    (Column(name="halted_min", kind="minutes"), lambda one: _minutes(one.halted_s)),
    (Column(name="why", width=70), lambda one: " ".join(map(told, one.verdict.reasons))),
    (Column(name="problem", width=50), lambda one: one.problem),
    (Column(name="debrief", width=40), lambda one: next(iter(one.pages), None)),
)  # fmt: skip

_LEG_COLUMNS: tuple[tuple[Column, Callable[[ClassLeg], Cell]], ...] = (
    (Column(name="lane", width=16), lambda one: one.lane),
    (Column(name="leg", width=8), lambda one: one.name),
    (Column(name="point", width=18), lambda one: one.point),
    (Column(name="walkers", kind="whole"), lambda one: one.walkers),
    (Column(name="walked", kind="whole"), lambda one: one.walked),
    (Column(name="found", kind="whole"), lambda one: one.found),
    (Column(name="doubtful", kind="whole"), lambda one: one.doubtful),
    (Column(name="missed", kind="whole"), lambda one: one.missed),
    (Column(name="no_evidence", kind="whole"), lambda one: one.without_evidence),
    (Column(name="mean_miss_east_m", kind="metres", width=17),
     lambda one: one.mean_miss and one.mean_miss[0]),
    (Column(name="mean_miss_north_m", kind="metres", width=17),
     lambda one: one.mean_miss and one.mean_miss[1]),
    (Column(name="spread_m", kind="metres"), lambda one: one.spread_m),
    (Column(name="finding", width=24), lambda one: one.finding),
)  # fmt: skip
