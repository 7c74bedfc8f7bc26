"""A chart specification turned into SVG to stand inside a page."""

from __future__ import annotations

import re
from dataclasses import dataclass
from html import escape
from typing import Any

from audit.reports.chart_compiler import Chart, chart_of
from audit.reports.still import BeyondStillError, still
from audit.reports.still.paper import px

_OPENING = re.compile(r"<svg\b[^>]*>")
_VIEW_BOX = re.compile(r'viewBox="([^"]*)"')
_NAMED = re.compile(r'\bid="([^"]+)"')
_RIM = ' stroke="white" stroke-width="3.5"'
_SPARE = (
    (re.compile(r"(?<=\d\.\d\d)\d+"), ""),
    (re.compile(r'<path class="(?:foreground|background)"[^>]*d="(?:M0,0h0v0h0Z)?"[^>]*/>'), ""),
    (re.compile(r' (?:aria-hidden="true"|pointer-events="none"|opacity="1")'), ""),
    (re.compile(r' (?:role|aria-roledescription|class)="[^"]*"'), ""),
)
"""What a still picture does without: a fifth of its size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One picture of the page.

    Attributes
    ----------
    ident : str
        Of its own on the page.
    title, said : str
        For people who have the page read to them.
    svg : str
        The picture as it stands: for paper, and for readers that run no script.
    chart : Chart
        The same as the script of the page draws it.
    """

    ident: str
    title: str
    said: str
    svg: str
    chart: Chart


def draw(specification: dict[str, Any], ident: str, title: str, said: str) -> Picture:
    """Draw a Vega-Lite specification, on this machine and asking no network."""
    chart = chart_of(specification)
    try:
        made = still(chart.vega(), ident)
    except BeyondStillError:
        svg = as_element(_drawn_by_library(chart), ident, title, said)
    else:
        svg = _element(made.body, (made.width_px, made.height_px), ident, title, said)
    return Picture(ident=ident, title=title, said=said, svg=svg, chart=chart)


def _drawn_by_library(chart: Chart) -> str:
    import vl_convert  # noqa: PLC0415 (slow to start)

    drawn: str = vl_convert.vega_to_svg(chart.vega(), allowed_base_urls=[])
    return drawn


def as_element(drawn: str, ident: str, title: str, description: str) -> str:
    """Give a drawn picture as an SVG element of a page.

    ``ident`` keeps the names inside it apart from those of other pictures on the page;
    ``title`` and ``description`` are for people who have the page read to them.
    """
    opening = _OPENING.search(drawn)
    body = drawn[opening.end() :] if opening else drawn
    body = body.removesuffix("</svg>")
    box = _VIEW_BOX.search(opening.group()) if opening else None
    width, height = (float(one) for one in box.group(1).split()[2:]) if box else (100.0, 100.0)
    for pattern, less in _SPARE:
        body = pattern.sub(less, body)
    body = body.replace("xlink:href=", "href=")
    # Rims go below their words; the drawer cannot say so.
    body = body.replace(_RIM, f'{_RIM} paint-order="stroke"')
    # The drawer numbers its names through its whole life; here they start anew.
    for number, name in enumerate(dict.fromkeys(_NAMED.findall(body))):
        body = body.replace(f'id="{name}"', f'id="{ident}-{number}"')
        body = body.replace(f"url(#{name})", f"url(#{ident}-{number})")
    return _element(body, (width, height), ident, title, description)


def _element(body: str, size: tuple[float, float], ident: str, title: str, description: str) -> str:
    width, height = (px(one) for one in size)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {width} {height}" '
        f'width="{width}" height="{height}" '
        f'aria-labelledby="{ident}-title {ident}-desc">'
        f'<title id="{ident}-title">{escape(title)}</title>'
        f'<desc id="{ident}-desc">{escape(description)}</desc>'
        f"{body}</svg>"
    )
