"""Hostile XML kept out: no document types, hence no entities of its own and nothing fetched.

All the known attacks (entities that expand without end, files or addresses pulled in
from outside) need a document type declaration, which no GPX file has. It can only stand
before the first element, so it is refused there, whatever it holds.
"""

from __future__ import annotations

from xml.parsers import expat

from audit.errors import InputRefusedError, refuse, refuse_file
from audit.settings import ReadingSettings

_PIECE_BYTES = 65_536


def guarded_parser(file: str, encoding: str | None = None) -> expat.XMLParserType:
    """Give an expat parser that refuses document types and whatever comes with them.

    Parameters
    ----------
    file : str
        Name for messages.
    encoding : str or None
        Overrides the encoding that the file declares.

    Notes
    -----
    The parser raises InputRefusedError from inside ``Parse``. Names arrive with their
    prefix as written: a prefix that was never declared is no reason to lose a walk.
    """
    parser = expat.ParserCreate(encoding)

    def document_type(name: str, *_: object) -> None:
        if name.lower() == "html":
            raise web_page(file)
        raise refuse(
            file,
            f"line {parser.CurrentLineNumber}",
            f"<!DOCTYPE {name}>",
            "declares a document type, which could make a reader swell up or open other files",
            "Take the declaration out, or export the file again as plain GPX.",
        )

    parser.StartDoctypeDeclHandler = document_type
    return parser


def refuse_hostile_xml(content: bytes, file: str, settings: ReadingSettings) -> None:
    """Let XML pass that is safe to hand to any reader.

    What is not well-formed after the first element is left to that reader.

    Raises
    ------
    InputRefusedError
        For a document type, an entity, an outside reference, a beginning that is no XML, and
        for elements that are too many or nested too deeply to be kept in memory.
    """
    parser = guarded_parser(file)
    elements = depth = 0

    def start(*_: object) -> None:
        nonlocal elements, depth
        elements, depth = elements + 1, depth + 1
        if depth > settings.deepest_element:
            raise too_deep(file, parser, settings)
        if elements > settings.most_elements:
            rule = f"holds more than {settings.most_elements:,} elements, which no plan does"
            raise refuse_file(file, rule, "Keep only the route, or the points in order.")

    def end(*_: object) -> None:
        nonlocal depth
        depth -= 1

    parser.StartElementHandler = start
    parser.EndElementHandler = end
    try:
        for given in range(0, len(content), _PIECE_BYTES):
            parser.Parse(content[given : given + _PIECE_BYTES], False)  # noqa: FBT003
            refuse_long_token(parser, given + _PIECE_BYTES, file, settings)
        parser.Parse(b"", True)  # noqa: FBT003 (expat takes it by position only)
    except (expat.ExpatError, LookupError, ValueError) as error:
        if not elements:
            raise no_xml(file, error) from error


def refuse_long_token(
    parser: expat.XMLParserType, given_bytes: int, file: str, settings: ReadingSettings
) -> None:
    """Refuse a tag or comment that goes on and on: it would all have to be kept in memory."""
    if given_bytes - parser.CurrentByteIndex > settings.largest_token_bytes:
        place = f"line {parser.CurrentLineNumber}"
        rule = f"holds one tag or comment of more than {settings.largest_token_bytes:,} bytes"
        raise refuse(file, place, None, rule, "Export the file again as GPX.")


def too_deep(
    file: str, parser: expat.XMLParserType, settings: ReadingSettings
) -> InputRefusedError:
    """Give the error for elements in elements without end."""
    rule = f"nests elements more than {settings.deepest_element} deep, which no recording does"
    place = f"line {parser.CurrentLineNumber}"
    return refuse(file, place, None, rule, "Export the recording again as GPX.")


def web_page(file: str) -> InputRefusedError:
    """Give the error for a page of a web site saved under the name of a track."""
    return refuse_file(
        file, "is a web page and no GPX file", "Download the GPX file that it offers."
    )


def no_xml(file: str, error: Exception) -> InputRefusedError:
    """Give the error for content that no XML reader can begin with."""
    if isinstance(error, expat.ExpatError):
        place = f"line {error.lineno}, column {error.offset + 1}"
        reason = f"cannot be read as XML there ({expat.ErrorString(error.code)})"
        return refuse(file, place, None, reason, "Export it again as GPX.")
    # An encoding that nobody knows, or one of several bytes a letter.
    reason = f"cannot be read as XML ({error})"
    return refuse(file, "line 1", None, reason, "Save it again in UTF-8.")
