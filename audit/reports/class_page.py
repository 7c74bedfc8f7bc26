"""class.html: one page of the whole class that needs nothing else, on screen and on paper."""

from __future__ import annotations

from dataclasses import dataclass

from audit.classroom.class_result import ClassResult
from audit.reports import class_words, digits
from audit.reports.cautions import cautions
from audit.reports.class_key import shown_signs
from audit.reports.class_matrix import lane_tables, numbered
from audit.reports.class_rows import source_words
from audit.reports.class_tables import cause_rows, lane_rows, leg_rows, time_rows
from audit.reports.class_verdict import class_verdict, findings_of
from audit.reports.figure_class_leg import leg_tracks_specification, tracks_key
from audit.reports.html_report import page_templates
from audit.reports.picture import Picture, draw
from audit.track import calls_itself_simulated
from audit.words import in_force, say, told
from audit.words.figures import Percent, Turn

POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; connect-src 'none'; "
    "base-uri 'none'; form-action 'none'"
)
"""No network for anything, and no script at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegFigure:
    """All tracks on one leg."""

    lane: str
    title: str
    picture: Picture


def render_class_html(result: ClassResult) -> str:
    """Give the whole page: it fetches nothing, runs nothing, and is whole on paper."""
    told, questions = findings_of(result)
    tables, legs, times = lane_tables(result), leg_rows(result), time_rows(result)
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
            tables=tables,
            legs=legs,
            all_free=bool(result.lanes) and all(lane.is_free for lane in result.lanes),
            figures=leg_figures(result),
            signs=tracks_key(result),
            lanes=lane_rows(result),
            causes=cause_rows(result),
            times=times,
            shown=shown_signs(tables, legs, times),
            standard=result.standard,
            asks=standard_facts(result),
            sources=standard_sources(result),
            language=in_force().language,
            plan_findings=[(lane.name, words) for lane in result.lanes for words in lane.findings],
            notes=[*result.notes, *(note for lane in result.lanes for note in lane.notes)],
            recordings=recording_notes(result),
            cautions=cautions(),
            fingerprint=result.fingerprint,
            version=result.version,
        )
    )


def recording_notes(result: ClassResult) -> list[tuple[int, str, list[str]]]:
    """Give what is to be known of each recording before its figures are trusted."""
    told = []
    for n, walker in numbered(result):
        notes = [*walker.notes, *(() if walker.track is None else walker.track.notes)]
        of_all = calls_itself_simulated(notes)  # said of the class, at the head
        notes = [note for note in notes if note not in of_all]
        if notes:
            told.append((n, class_words.called(walker), notes))
    return told


def _is_simulated(result: ClassResult) -> bool:
    """Tell whether recordings say of themselves that nobody walked them."""
    notes = [note for one in result.walkers if one.track for note in one.track.notes]
    return bool(calls_itself_simulated(notes))


def leg_figures(result: ClassResult) -> list[LegFigure]:
    """Draw each leg that somebody walked; none of a free order, where each has its own."""
    figures = []
    for lane_number, lane in enumerate(result.lanes):
        if lane.is_free:
            continue
        walkers = [(n, one) for n, one in numbered(result) if one.lane == lane.name]
        for leg, planned in enumerate(lane.legs):
            made = leg_tracks_specification(lane, leg, walkers)
            if made is None:
                continue
            ends = say("figure-range", low=planned.start, high=planned.end)
            title = say("page-leg-title", leg=planned.name, ends=ends)
            grades = [one.legs[leg].point.grade for _, one in walkers]
            said = say(
                "class-tracks-said",
                found=grades.count("found"),
                walks=len(grades),
                missed=grades.count("missed"),
                doubtful=grades.count("doubtful"),
            )
            called = say("class-picture-title", lane=lane.name, leg=title)
            picture = draw(made, f"lane{lane_number}-leg{leg}", called, said)
            figures.append(LegFigure(lane=lane.name, title=title, picture=picture))
    return figures


def standard_facts(result: ClassResult) -> list[tuple[str, str]]:
    """Say what the standard asks, figure by figure."""
    standard = result.standard
    asks = [("points", str(standard.points_to_find or say("class-asks-all")))]
    if standard.radius_m is not None:
        asks.append(("within", digits.stated_metres(standard.radius_m)))
    if standard.time_limit_s is not None:
        asks.append(("time", f"{standard.time_limit_s / 60:g} min"))
    if standard.late_penalty_per_min:
        off = in_force().decimal(f"{standard.late_penalty_per_min:g}")
        asks.append(("late", say("class-asks-late-said", off=off)))
    if standard.azimuth_tolerance_deg is not None:
        degrees = standard.azimuth_tolerance_deg
        asks.append(("azimuth", Turn(degrees=degrees).shown(in_force())))
    if standard.distance_tolerance is not None:
        share = Percent(share=standard.distance_tolerance, decimals=1)
        asks.append(("distance", share.shown(in_force())))
    asks.append(("order", say(f"class-asks-{result.order_asked}")))
    by_m = standard.road_distance_m
    rule = say(f"class-roads-{standard.road_rule.replace(' ', '-')}")
    by = "none" if by_m is None else digits.stated_metres(by_m)
    judged = rule if standard.road_rule == "none" else say("class-roads-said", rule=rule, by=by)
    asks.append(("roads", judged))
    return [(say(f"class-asks-{name}"), words) for name, words in asks]


def standard_sources(result: ClassResult) -> list[str]:
    """Say where the figures of the standard are from, each by what it is called."""
    return [
        say(
            "class-source",
            figure=say(f"class-figure-{figure.replace('_', '-')}"),
            source=source_words(source),
        )
        for figure, source in result.standard.sources
    ]


def _facts(result: ClassResult) -> list[tuple[str, str]]:
    days = ", ".join(dict.fromkeys(lane.date for lane in result.lanes if lane.date))
    facts = [
        ("day", days or say("class-day-unknown")),
        ("walks", str(len(result.walkers))),
        ("lanes", ", ".join(lane.name for lane in result.lanes)),
        ("standard", " ".join(filter(None, (result.standard.name, result.standard.edition)))),
        ("fingerprint", result.fingerprint),
    ]
    if result.shift_s:
        minutes, seconds = divmod(round(abs(result.shift_s)), 60)
        moved = say(
            "class-clocks-said",
            minutes=minutes,
            seconds=seconds,
            later="yes" if result.shift_s > 0.0 else "no",
            ground=told(result.shift_from),
        )
        facts.append(("clocks", moved))
    return [(say(f"class-{name}"), words) for name, words in facts]
