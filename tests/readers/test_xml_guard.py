"""Hostile XML is refused before any reader sees it; defusedxml is the judge."""

from __future__ import annotations

import defusedxml.ElementTree
import pytest
from defusedxml.common import DefusedXmlException

from audit.errors import InputRefusedError
from audit.readers.xml_guard import refuse_hostile_xml
from audit.settings import ReadingSettings

LAUGHS = "".join(f'<!ENTITY a{level} "{f"&a{level - 1};" * 10}">' for level in range(1, 10))
HOSTILE = {
    "entities that swell up": f'<!DOCTYPE gpx [<!ENTITY a0 "ha">{LAUGHS}]><gpx>&a9;</gpx>',
    "one long entity many times": f'<!DOCTYPE gpx [<!ENTITY a "{"x" * 999}">]><gpx>{"&a;" * 99}</gpx>',
    "a file": '<!DOCTYPE gpx [<!ENTITY a SYSTEM "file:///etc/hostname">]><gpx>&a;</gpx>',
    "an address": '<!DOCTYPE gpx SYSTEM "http://localhost/a.dtd"><gpx/>',
    "a parameter entity": '<!DOCTYPE gpx [<!ENTITY % a SYSTEM "file:///a"> %a;]><gpx/>',
    "an unparsed entity": '<!DOCTYPE gpx [<!NOTATION n SYSTEM "n"><!ENTITY a SYSTEM "a" NDATA n>]><gpx/>',
    "a bare document type": "<!DOCTYPE gpx><gpx/>",
    "after a comment": "<!-- safe --><?pi safe?>\n<!DOCTYPE gpx><gpx/>",
}
HARMLESS = [
    "<gpx/>",
    "<?xml version='1.0' encoding='utf-8'?>\n<gpx>&amp;&lt;&#65;</gpx>",
    "<gpx><!-- <!DOCTYPE gpx> --><![CDATA[<!DOCTYPE gpx>]]></gpx>",
    "<!-- <!DOCTYPE gpx [<!ENTITY a 'b'>]> --><gpx/>",
]


@pytest.mark.parametrize("name", HOSTILE)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_what_defusedxml_forbids_is_one_sentence(name: str, encoding: str) -> None:
    content = HOSTILE[name].encode(encoding)
    with pytest.raises(DefusedXmlException):
        defusedxml.ElementTree.fromstring(content, forbid_dtd=True)
    with pytest.raises(InputRefusedError, match="declares a document type") as refusal:
        refuse_hostile_xml(content, "plan.gpx", ReadingSettings())
    assert len(refusal.value.problems) == 1


@pytest.mark.parametrize("text", HARMLESS)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
def test_what_defusedxml_lets_pass_passes(text: str, encoding: str) -> None:
    content = text.encode(encoding)
    defusedxml.ElementTree.fromstring(content, forbid_dtd=True)
    refuse_hostile_xml(content, "plan.gpx", ReadingSettings())


@pytest.mark.parametrize("content", [b"", b"  ", b"no xml", b"\x89PNG", b"<"])
def test_a_beginning_that_is_no_xml_is_refused_too(content: bytes) -> None:
    # Another parser might guess on and find a document type that this one never saw.
    with pytest.raises(InputRefusedError, match=r"plan\.gpx, line 1, column \d+: cannot be read"):
        refuse_hostile_xml(content, "plan.gpx", ReadingSettings())


def test_a_web_page_is_called_one() -> None:
    with pytest.raises(InputRefusedError, match="is a web page and no GPX file"):
        refuse_hostile_xml(b"<!DOCTYPE html><html></html>", "plan.gpx", ReadingSettings())
