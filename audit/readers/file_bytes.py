"""The bytes and the text of an input file, or one sentence that says why there are none."""

from __future__ import annotations

import codecs
import re
from pathlib import Path

from audit.errors import refuse_file
from audit.readers.problem_list import ProblemList
from audit.settings import ReadingSettings
from audit.words import sentence

_PACKED = (
    (b"PK\x03\x04", "is a spreadsheet or zip file", "Save the sheet as CSV, or unpack the file."),
    (b"\xd0\xcf\x11\xe0", "is an old spreadsheet or document file", "Save the sheet as CSV."),
    (b"\x1f\x8b", "is packed with gzip", "Unpack it first."),
    (b"%PDF", "is a PDF document", "Give the file that the PDF was made from."),
)
_CONTROL = re.compile("[\x00-\x08\x0b\x0e-\x1f]")


def file_bytes(path: Path, what: str, limits: ReadingSettings) -> bytes:
    """Give the content of a file that is to hold ``what`` ("a plan").

    Raises
    ------
    InputRefusedError
        Where there is no such file, where it cannot be read or is empty, and where it
        is packed or far too large.
    """
    name = path.name or str(path)
    remedy = f"Give the name of a file that holds {what}."
    try:
        with path.open("rb") as file:
            data = file.read(limits.largest_plan_bytes + 1)
    except FileNotFoundError:
        raise refuse_file(name, "there is no such file", remedy) from None
    except IsADirectoryError:
        raise refuse_file(name, "is a folder, not a file", remedy) from None
    except PermissionError:
        rule = "may not be read by you"
        raise refuse_file(name, rule, "Ask its owner for leave to read it.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is none"
        raise refuse_file(name, f"cannot be read ({reason})", remedy) from None
    if not data.strip():
        raise refuse_file(name, "is empty", remedy)
    if len(data) > limits.largest_plan_bytes:
        rule = f"is larger than {limits.largest_plan_bytes // 1_000_000} MB"
        raise refuse_file(name, rule, remedy)
    for head, rule, unpack in _PACKED:
        if data.startswith(head):
            raise refuse_file(name, rule, unpack)
    return data


def decoded_text(data: bytes, problems: ProblemList, most_bytes: int | None = None) -> str:
    """Give the text of UTF-8, of UTF-16 with its mark, or else of Windows-1252, noted.

    Raises
    ------
    InputRefusedError
        For bytes that are no text, and for more of them than ``most_bytes``; left out, than
        a text may have.
    """
    most_bytes = problems.limits.largest_text_bytes if most_bytes is None else most_bytes
    if len(data) > most_bytes:
        rule = f"is larger than {most_bytes // 1_000_000} MB"
        problems.stop("", None, rule, "Keep to the points and legs of one walk.")
    text = _decoded(data, problems)
    if text is None or _CONTROL.search(text):
        problems.stop("", None, "holds no text but binary data", "Give a text file in UTF-8.")
    return text


def _decoded(data: bytes, problems: ProblemList) -> str | None:
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        try:
            text = data.decode("utf-16")
        except UnicodeDecodeError:
            return None
        problems.note(sentence("plan-utf-sixteen"))
        return text
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        pass
    try:
        text = data.decode("cp1252")
    except UnicodeDecodeError:
        return None
    problems.note(sentence("plan-windows"))
    return text
