"""The axes of a chart: their lines, ticks, numbers and titles."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import groupby
from typing import Any

from audit.reports.still.beyond import only
from audit.reports.still.expression_functions import rounded, written
from audit.reports.still.letters import Box, box_px, down_px, width_px
from audit.reports.still.paper import Paper, px, words
from audit.reports.still.scene import Scene, Size, Spec

_SAYS = {
    "scale", "orient", "grid", "gridColor", "gridOpacity", "gridScale", "domain", "ticks",
    "labels", "labelColor", "labelFontSize", "labelOverlap", "labelFlush", "title", "titleColor",
    "titleFontSize", "titleFontWeight", "values", "aria", "zindex", "encode", "minExtent",
    "maxExtent",
}  # fmt: skip
_TICK_PX, _LABEL_GAP_PX, _TITLE_GAP_PX = 5, 2, 4
_TICK_COLOUR, _GRID_COLOUR = "#888", "#ddd"
_CRISP_PX = 0.5
"""Thin lines run through the middle of pixels."""
_NEAR_PX = 1.0
_TENS = ((math.sqrt(50.0), 10), (math.sqrt(10.0), 5), (math.sqrt(2.0), 2))


def draw_axis(said: Spec, scene: Scene, group: Size, paper: Paper) -> None:
    """Draw one axis of a view of this size.

    Raises
    ------
    BeyondStillError
        Where it says more than our axes do.
    """
    only(said, _SAYS, "axis")
    only((name for name in ("domain", "labelOverlap") if said[name]), (), "axis")
    _Axis(said, scene, group, paper).draw()


class _Axis:
    """Places are along the axis, and out from the view."""

    def __init__(self, said: Spec, scene: Scene, group: Size, paper: Paper) -> None:
        self.said, self.scene, self.paper = said, scene, paper
        self.lies = said["orient"] in {"top", "bottom"}
        self.outward = 1 if said["orient"] == "bottom" else -1
        self.length, self.depth = group if self.lies else group[::-1]
        self.edge = self.depth if said["orient"] == "bottom" else 0.0
        placed = scene.placing(said["scale"])
        low, high = sorted(scene.domain(said["scale"]))
        values = scene.number(said["values"])
        self.places = [(one, placed(one)) for one in values if low <= one <= high]
        self.tick_px = _TICK_PX if said["ticks"] else 0

    def draw(self) -> None:
        if self.said.get("grid"):
            self._grid()
        if self.tick_px:
            spans = [(place, 0.0, self.outward * self.tick_px) for _, place in self.places]
            self._lines(spans, _TICK_COLOUR, "")
        reach = float(self.tick_px)
        if self.said.get("labels", True) and self.places:
            reach = self._labels()
        reach = max(self.said.get("minExtent", 0), min(self.said.get("maxExtent", 200), reach))
        if title := self.scene.number(self.said.get("title")):
            reach = self._title(title, reach)
        self._room(0.0, self.edge + self.outward * reach)

    def _grid(self) -> None:
        said = self.said.get("encode", {}).get("grid", {}).get("update", {})
        usual = {"value": self.said.get("gridColor", _GRID_COLOUR)}
        colour = self.scene.channel(said.get("stroke", usual), (0.0, 0.0))
        seen = self.said.get("gridOpacity")
        paint = "" if seen is None else f' stroke-opacity="{px(seen)}"'
        inward = self.depth if self.edge == 0.0 else -self.depth
        for one, run in groupby(self.places, key=lambda marked: colour({"value": marked[0]})):
            self._lines([(place, 0.0, inward) for _, place in run], one, paint)

    def _lines(self, spans: Sequence[tuple[float, float, float]], colour: str, paint: str) -> None:
        """Draw lines across the axis, each at a place from one depth to another."""
        path = []
        for place, begin, end in spans:
            along = rounded(place) + _CRISP_PX
            near, far = (self.edge + out + _CRISP_PX for out in (begin, end))
            if self.lies:
                path.append(f"M{px(along)},{px(near)}V{px(far)}")
            else:
                path.append(f"M{px(near)},{px(along)}H{px(far)}")
        self.paper.put(f'<path d="{"".join(path)}" stroke="{colour}" stroke-width="1"{paint}/>')

    def _labels(self) -> float:
        """Write the numbers, and give how far out they reach."""
        size = self.said["labelFontSize"]
        font = self.scene.vega["config"]["style"]["guide-label"]["font"]
        update = self.said.get("encode", {}).get("labels", {}).get("update", {})
        only(update, {"text"}, "labels")
        text_of = self.scene.channel(update.get("text", {"field": "label"}), (0.0, 0.0))
        gap = self.tick_px + _LABEL_GAP_PX
        reach = 0.0
        for value, place in self.places:
            text = str(text_of({"value": value, "label": self._usual_label(value)}))
            if not text:
                continue
            right, down, anchor = self._label_place(place, gap, size)
            box = box_px(width_px(text, size), anchor, (right, down), size)
            reach = max(reach, self._out(box))
            at = f"translate({px(right + _CRISP_PX)},{px(down + _CRISP_PX)})"
            self.paper.put(words(text, at, _letters(anchor, font, size, self.said["labelColor"])))
            self.paper.reach(box)
        return reach

    def _label_place(self, place: float, gap: float, size: float) -> tuple[float, float, str]:
        if not self.lies:
            return -gap, place + down_px("middle", size), "end"
        anchor = "middle"
        if self.said.get("labelFlush") and abs(place) < _NEAR_PX:
            anchor = "start"
        elif self.said.get("labelFlush") and abs(place - self.length) < _NEAR_PX:
            anchor = "end"
        baseline = "top" if self.outward > 0 else "bottom"
        return place, self.edge + self.outward * gap + down_px(baseline, size), anchor

    def _usual_label(self, value: float) -> str:
        """Write a number as finely as its axis is marked."""
        low, high = self.scene.domain(self.said["scale"])
        step = abs(high - low) / len(self.places)
        power = 10.0 ** math.floor(math.log10(step))
        step = power * next((ten for over, ten in _TENS if step / power >= over), 1)
        digits = max(0, -math.floor(math.log10(step) + 1e-9))
        return written(value, f",.{digits}f")

    def _title(self, title: str, reach: float) -> float:
        """Write the title beyond the numbers, and give how far out it reaches."""
        size: float = self.said["titleFontSize"]
        out = reach + _TITLE_GAP_PX
        font = self.scene.vega["config"]["style"]["guide-title"]["font"]
        paint = _letters("middle", font, size, self.said["titleColor"])
        paint += f' font-weight="{self.said["titleFontWeight"]}"'
        middle = self.length / 2
        if self.lies:
            down = self.edge + self.outward * out
            down += down_px("top" if self.outward > 0 else "bottom", size)
            at = f"translate({px(middle + _CRISP_PX)},{px(down + _CRISP_PX)})"
        else:
            risen = f"rotate(-90) translate(0,{down_px('bottom', size)})"
            at = f"translate({px(_CRISP_PX - out)},{px(middle + _CRISP_PX)}) {risen}"
        self.paper.put(words(title, at, paint))
        half = width_px(title, size) / 2
        self._room(middle - half, self.edge, middle + half)
        return out + size + (-1 if self.said["orient"] == "bottom" else 1)

    def _out(self, box: Box) -> float:
        """Give how far out of the view a box reaches."""
        if not self.lies:
            return -box[0]
        return box[3] - self.edge if self.outward > 0 else -box[1]

    def _room(self, begin: float, depth: float, end: float = 0.0) -> None:
        if self.lies:
            self.paper.reach((begin, depth, end, depth))
        else:
            self.paper.reach((depth, begin, depth, end))


def _letters(anchor: str, font: str, size: Any, colour: str) -> str:  # noqa: ANN401
    return f' text-anchor="{anchor}" font-family="{font}" font-size="{px(size)}px" fill="{colour}"'
