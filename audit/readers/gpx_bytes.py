"""The bytes of a recording, unpacked on the way and never more than allowed."""

from __future__ import annotations

import zlib
from collections.abc import Iterable, Iterator
from pathlib import Path

from audit.errors import InputRefusedError, refuse_file
from audit.settings import ReadingSettings

PIECE_BYTES = 1 << 18
_GZIP_MARK = b"\x1f\x8b"
_ZIP_MARK = b"PK\x03\x04"
_FIT_MARK, _FIT_MARK_AT = b".FIT", 8
_GZIP_FORMAT = 31  # zlib's "wbits" for gzip with the largest window


def pieces_of(path: Path, limits: ReadingSettings) -> Iterator[bytes]:
    """Give the content of a file in pieces; gzip is known by its content and unpacked.

    Raises
    ------
    InputRefusedError
        When the file cannot be opened, is a zip archive or a FIT file, holds more than a
        recording may, or swells up too much when it is unpacked.
    zlib.error
        Where the packing is damaged; what came before has been given.
    """
    total = 0
    read = 0

    def counted() -> Iterator[bytes]:
        nonlocal read
        for piece in _raw_pieces(path):
            read += len(piece)
            yield piece

    for piece in _unpacked_if_packed(counted(), path.name):
        if total == 0 and piece.startswith(_FIT_MARK, _FIT_MARK_AT):
            remedy = "Export the recording as GPX."
            raise refuse_file(path.name, "is a FIT file and no GPX", remedy)
        total += len(piece)
        if total > limits.small_packed_bytes and total > limits.most_swelling * read:
            rule = f"swells up more than {limits.most_swelling:.0f} times when it is unpacked"
            raise refuse_file(path.name, rule, "Unpack it yourself if you trust it.")
        if total > limits.largest_track_bytes:
            rule = f"holds more than {limits.largest_track_bytes / 1e6:,.0f} MB"
            raise refuse_file(path.name, rule, "Cut it to the day of the walk.")
        yield piece


def _raw_pieces(path: Path) -> Iterator[bytes]:
    try:
        with path.open("rb") as file:
            while piece := file.read(PIECE_BYTES):
                yield piece
    except (OSError, ValueError) as error:  # ValueError: a name that no file can have
        raise _unreadable(path, error) from error


def _unreadable(path: Path, error: OSError | ValueError) -> InputRefusedError:
    if isinstance(error, FileNotFoundError):
        return refuse_file(path.name, "does not exist", "Check the name and the folder.")
    if path.is_dir():
        return refuse_file(path.name, "is a folder", "Name one GPX file in it.")
    reason = f"cannot be read ({getattr(error, 'strerror', None) or error})"
    return refuse_file(path.name, reason, "Check that you may open it.")


def _unpacked_if_packed(pieces: Iterator[bytes], name: str) -> Iterator[bytes]:
    first = next(pieces, b"")
    if first.startswith(_ZIP_MARK):
        raise refuse_file(name, "is a zip archive", "Unpack it and name the GPX file in it.")
    if first.startswith(_GZIP_MARK):
        yield from _unpacked(first, pieces)
    else:
        yield first
        yield from pieces


def _unpacked(first: bytes, others: Iterable[bytes]) -> Iterator[bytes]:
    """Unpack gzip by hand: the library's file object loses the last piece of a file cut short."""
    member = zlib.decompressobj(_GZIP_FORMAT)
    packed = first
    rest = iter(others)
    while packed:
        if member.eof:  # several packed files one behind the other are one file
            member = zlib.decompressobj(_GZIP_FORMAT)
        yield member.decompress(packed, PIECE_BYTES)
        packed = member.unused_data.lstrip(b"\0") if member.eof else member.unconsumed_tail
        packed = packed or next(rest, b"")
