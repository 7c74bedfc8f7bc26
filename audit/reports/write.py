"""All reports of a debrief into a folder: each whole or not at all."""

from __future__ import annotations

import contextlib
import os
import secrets
from collections.abc import Callable, Collection, Mapping
from pathlib import Path
from typing import Literal, get_args

from audit.debriefing.records import Debrief
from audit.errors import OutputRefusedError
from audit.reports.csv_report import render_csv
from audit.reports.geojson_report import render_geojson
from audit.reports.html_report import render_html
from audit.reports.json_report import render_json
from audit.reports.picture import prepare

ReportKind = Literal["json", "csv", "geojson", "html"]
REPORT_KINDS: tuple[ReportKind, ...] = get_args(ReportKind)

# The page comes last: the drawing engine loads while the others are made.
_WRITERS: dict[ReportKind, tuple[str, Callable[[Debrief], str]]] = {
    "json": ("debrief.json", render_json),
    "csv": ("legs.csv", render_csv),
    "geojson": ("debrief.geojson", render_geojson),
    "html": ("debrief.html", render_html),
}


def write_reports(
    debrief: Debrief, folder: Path, only: Collection[ReportKind] | None = None
) -> list[Path]:
    """Write the reports into a folder, made where needed, and give their paths.

    Other files of the folder stay. Nothing is put in place before everything is
    written, so that a failure leaves the folder as it was.

    Raises
    ------
    OutputRefusedError
        Where the folder cannot be made or written, or the disk is full.
    """
    wanted = [kind for kind in REPORT_KINDS if only is None or kind in only]
    if "html" in wanted:
        prepare()
    texts = {_WRITERS[kind][0]: _WRITERS[kind][1](debrief) for kind in wanted}
    return write_texts(folder, texts)


def write_texts(folder: Path, texts: Mapping[str, str | bytes]) -> list[Path]:
    """Write files into a folder, each beside its place first and then renamed into it."""
    _make(folder)
    targets = [folder / name for name in texts]
    for target in targets:
        if target.is_dir():
            message = f"{target}: a folder stands where this file belongs. Move it, or choose "
            raise OutputRefusedError(message + "another folder for the results.")
    drafts = [folder / f".{name}.{secrets.token_hex(4)}.part" for name in texts]
    try:
        for draft, text in zip(drafts, texts.values(), strict=True):
            _write(draft, text.encode() if isinstance(text, str) else text)
        for draft, target in zip(drafts, targets, strict=True):
            draft.replace(target)
    except OSError as problem:
        message = (
            f"{folder}: the results cannot be written: {_reason(problem)}. Nothing was changed; "
            "make room or choose another folder."
        )
        raise OutputRefusedError(message) from problem
    finally:
        for draft in drafts:
            with contextlib.suppress(OSError):
                draft.unlink(missing_ok=True)
    return targets


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
