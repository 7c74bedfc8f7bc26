"""One pass over a GPX file: the points gathered, and how far it got."""

from __future__ import annotations

import zlib
from dataclasses import dataclass
from pathlib import Path
from xml.parsers import expat

from audit.errors import InputRefusedError
from audit.readers.gpx_bytes import pieces_of
from audit.readers.gpx_points import GatheredPoints
from audit.readers.gpx_runs import GpxRuns
from audit.readers.xml_guard import guarded_parser, refuse_long_token
from audit.settings import ReadingSettings
from audit.words import sentence

_INVALID_TOKEN = expat.errors.codes[expat.errors.XML_ERROR_INVALID_TOKEN]
_CUT_SHORT = {
    expat.errors.codes[text]
    for text in (
        expat.errors.XML_ERROR_NO_ELEMENTS,
        expat.errors.XML_ERROR_UNCLOSED_TOKEN,
        expat.errors.XML_ERROR_PARTIAL_CHAR,
        expat.errors.XML_ERROR_UNCLOSED_CDATA_SECTION,
    )
}


@dataclass(frozen=True, slots=True, kw_only=True)
class GpxPassage:
    """What one pass brought.

    Attributes
    ----------
    error : Exception or None
        Why the parser stopped before the end; None for a whole file.
    good_bytes, total_bytes : int
        Unpacked bytes before the error, and in the file.
    notes : tuple of str
        Sentences about the packing.
    """

    points: GatheredPoints
    error: Exception | None
    good_bytes: int
    total_bytes: int
    notes: tuple[str, ...]

    @property
    def stopped_at_letters(self) -> bool:
        """Whether it stopped at bytes that are no letters in the file's encoding."""
        return isinstance(self.error, expat.ExpatError) and self.error.code == _INVALID_TOKEN

    @property
    def cut_short(self) -> bool:
        """Whether the file simply ends too early, as when a recorder dies."""
        return isinstance(self.error, expat.ExpatError) and self.error.code in _CUT_SHORT


def pass_over(
    path: Path,
    settings: ReadingSettings,
    *,
    encoding: str | None = None,
    keep_names: bool = False,
) -> GpxPassage:
    """Gather the points of a file up to its end, or to where it can no longer be read.

    Points that are written alike are read at once. Where that ends in trouble the file is
    passed over again point by point: only then do the places of the trouble hold.

    Raises
    ------
    InputRefusedError
        For what is no GPX file, or must not be read; see gpx_bytes and xml_guard.
    """
    singly = False
    while True:
        parser = guarded_parser(path.name, encoding)
        points = GatheredPoints(parser, path.name, settings, keep_names=keep_names)
        runs = GpxRuns(parser, points, singly=singly)
        try:
            passage = _to_the_end(path, settings, runs, points)
        except InputRefusedError:
            if not runs.at_once:
                raise
        else:
            if passage.error is None or not runs.at_once:
                return passage
        singly = True


def _to_the_end(
    path: Path, settings: ReadingSettings, runs: GpxRuns, points: GatheredPoints
) -> GpxPassage:
    error: Exception | None = None
    notes: list[str] = []
    total = 0
    pieces = pieces_of(path, settings)
    while True:
        try:
            piece = next(pieces, b"")
        except zlib.error:
            piece = b""
            notes.append(sentence("recording-gzip", bytes=f"{total:,}"))
        total += len(piece)
        # After an error the rest is only counted.
        if error is None:
            error = _parse(runs, piece)
            refuse_long_token(runs.parser, runs.fed, path.name, settings)
        if not piece:
            break
    return GpxPassage(
        points=points,
        error=error,
        good_bytes=total if error is None else runs.parser.ErrorByteIndex,
        total_bytes=total,
        notes=tuple(notes),
    )


def _parse(runs: GpxRuns, piece: bytes) -> Exception | None:
    """Feed one piece, the last one empty; give the error if there is one."""
    try:
        runs.feed(piece)
    except (expat.ExpatError, LookupError, ValueError) as error:
        return error
    return None
