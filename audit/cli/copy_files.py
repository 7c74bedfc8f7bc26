"""From the file of a plan to its copy in another form, read back before it is written."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import cast

from audit import words
from audit.cli.endings import WrongUseError
from audit.cli.messages import command_line, say, say_note, say_written, speak_as
from audit.cli.own_input import keep_apart
from audit.errors import OutputRefusedError
from audit.leg_card.check_plan import check_plan
from audit.leg_card.onto_grid import plan_onto_grid
from audit.leg_card.plan_differences import plan_differences
from audit.plan import Plan
from audit.readers.course_settings import CourseOptions
from audit.readers.plan_file import read_plan
from audit.reports.angle_words import east_or_west
from audit.reports.plan_copy import PlanCopy
from audit.reports.plan_csv_copy import copy_as_csv
from audit.reports.plan_geojson_copy import copy_as_geojson
from audit.reports.plan_gpx_copy import copy_as_gpx
from audit.reports.plan_toml_copy import copy_as_toml
from audit.reports.write import write_texts
from audit.words import PLAIN_ENGLISH, spoken, told

_FORMS: dict[str, tuple[str, Callable[[Plan], PlanCopy]]] = {
    ".toml": ("TOML", copy_as_toml),
    ".csv": ("CSV", copy_as_csv),
    ".gpx": ("GPX", lambda plan: copy_as_gpx(plan, check_plan(plan).card)),
    ".geojson": ("GeoJSON", lambda plan: copy_as_geojson(plan, check_plan(plan).card)),
    ".json": ("GeoJSON", lambda plan: copy_as_geojson(plan, check_plan(plan).card)),
}
_OPTIONS = {
    "name": "--name",
    "date": "--date",
    "grid": "--grid",
    "grid_magnetic_angle_deg": "--grid-magnetic-angle",
    "paces_per_100m": "--paces-per-100m",
    "arrival_radius_m": "--arrival-radius",
}


def copy_file(
    path: Path,
    out: Path,
    *,
    onto: str | None,
    options: CourseOptions,
    words_from: Path | None = None,
) -> None:
    """Copy a plan into the form that the name of ``out`` says.

    Raises
    ------
    AuditError
        Where the plan is refused, the grid does not suit it, or the copy cannot be written.
    """
    speak_as(words_from)
    form = _FORMS.get(out.suffix.lower())
    if form is None:
        message = (
            f"--out: {out.name} does not say in which form. Name it .toml, .csv, .gpx or .geojson."
        )
        raise WrongUseError(message)
    keep_apart(path, out)
    plan = read_plan(path, **options)
    if onto is not None:
        plan = plan_onto_grid(plan, onto)
    name, copied = form
    with spoken(PLAIN_ENGLISH):  # a copy is for programs
        copy = copied(plan)
    _check_read_back(copy, out.name, plan)
    write_texts(out.parent, {out.name: copy.text})
    say_written(out)
    if onto is not None and plan.grid_magnetic_angle_deg is not None:
        angle = east_or_west(plan.grid_magnetic_angle_deg)
        say_note(words.say("copy-onto", angle=angle))
    if copy.lost:
        lost = "; ".join(told(lost.words) for lost in copy.lost)
        say_note(words.say("copy-lacks", form=name, lost=lost))
    if copy.options:
        said = [
            part
            for option, value in copy.options.items()
            for part in (_OPTIONS[option], _value(value))
        ]
        command = command_line("check", out, *said)
        say(words.say("copy-read", command=command))


def _check_read_back(copy: PlanCopy, name: str, plan: Plan) -> None:
    """Read the copy as anybody would, and refuse one that is another plan than it says."""
    with _passing_folder() as folder:
        write_texts(folder, {name: copy.text})
        back = read_plan(folder / name, **cast("CourseOptions", copy.options))
    explained = [part for lost in copy.lost for part in lost.differs]
    other = [
        one for one in plan_differences(plan, back) if not any(part in one for part in explained)
    ]
    if other:
        message = (
            f"{name}: the copy would not read back to the same plan ({', '.join(other)} would "
            "differ), so nothing was written. Choose the form .toml."
        )
        raise OutputRefusedError(message)


@contextmanager
def _passing_folder() -> Iterator[Path]:
    """Give a folder that is gone afterwards; a full disk may have no room for one."""
    try:
        folder = TemporaryDirectory()
    except OSError as problem:
        message = f"No passing folder can be made: {problem.strerror}. Make room on the disk."
        raise OutputRefusedError(message) from problem
    with folder as name:
        yield Path(name)


def _value(value: str | float) -> str:
    return value if isinstance(value, str) else f"{value:.12g}"
