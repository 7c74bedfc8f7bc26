"""The elements of a GPX file from strangers, read without entities or anything from outside."""

from __future__ import annotations

from typing import TYPE_CHECKING

from audit.readers.problem_list import ProblemList
from audit.readers.xml_guard import refuse_hostile_xml

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element


def gpx_root(data: bytes, problems: ProblemList) -> Element:
    """Give the <gpx> element of a file, with all that it holds.

    Raises
    ------
    InputRefusedError
        For XML that is not well-formed, that declares a document type or an entity, and
        for XML that is not GPX.
    """
    from defusedxml.common import DefusedXmlException  # noqa: PLC0415
    from defusedxml.ElementTree import ParseError, fromstring  # noqa: PLC0415

    refuse_hostile_xml(data, problems.file, problems.limits)
    try:
        root: Element = fromstring(data, forbid_dtd=True)
    except DefusedXmlException:
        rule = "holds a document type or entities, which can harm a reader"
        problems.stop("", None, rule, "Export it again as plain GPX.")
    except ParseError as error:
        line, reason = f"line {error.position[0]}", str(error.msg).partition(": ")[0]
        remedy = "Export it again from the program that made it."
        problems.stop(line, None, f"is not well-formed XML ({reason})", remedy)
    except (ValueError, LookupError) as error:
        rule = f"has an encoding that cannot be read ({error})"
        problems.stop("", None, rule, "Save it again in UTF-8.")
    if local_name(root) != "gpx":
        rule = f"is XML but not GPX: its root is <{local_name(root)}>"
        problems.stop("", None, rule, "Give a GPX file with a route or waypoints.")
    return root


def local_name(element: Element) -> str:
    """Give an element's name without its namespace."""
    return str(element.tag).rpartition("}")[2]
