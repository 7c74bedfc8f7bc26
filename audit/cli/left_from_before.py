"""What else stands in a folder of results."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path


def left_from_before(names: Collection[str], folder: Path) -> list[str]:
    """Give what stands in a folder of results and was not written this time."""
    if not folder.is_dir():
        return []
    return sorted(one.name for one in folder.iterdir() if one.name not in names)
