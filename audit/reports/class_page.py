"""class.html: one page of the whole class that needs nothing else, on screen and on paper."""

from __future__ import annotations

from dataclasses import dataclass

from audit.classroom.records import ClassResult
from audit.reports import class_words
from audit.reports.cautions import CAUTIONS
from audit.reports.class_matrix import lane_tables, numbered
from audit.reports.class_tables import cause_rows, lane_rows, leg_rows, time_rows
from audit.reports.class_verdict import class_verdict, findings_of
from audit.reports.class_words import number
from audit.reports.figure_class_leg import leg_tracks_specification
from audit.reports.html_report import page_templates
from audit.reports.picture import Picture, draw

POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; connect-src 'none'; "
    "base-uri 'none'; form-action 'none'"
)
"""No network for anything, and no script at all."""
_SIMULATED = "simulated"


@dataclass(frozen=True, slots=True, kw_only=True)
class LegFigure:
    """All tracks on one leg."""

    lane: str
    title: str
    picture: Picture


def render_class_html(result: ClassResult) -> str:
    """Give the whole page: it fetches nothing, runs nothing, and is whole on paper."""
    told, questions = findings_of(result)
    return (
        page_templates()
        .get_template("class.html.j2")
        .render(
            policy=POLICY,
            name=result.name,
            facts=_facts(result),
            simulated=_is_simulated(result),
            verdict=class_verdict(result),
            findings=told,
            questions=questions,
            tables=lane_tables(result),
            legs=leg_rows(result),
            figures=leg_figures(result),
            lanes=lane_rows(result),
            causes=cause_rows(result),
            times=time_rows(result),
            standard=result.standard,
            asks=standard_facts(result),
            plan_findings=[(lane.name, words) for lane in result.lanes for words in lane.findings],
            notes=[*result.notes, *(note for lane in result.lanes for note in lane.notes)],
            recordings=recording_notes(result),
            cautions=CAUTIONS,
            fingerprint=result.fingerprint,
            version=result.version,
        )
    )


def recording_notes(result: ClassResult) -> list[tuple[int, str, list[str]]]:
    """Give what is to be known of each recording before its figures are trusted."""
    told = []
    for n, walker in numbered(result):
        notes = [*walker.notes, *(() if walker.track is None else walker.track.notes)]
        notes = [note for note in notes if _SIMULATED not in note.lower()]
        if notes:
            told.append((n, class_words.called(walker), notes))
    return told


def _is_simulated(result: ClassResult) -> bool:
    """Tell whether class, lanes or recordings say of themselves that nobody walked them."""
    notes = [*result.notes, *(note for lane in result.lanes for note in lane.notes)]
    notes += [note for one in result.walkers if one.track for note in one.track.notes]
    return any(_SIMULATED in note.lower() for note in notes)


def leg_figures(result: ClassResult) -> list[LegFigure]:
    """Draw each leg that somebody walked."""
    figures = []
    for lane_number, lane in enumerate(result.lanes):
        walkers = [(n, one) for n, one in numbered(result) if one.lane == lane.name]
        for leg, planned in enumerate(lane.legs):
            made = leg_tracks_specification(lane, leg, walkers)
            if made is None:
                continue
            title = f"Leg {planned.name}: {planned.start} to {planned.end}"
            grades = [one.legs[leg].point.grade for _, one in walkers]
            said = (
                f"{grades.count('found')} of {number(len(grades), 'walk')} found the point, "
                f"{grades.count('missed')} missed it, {grades.count('doubtful')} are doubtful."
            )
            picture = draw(made, f"lane{lane_number}-leg{leg}", f"{lane.name}, {title}", said)
            figures.append(LegFigure(lane=lane.name, title=title, picture=picture))
    return figures


def standard_facts(result: ClassResult) -> list[tuple[str, str]]:
    """Say what the standard asks, figure by figure."""
    standard = result.standard
    asks = [("Points to find", str(standard.points_to_find or "all"))]
    if standard.radius_m is not None:
        asks.append(("Found within", f"{standard.radius_m:g} m"))
    if standard.time_limit_s is not None:
        asks.append(("Time limit", f"{standard.time_limit_s / 60:g} min"))
    if standard.late_penalty_per_min:
        asks.append(("For each minute late", f"{standard.late_penalty_per_min:g} off the score"))
    if standard.azimuth_tolerance_deg is not None:
        asks.append(("Azimuth within", f"{standard.azimuth_tolerance_deg:g}°"))
    if standard.distance_tolerance is not None:
        asks.append(("Distance within", f"{100 * standard.distance_tolerance:g} %"))
    asks.append(("Order", "as planned" if standard.order == "planned" else "free"))
    road = {"none": "not asked", "cross only": "crossed only", "keep off": "kept off"}
    distance = "" if standard.road_distance_m is None else f" by {standard.road_distance_m:g} m"
    asks.append(("Roads", f"{road[standard.road_rule]}{distance}, judged by a person"))
    return asks


def _facts(result: ClassResult) -> list[tuple[str, str]]:
    days = ", ".join(dict.fromkeys(lane.date for lane in result.lanes if lane.date))
    facts = [
        ("Day", days or "not known"),
        ("Walks", str(len(result.walkers))),
        ("Lanes", ", ".join(lane.name for lane in result.lanes)),
        ("Standard", " ".join(filter(None, (result.standard.name, result.standard.edition)))),
        ("Fingerprint", result.fingerprint[:16]),
    ]
    if result.shift_s:
        facts.append(("Clocks", f"moved by {result.shift_s:+.0f} s, {result.shift_from}"))
    return facts
