"""What grading a class has written: all its files, and its document, which fits the schema."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from schema.make_schema import SHIPPED_OF_CLASS
from schema.strict import strict_validator


def files_of(folder: Path) -> dict[str, bytes]:
    """Give the content of every file, by its path in the folder."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def valid_class(folder: Path) -> dict[str, Any]:
    """Give class.json, which fits its schema."""
    document = json.loads((folder / "class.json").read_text(encoding="utf-8"))
    strict_validator(SHIPPED_OF_CLASS).validate(document)
    return document
