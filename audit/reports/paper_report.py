"""The debrief on paper, and the overlay for the map: PDF files made without a browser."""

from __future__ import annotations

import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Any

from audit.debriefing.finished_debrief import Debrief
from audit.errors import OutputRefusedError
from audit.ground_picture import GroundPicture
from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports import digits
from audit.reports.overlay import PX_A_MM, overlay, overlay_tolerance_m
from audit.reports.page_pictures import page_pictures
from audit.reports.paper_sizes import MARGIN_MM, Paper, sheets
from audit.reports.paper_words import paper_words
from audit.reports.picture import draw
from audit.words import in_force, say

FONTS = ["DejaVu Sans", "Liberation Sans", "Libertinus Serif"]
"""The last one comes with the typesetter."""
_RULER_MM = 50


def render_pdf(debrief: Debrief, paper: Paper = "a4", ground: GroundPicture | None = None) -> bytes:
    """Give the debrief as a PDF: one page with the essentials, then the legs.

    Raises
    ------
    OutputRefusedError
        The typesetting library is not installed.
    """
    moved = speed_and_direction(debrief.clean, debrief.settings.measuring)
    pictures = page_pictures(debrief, moved, ground)
    drawn = {"map.svg": pictures.map.svg}
    if pictures.walk is not None:
        drawn["walk.svg"] = pictures.walk.svg
    if pictures.target is not None:
        drawn["target.svg"] = pictures.target.svg
    for number, leg in enumerate(pictures.legs):
        if leg is not None:
            drawn[f"strip{number}.svg"] = leg.strip.svg
            drawn[f"dial{number}.svg"] = leg.dial.svg
            drawn[f"ledger{number}.svg"] = leg.ledger.svg
    sheet = sheets(paper)[0]
    data = paper_words(debrief, pictures, ground)
    data |= _setting(sheet.width_mm, sheet.height_mm)
    return typeset("paper.typ", data, drawn)


def render_overlay(debrief: Debrief, scale: int, paper: Paper = "a4") -> bytes:
    """Give plan and walk at 1:``scale`` as a PDF of one sheet.

    Raises
    ------
    OutputRefusedError
        The course fits no sheet, or the typesetting library is not installed.
    """
    made = overlay(debrief, scale, paper)
    drawn = draw(made.specification, "overlay", "", "")
    width_px = float(drawn.svg.split('width="', 1)[1].split('"', 1)[0])
    shown_scale = f"1:{scale // 1000} 000"
    data = {
        "title": f"{debrief.card.name}, {shown_scale}",
        "note": say(
            "paper-overlay-note",
            grid=debrief.card.grid.name,
            within=digits.stated_metres(overlay_tolerance_m(debrief, scale)),
        ),
        "ruler": _RULER_MM,
        "ruler_note": say("paper-ruler", length=str(_RULER_MM)),
        "map_width": width_px / PX_A_MM,
        "alt": say("paper-overlay-alt", scale=shown_scale),
        **_setting(made.sheet.width_mm, made.sheet.height_mm),
    }
    return typeset("overlay.typ", data, {"map.svg": drawn.svg})


def _setting(width_mm: float, height_mm: float) -> dict[str, Any]:
    return {
        "sheet": {"width": width_mm, "height": height_mm},
        "margin": MARGIN_MM,
        "fonts": FONTS,
        "language": in_force().language,
    }


def typeset(template: str, data: Mapping[str, Any], drawn: Mapping[str, str]) -> bytes:
    """Give the PDF of a template, its data and its pictures; the same bytes every time."""
    try:
        import typst  # noqa: PLC0415
    except ImportError:
        message = (
            "Paper needs the typesetting library, which is not installed: "
            'pip install "leg-audit[paper]".'
        )
        raise OutputRefusedError(message) from None
    text = files("audit.reports").joinpath("templates", template).read_bytes()
    parts = {"main": text, "data.json": json.dumps(data, ensure_ascii=False).encode()}
    parts |= {name: svg.encode() for name, svg in drawn.items()}
    compile_parts: Any = typst.compile  # its types know nothing of several files
    made: bytes = compile_parts(parts)
    return made
