"""Results of walkers kept in the folder of a class, so that a second run goes on from there.

A result is kept by the key of all that it was made from: recording, plan, standard,
version of the program. It is taken up again only while the files of its debrief stand
as they were written.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import shutil
from collections.abc import Collection
from pathlib import Path

from audit.classroom.kept_result import result_from, result_text
from audit.classroom.walker_result import WalkerResult
from audit.classroom.walker_task import WalkerTask
from audit.cli.walker_work import WalkerWork
from audit.reports.write import write_texts

KEPT_FOLDER = ".kept"


def put_by(work: WalkerWork, folder: Path) -> None:
    """Write the files of a walker's debrief, then keep the result."""
    result = work.result
    if work.files:
        write_texts(folder / result.folder, work.files)
    written = {
        f"{result.folder}/{name}": _digest(text.encode() if isinstance(text, str) else text)
        for name, text in work.files.items()
    }
    kept = json.dumps({"files": written, "result": json.loads(result_text(result))})
    write_texts(folder / KEPT_FOLDER, {f"{result.key}.json": kept})


def taken_up(task: WalkerTask, folder: Path) -> WalkerResult | None:
    """Give the kept result of a task; None where there is none that still holds."""
    kept = folder / KEPT_FOLDER / f"{task.key}.json"
    try:
        told = json.loads(kept.read_text(encoding="utf-8"))
        result = result_from(json.dumps(told["result"]))
        whole = all(
            _digest((folder / name).read_bytes()) == digest
            for name, digest in told["files"].items()
        )
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None
    return result if whole and result.key == task.key and result.ident == task.ident else None


def forget_kept(folder: Path) -> None:
    """Take all kept results away, as where names are to be left out."""
    with contextlib.suppress(OSError):
        shutil.rmtree(folder / KEPT_FOLDER)


def forget_others(keys: Collection[str], folder: Path) -> None:
    """Take the kept results away that no task of this class has any more."""
    for kept in (folder / KEPT_FOLDER).glob("*.json"):
        if kept.stem not in keys:
            with contextlib.suppress(OSError):
                kept.unlink()


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
