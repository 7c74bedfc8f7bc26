"""From the files of a course and its ground to the rehearsal in a folder."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from audit import words
from audit.cli.endings import WrongUseError
from audit.cli.lanes_files import read_ground_areas, read_plans
from audit.cli.messages import say_note, say_page, say_written, speak_as, tell
from audit.cli.right_plans import put_right_first
from audit.leg_card import CardPoint, LegCard, work_out_card
from audit.readers.course_settings import CourseOptions
from audit.readers.ground_heights import heights_at
from audit.rehearsal.finished_rehearsal import Rehearsal, WayEnd
from audit.rehearsal.paper_evidence import Heights
from audit.rehearsal.rehearse import rehearse
from audit.rehearsal.ways_on_ground import Surroundings
from audit.reports.rehearsal_document import render_rehearsal_csv, render_rehearsal_json
from audit.reports.rehearsal_gpx import course_gpx, leg_gpx
from audit.reports.rehearsal_report import render_rehearsal, render_rehearsal_html
from audit.reports.write import write_texts
from audit.settings import Settings

_NOT_IN_A_NAME = re.compile(r"[^\w-]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the command line asks of a rehearsal."""

    folder: Path | None = None
    areas: Path | None = None
    beside: tuple[Path, ...] = ()
    ground: Path | None = None
    walks: tuple[str, ...] = ()
    words: Path | None = None


def rehearse_files(plan: Path, asked: Asked, *, options: CourseOptions) -> None:
    """Rehearse a plan, write what comes of it, tell the short of it.

    Raises
    ------
    InputRefusedError
        With the problems of the plan, of another course, or of the areas.
    WrongUseError
        Where the order of a plan's points is free, or --walk names no leg or mistake.
    """
    speak_as(asked.words)
    (read,) = read_plans([plan], options)
    card, first = work_out_card(read), put_right_first([(plan, read)])
    around = Surroundings(
        areas=read_ground_areas(asked.areas, card.grid), beside=_points_beside(asked, card)
    )
    made = rehearse(card, around, heights=_heights(asked.ground, card))
    walks = [_walk(text, made) for text in asked.walks]
    folder = asked.folder or Path(f"{plan.stem}-rehearsal")
    texts = {
        "rehearsal.json": render_rehearsal_json(made),
        "rehearsal.csv": render_rehearsal_csv(made),
        "rehearsal.html": render_rehearsal_html(made, around.areas, first),
    }
    tracks = dict(_tracks(made, walks))
    write_texts(folder / "tracks", tracks)
    written = write_texts(folder, texts)
    tell(render_rehearsal(made, first))
    for note in (*card.notes, *made.notes):
        say_note(note)
    names = ", ".join(path.name for path in written)
    counted = {"count": str(len(tracks)), "folder": str(folder / "tracks")}
    say_written(folder, words.say("rehearse-written", files=names, **counted))
    say_page(written[-1])


def _points_beside(asked: Asked, card: LegCard) -> tuple[tuple[str, CardPoint], ...]:
    """Give the points of the other courses on the grid of this one."""
    if not asked.beside:
        return ()
    plans = read_plans(asked.beside, {"grid": card.grid.code}, any_order=True)
    cards = [work_out_card(plan) for plan in plans]
    return tuple(
        (other.name, point) for other in cards for point in other.points if not point.dead_reckoned
    )


def _heights(path: Path | None, card: LegCard) -> Heights | None:
    if path is None:
        return None
    return lambda places: heights_at(path, card.grid.code, places)


def _walk(text: str, made: Rehearsal) -> tuple[int, WayEnd]:
    """Give the leg, by its number in order, and the way that --walk names."""
    name, equals, cause = (part.strip() for part in text.rpartition("="))
    numbers = {leg.leg.name: number for number, leg in enumerate(made.legs)}
    if not equals or name not in numbers:
        known = ", ".join(numbers)
        message = f'--walk: "{text}" names no leg. Write LEG=CAUSE; the legs are {known}.'
        raise WrongUseError(message)
    leg = made.legs[numbers[name]]
    found = [end for end in leg.ends if end.way.cause == cause]
    if not found:
        why = dict(leg.not_here).get(cause, "no such mistake (see leg-audit guide causes)")
        message = f'--walk: "{cause}" is not made on leg {name}: {why}.'
        raise WrongUseError(message)
    return numbers[name], max(found, key=lambda end: end.way.share)


def _tracks(made: Rehearsal, walks: list[tuple[int, WayEnd]]) -> Iterator[tuple[str, str]]:
    settings = Settings().rehearsal
    for number, leg in enumerate(made.legs, start=1):
        yield f"{_file_name(f'leg-{leg.leg.name}', number)}.gpx", leg_gpx(made.card, leg, settings)
    for number, end in walks:
        name = _file_name(f"walk-{made.legs[number].leg.name}", number + 1)
        text = course_gpx(made.card, number, end, settings)
        yield f"{name}-{end.way.cause}.gpx", text


def _file_name(name: str, number: int) -> str:
    """Give a name that any disk takes; the number of the leg where its own name has no letters."""
    plain = _NOT_IN_A_NAME.sub("-", name).strip("-")
    return plain if plain == name else f"{plain}-{number}"
