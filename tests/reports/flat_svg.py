"""A drawing as the list of what is seen: outlines and words at their places, with their paint.

How elements are grouped, moved and written differs from drawer to drawer; this does not.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field
from html import unescape

from defusedxml.ElementTree import fromstring

_NUMBER = re.compile(r"-?\d*\.?\d+(?:e-?\d+)?")
_MOVES = re.compile(r"(translate|rotate)\(([^)]*)\)")
_STEPS = re.compile(r"([MLHVhvZA])([^MLHVhvZA]*)")
_PAINT = (
    "fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-opacity", "stroke-linejoin",
    "stroke-linecap", "opacity", "font-size", "font-weight", "font-style", "font-family",
    "text-anchor",
)  # fmt: skip
_WHOLE = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass
class Seen:
    """One line, outline or word; places are in pixels of the picture."""

    places: list[tuple[float, float]]
    paint: dict[str, str]
    text: str = ""
    closed: bool = False
    clipped: bool = False


@dataclass
class Drawing:
    size: tuple[float, float]
    seen: list[Seen] = field(default_factory=list)


def flat(svg: str) -> Drawing:
    """Everything that is seen of a drawing, in the order of drawing."""
    root = fromstring(svg)
    width, height = (float(one) for one in root.get("viewBox").split()[2:])
    drawing = Drawing((width, height))
    _walk(root, _WHOLE, False, drawing.seen)
    return drawing


def _walk(node, frame, clipped, seen) -> None:
    kind = node.tag.rpartition("}")[2]
    if kind in {"defs", "title", "desc"}:
        return
    frame = _moved(frame, node.get("transform") or "")
    clipped = clipped or "clip-path" in node.attrib
    paint = _paint(node)
    painted = paint.get("fill", "none") != "none" or "stroke" in paint
    if kind == "text" and node.text:
        seen.append(Seen([_at(frame, 0, 0)], paint, unescape(node.text), clipped=clipped))
    elif kind == "line":
        ends = [_at(frame, 0, 0), _at(frame, float(node.get("x2")), float(node.get("y2")))]
        seen.append(Seen(ends, paint, clipped=clipped))
    elif kind == "rect":
        x, y, w, h = (float(node.get(key) or 0) for key in ("x", "y", "width", "height"))
        corners = [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]
        places = [_at(frame, *corner) for corner in corners]
        seen.append(Seen(places, paint, closed=True, clipped=clipped))
    elif kind == "path" and painted:
        seen.extend(_lines(node.get("d") or "", frame, paint, clipped))
    for inner in node:
        _walk(inner, frame, clipped, seen)


def _lines(path, frame, paint, clipped) -> list[Seen]:
    found: list[Seen] = []
    x = y = 0.0
    for step, given in _STEPS.findall(path):
        numbers = [float(one) for one in _NUMBER.findall(given)]
        if step == "Z":
            found[-1].closed = True
            continue
        x, y = _stepped(step, x, y, numbers)
        if step == "M":
            found.append(Seen([], paint, clipped=clipped))
        found[-1].places.append(_at(frame, x, y))
    return found


def _stepped(step, x, y, to) -> tuple[float, float]:
    """Where a step of a path ends."""
    level = {"H": (to[0], y), "V": (x, to[0]), "h": (x + to[0], y), "v": (x, y + to[0])}
    return level.get(step, (to[-2], to[-1]) if len(to) > 1 else (x, y))


def _paint(node) -> dict[str, str]:
    paint = {key: node.get(key) for key in _PAINT if node.get(key) not in {None, "", "transparent"}}
    if paint.get("stroke-width") == "0":
        paint = {key: value for key, value in paint.items() if not key.startswith("stroke")}
    if paint.get("opacity") == "1":
        del paint["opacity"]
    return paint


def _moved(frame, moves):
    a, b, c, d, e, f = frame
    for kind, given in _MOVES.findall(moves):
        numbers = [float(one) for one in given.split(",")]
        if kind == "translate":
            x, y = numbers
            e, f = a * x + c * y + e, b * x + d * y + f
        else:
            turn = math.radians(numbers[0])
            cos, sin = math.cos(turn), math.sin(turn)
            a, b, c, d = a * cos + c * sin, b * cos + d * sin, c * cos - a * sin, d * cos - b * sin
    return a, b, c, d, e, f


def _at(frame, x, y) -> tuple[float, float]:
    a, b, c, d, e, f = frame
    return a * x + c * y + e, b * x + d * y + f
