"""The pictures alone, for slides: map, legs and misses as SVG and PNG."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief
from audit.ground_picture import GroundPicture
from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports.page_pictures import page_pictures
from audit.reports.picture import Picture

_PNG_SCALE = 3.0
"""Three dots to a pixel: sharp when thrown on a wall."""


def picture_files(debrief: Debrief, ground: GroundPicture | None = None) -> dict[str, str | bytes]:
    """Give the files by name: map, walk, misses, and strip, arrows and ledger of each leg."""
    pictures = page_pictures(
        debrief, speed_and_direction(debrief.clean, debrief.settings.measuring), ground
    )
    named: dict[str, Picture | None] = {
        "map": pictures.map,
        "walk": pictures.walk,
        "misses": pictures.target,
    }
    for number, leg in enumerate(pictures.legs, start=1):
        if leg is not None:
            named[f"leg-{number}-strip"] = leg.strip
            named[f"leg-{number}-azimuth"] = leg.dial
            named[f"leg-{number}-ledger"] = leg.ledger
    made: dict[str, str | bytes] = {}
    for name, picture in named.items():
        if picture is not None:
            made[f"{name}.svg"] = f"{picture.svg}\n"
            made[f"{name}.png"] = _png(picture.svg)
    return made


def _png(svg: str) -> bytes:
    import vl_convert  # noqa: PLC0415

    made: bytes = vl_convert.svg_to_png(svg, scale=_PNG_SCALE)
    return made
