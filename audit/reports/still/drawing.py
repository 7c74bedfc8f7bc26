"""A compiled chart drawn as it stands still."""

from __future__ import annotations

from dataclasses import dataclass

from audit.reports.still.axes import draw_axis
from audit.reports.still.beyond import BeyondStillError, only
from audit.reports.still.marks import draw_mark
from audit.reports.still.paper import Paper, px
from audit.reports.still.scene import Scene, Size, Spec

_CHART_SAYS = {
    "$schema", "data", "signals", "scales", "marks", "axes", "config", "width", "height", "style",
    "padding", "background", "layout",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Still:
    """A drawn chart: what stands inside of its SVG element, and its size in pixels."""

    body: str
    width_px: float
    height_px: float


def still(vega: Spec, ident: str) -> Still:
    """Draw a compiled chart; ``ident`` keeps the names in it apart from other pictures.

    Raises
    ------
    BeyondStillError
        Where it has something that none of our charts has: the library draws that.
    """
    try:
        return _drawn(vega, ident)
    except (LookupError, ArithmeticError, AttributeError, TypeError, ValueError) as lacking:
        raise BeyondStillError from lacking  # it is put together in another way than ours


def _drawn(vega: Spec, ident: str) -> Still:
    only(vega, _CHART_SAYS, "chart")
    only((vega["background"],), {"transparent"}, "background")
    scene, paper = Scene(vega), Paper(ident)
    size = vega["width"], vega.get("height", 0.0)
    if "layout" in vega:
        _stacked(scene, paper)
    else:
        _view(vega, scene, size, paper)
    body, (width_px, height_px) = paper.svg(size, vega["padding"])
    return Still(body=body, width_px=width_px, height_px=height_px)


def _stacked(scene: Scene, paper: Paper) -> None:
    """Draw views one below the other."""
    layout = scene.vega["layout"]
    only((layout["bounds"], str(layout["columns"])), {"flush", "1"}, "layout")
    down = 0.0
    for view in scene.vega["marks"]:
        only(view, {"type", "name", "style", "encode", "marks", "axes"}, "view")
        size = view["encode"]["update"]
        width, height = (scene.number(size[side]) for side in ("width", "height"))
        paper.origin = (0.0, down)
        paper.put(f'<g transform="translate(0,{px(down)})">')
        _view(view, scene, (width, height), paper)
        paper.put("</g>")
        down += height + layout["padding"]
    paper.origin = (0.0, 0.0)


def _view(view: Spec, scene: Scene, size: Size, paper: Paper) -> None:
    paper.reach((0.0, 0.0, *size))
    for axis in view.get("axes", ()):
        if not axis["zindex"]:
            draw_axis(axis, scene, size, paper)
    for mark in view["marks"]:
        draw_mark(mark, scene, size, paper)
    for axis in view.get("axes", ()):
        if axis["zindex"]:
            draw_axis(axis, scene, size, paper)
