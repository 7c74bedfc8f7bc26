"""Results are never written over the file that they were made from."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from audit.cli.endings import WrongUseError


def keep_apart(source: Path, out: Path) -> None:
    """Refuse to write a result over its own source.

    Raises
    ------
    WrongUseError
        Where both are one file, by whatever way they are named.
    """
    same = False
    with suppress(OSError):
        same = out.samefile(source)
    if same:
        message = f"--out: {out} is the plan itself, and is not written over. Choose another name."
        raise WrongUseError(message)
