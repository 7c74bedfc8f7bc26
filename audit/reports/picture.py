"""A chart specification turned into SVG to stand inside a page."""

from __future__ import annotations

import re
from html import escape
from threading import Thread
from typing import Any

_OPENING = re.compile(r"<svg\b[^>]*>")
_VIEW_BOX = re.compile(r'viewBox="([^"]*)"')
_NAMED = re.compile(r'\bid="([^"]+)"')
_SMALLEST = {
    "$schema": "https://vega.github.io/schema/vega-lite/v6.json",
    "data": {"values": [{}]},
    "mark": "point",
}


def prepare() -> Thread:
    """Load the drawing engine beside other work: it takes a third of a second, once.

    Nothing need wait for the thread; a picture asked for meanwhile waits by itself.
    """
    thread = Thread(target=_draw, args=(_SMALLEST,), name="drawing engine")
    thread.start()
    return thread


def svg_picture(specification: dict[str, Any], ident: str, title: str, description: str) -> str:
    """Give an SVG element, drawn on this machine and asking no network.

    ``ident`` keeps the names inside it apart from those of other pictures on the page;
    ``title`` and ``description`` are for people who have the page read to them.
    """
    drawn = _draw(specification)
    opening = _OPENING.search(drawn)
    body = drawn[opening.end() :] if opening else drawn
    box = _VIEW_BOX.search(opening.group()) if opening else None
    view_box = box.group(1) if box else "0 0 100 100"
    # The drawer numbers its names through its whole life; here they start anew.
    for number, name in enumerate(dict.fromkeys(_NAMED.findall(body))):
        body = body.replace(f'id="{name}"', f'id="{ident}-{number}"')
        body = body.replace(f"url(#{name})", f"url(#{ident}-{number})")
    width, height = view_box.split()[2:]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="{view_box}" '
        f'width="{width}" height="{height}" '
        f'aria-labelledby="{ident}-title {ident}-desc">'
        f'<title id="{ident}-title">{escape(title)}</title>'
        f'<desc id="{ident}-desc">{escape(description)}</desc>'
        f"{body}"
    )


def _draw(specification: dict[str, Any]) -> str:
    import vl_convert  # noqa: PLC0415

    drawn: str = vl_convert.vegalite_to_svg(specification, allowed_base_urls=[])
    return drawn
