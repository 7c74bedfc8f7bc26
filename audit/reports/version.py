"""Which version of the program a report was made by."""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version


def program_version() -> str:
    """Give the version of the installed distribution, or say that there is none."""
    try:
        return version("leg-audit")
    except PackageNotFoundError:
        return "of unknown version"
