"""All reports of a debrief into a folder: each whole or not at all."""

from __future__ import annotations

import contextlib
import os
import secrets
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

from audit.debriefing.finished_debrief import Debrief
from audit.errors import OutputRefusedError
from audit.ground_picture import GroundPicture
from audit.reports.csv_report import render_csv
from audit.reports.geojson_report import render_geojson
from audit.reports.gpx_report import render_gpx
from audit.reports.html_report import render_html
from audit.reports.json_report import render_json
from audit.reports.paper_report import render_overlay, render_pdf
from audit.reports.paper_sizes import Paper
from audit.reports.picture_files import picture_files
from audit.reports.shown_paces import counting
from audit.words import Words, spoken

ReportKind = Literal["json", "csv", "geojson", "html"]
REPORT_KINDS: tuple[ReportKind, ...] = get_args(ReportKind)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """What else is wanted beside the usual reports.

    Attributes
    ----------
    ground : GroundPicture or None
        To lie under the map.
    gpx, pdf, pictures : bool
        Write debrief.gpx, debrief.pdf, and the pictures alone.
    overlay_scale : int or None
        Write overlay.pdf at 1 to this.
    paper : "a4" or "letter"
    words : Words or None
        In which people are told things; files for programs keep plain English.
    """

    ground: GroundPicture | None = None
    gpx: bool = False
    pdf: bool = False
    pictures: bool = False
    overlay_scale: int | None = None
    paper: Paper = "a4"
    words: Words | None = None


# The page comes last: it takes longest.
_WRITERS: dict[ReportKind, tuple[str, Callable[[Debrief, Wishes], str]]] = {
    "json": ("debrief.json", lambda debrief, _: render_json(debrief)),
    "csv": ("legs.csv", lambda debrief, _: render_csv(debrief)),
    "geojson": ("debrief.geojson", lambda debrief, _: render_geojson(debrief)),
    "html": (
        "debrief.html",
        lambda debrief, wishes: render_html(debrief, wishes.ground, wishes.words),
    ),
}


def write_reports(
    debrief: Debrief,
    folder: Path,
    only: Collection[ReportKind] | None = None,
    wishes: Wishes | None = None,
    made_from: Collection[Path] = (),
) -> list[Path]:
    """Write the reports into a folder, made where needed, and give their paths.

    Other files of the folder stay. Nothing is put in place before everything is
    written, so that a failure leaves the folder as it was. Nothing is written over a file
    of ``made_from``.

    Raises
    ------
    OutputRefusedError
        Where the folder cannot be made or written, the disk is full, or a report would take
        the place of a file that it was made from.
    """
    return write_texts(folder, report_texts(debrief, only, wishes), made_from)


def report_texts(
    debrief: Debrief,
    only: Collection[ReportKind] | None = None,
    wishes: Wishes | None = None,
) -> dict[str, str | bytes]:
    """Give the reports by the names of their files, without writing anything."""
    wishes = wishes or Wishes()
    wanted = [kind for kind in REPORT_KINDS if only is None or kind in only]
    texts: dict[str, str | bytes] = _extra_files(debrief, wishes)
    texts |= {_WRITERS[kind][0]: _WRITERS[kind][1](debrief, wishes) for kind in wanted}
    return texts


def _extra_files(debrief: Debrief, wishes: Wishes) -> dict[str, str | bytes]:
    made: dict[str, str | bytes] = {}
    if wishes.gpx:
        made["debrief.gpx"] = render_gpx(debrief)
    with spoken(wishes.words), counting(debrief.card.pace):
        if wishes.pdf:
            made["debrief.pdf"] = render_pdf(debrief, wishes.paper, wishes.ground)
        if wishes.overlay_scale is not None:
            made["overlay.pdf"] = render_overlay(debrief, wishes.overlay_scale, wishes.paper)
        if wishes.pictures:
            made |= picture_files(debrief, wishes.ground)
    return made


def write_texts(
    folder: Path, texts: Mapping[str, str | bytes], made_from: Collection[Path] = ()
) -> list[Path]:
    """Write files into a folder, each beside its place first and then renamed into it."""
    _make(folder)
    targets = [folder / name for name in texts]
    for target in targets:
        _check_place(target, folder, made_from)
    drafts = [folder / f".{name}.{secrets.token_hex(4)}.part" for name in texts]
    done: list[str] = []
    try:
        for draft, text in zip(drafts, texts.values(), strict=True):
            _write(draft, text.encode() if isinstance(text, str) else text)
        for draft, target in zip(drafts, targets, strict=True):
            draft.replace(target)
            done.append(target.name)
        _keep_names(folder)
    except OSError as problem:
        changed = f"Only {', '.join(done)} is new there" if done else "Nothing was changed"
        message = (
            f"{folder}: the results cannot be written: {_reason(problem)}. {changed}; "
            "make room or choose another folder."
        )
        raise OutputRefusedError(message) from problem
    finally:
        for draft in drafts:
            with contextlib.suppress(OSError):
                draft.unlink(missing_ok=True)
    return targets


def _check_place(target: Path, folder: Path, made_from: Collection[Path]) -> None:
    """Refuse a place that is none: outside of the folder, a folder, or an input of the results."""
    if target.parent != folder:
        message = f"{target.name}: no file of that name can be put into {folder}."
        raise OutputRefusedError(message)
    if target.is_dir():
        message = f"{target}: a folder stands where this file belongs. Move it, or choose "
        raise OutputRefusedError(message + "another folder for the results.")
    for source in made_from:
        with contextlib.suppress(OSError, ValueError):
            if target.samefile(source):
                message = (
                    f"{target}: the results are made from this file, and are not written over "
                    "it. Choose another folder with --out."
                )
                raise OutputRefusedError(message)


def _keep_names(folder: Path) -> None:
    """Write the new names down to the disk too, where the system has a way to."""
    with contextlib.suppress(OSError):
        place = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(place)
        finally:
            os.close(place)


def _make(folder: Path) -> None:
    """Make the folder and those above it."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (FileExistsError, NotADirectoryError) as problem:
        message = f"{folder}: a file stands where a folder is wanted. Name another folder."
        raise OutputRefusedError(message) from problem
    except OSError as problem:
        message = f"{folder}: the folder cannot be made: {_reason(problem)}. Name another folder."
        raise OutputRefusedError(message) from problem


def _write(draft: Path, data: bytes) -> None:
    """Write a file down to the disk, so that a full disk is met here and not later."""
    with draft.open("xb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _reason(problem: OSError) -> str:
    return (problem.strerror or str(problem)).lower()
