"""Hostile XML kept out: no document types, hence no entities of its own and nothing fetched.

All the known attacks (entities that expand without end, files or addresses pulled in
from outside) need a document type declaration, which no GPX file has. It can only stand
before the first element, so it is refused there, whatever it holds.
"""

from __future__ import annotations

from xml.parsers import expat

from audit.errors import InputRefusedError, refuse


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


def refuse_hostile_xml(content: bytes, file: str) -> None:
    """Let XML pass that is safe to hand to any reader.

    Looks only as far as the first element: nothing after it can declare anything.

    Raises
    ------
    InputRefusedError
        For a document type, an entity, an outside reference, or a beginning that is no XML.
    """
    parser = guarded_parser(file)

    def first_element(*_: object) -> None:
        raise _PassedError

    parser.StartElementHandler = first_element
    try:
        parser.Parse(content, True)  # noqa: FBT003 (expat takes it by position only)
    except _PassedError:
        return
    except (expat.ExpatError, LookupError, ValueError) as error:
        raise no_xml(file, error) from error


def web_page(file: str) -> InputRefusedError:
    """Give the error for a page of a web site saved under the name of a track."""
    return refuse(
        file, "", None, "is a web page and no GPX file", "Download the GPX file that it offers."
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


class _PassedError(Exception):
    """The first element was reached and nothing was declared before it."""
