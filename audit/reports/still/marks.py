"""The marks of a chart as SVG: lines, areas, rules, signs, boxes and words."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from audit.reports.still.beyond import BeyondStillError, only
from audit.reports.still.expressions import Row
from audit.reports.still.letters import box_px, down_px, width_px
from audit.reports.still.paper import Paper, px, words
from audit.reports.still.scene import Channel, Scene, Size, Spec, fields_asked, holds
from audit.reports.still.shapes import outline

Channels = dict[str, Channel]
Point = tuple[float, float]

_PAINT = {
    "fill": "fill",
    "stroke": "stroke",
    "strokeWidth": "stroke-width",
    "strokeDash": "stroke-dasharray",
    "strokeCap": "stroke-linecap",
    "strokeJoin": "stroke-linejoin",
    "strokeOpacity": "stroke-opacity",
    "fillOpacity": "fill-opacity",
    "opacity": "opacity",
}
_UNSEEN = {("fill", "transparent"), ("opacity", 1), ("strokeWidth", None)}
_MARK_SAYS = {"name", "type", "style", "from", "encode", "clip", "interactive", "aria", "marks"}
_LETTERS = {"text", "align", "baseline", "dx", "dy", "font", "fontSize", "fontWeight", "fontStyle"}
_CHANNELS = {
    "line": {"interpolate", "defined"},
    "area": {"orient", "defined", "y2"},
    "rule": {"x2", "y2"},
    "symbol": {"size", "shape", "angle", "ariaRoleDescription"},
    "rect": {"x2", "y2"},
    "text": _LETTERS,
}
_SYMBOL_STROKE_PX = 2.0
"""Where a symbol does not say how wide its edge is."""
_ANCHORS = {"left": "start", "center": "middle", "right": "end"}


def draw_mark(mark: Spec, scene: Scene, group: Size, paper: Paper) -> None:
    """Draw one mark, or the marks of each of its parts.

    Raises
    ------
    BeyondStillError
        Where it is of another kind, or says more than our marks do.
    """
    only(mark, _MARK_SAYS, "mark")
    if mark["type"] == "group":
        _draw_parts(mark, scene, group, paper)
    else:
        _draw_rows(mark, scene.rows(mark["from"]["data"]), scene, group, paper)


def _draw_parts(mark: Spec, scene: Scene, group: Size, paper: Paper) -> None:
    """Draw what is split by a field of its rows, such as one line each."""
    facet = mark["from"]["facet"]
    parts: dict[tuple[Any, ...], list[Row]] = {}
    for row in scene.rows(facet["data"]):
        parts.setdefault(tuple(row.get(field) for field in facet["groupby"]), []).append(row)
    for rows in parts.values():
        for inner in mark["marks"]:
            only(inner, _MARK_SAYS, "mark")
            if inner["from"] != {"data": facet["name"]}:
                raise BeyondStillError(mark["name"])
            _draw_rows(inner, rows, scene, group, paper)


def _draw_rows(mark: Spec, rows: Sequence[Row], scene: Scene, group: Size, paper: Paper) -> None:
    kind, update = mark["type"], mark["encode"]["update"]
    only((kind,), _DRAWN, "mark")
    only(update, {"x", "y", *_PAINT, *_CHANNELS[kind]}, kind)
    if not rows:
        return
    asked = fields_asked(update["defined"]["signal"]) if "defined" in update else []
    channels = {
        name: scene.channel(said, group) for name, said in update.items() if name != "defined"
    }
    if "stroke" in channels and "strokeWidth" not in channels:
        if kind != "symbol":
            raise BeyondStillError(kind)
        channels["strokeWidth"] = lambda _row: _SYMBOL_STROKE_PX
    channels.setdefault("font", lambda _row: scene.vega["config"]["style"]["text"]["font"])
    clipped = bool(mark.get("clip"))
    if clipped:
        paper.put(f'<g clip-path="url(#{paper.clip(group)})">')
    shown: Sequence[Row | None] = rows
    if asked:
        shown = [row if holds(row, asked) else None for row in rows]
    _DRAWN[kind](shown, channels, paper, reaching=not clipped)
    if clipped:
        paper.put("</g>")


def _paint(channels: Mapping[str, Channel], row: Row) -> str:
    """Give the attributes of fill and stroke."""
    values = {name: channels[name](row) for name in _PAINT if name in channels}
    if values.get("strokeWidth") == 0:
        values = {name: value for name, value in values.items() if not name.startswith("stroke")}
    written = []
    for name, value in values.items():
        if isinstance(value, list | tuple):
            written.append(f' {_PAINT[name]}="{",".join(px(one) for one in value)}"')
        elif value is not None and (name, value) not in _UNSEEN:
            said = value if isinstance(value, str) else px(value)
            written.append(f' {_PAINT[name]}="{said}"')
    return "".join(written)


def _half_stroke(channels: Channels, row: Row) -> float:
    width: float = channels["strokeWidth"](row) if "strokeWidth" in channels else 0.0
    return width / 2


def _line(rows: Sequence[Row | None], channels: Channels, paper: Paper, *, reaching: bool) -> None:
    x, y = channels["x"], channels["y"]
    places = [None if row is None else (x(row), y(row)) for row in rows]
    first = next((row for row in rows if row is not None), {})
    shape = channels["interpolate"](first) if "interpolate" in channels else "linear"
    only((shape,), {"linear", "linear-closed"}, "line")
    parts = _path(places)
    if shape == "linear-closed":
        parts = "".join(f"M{part}Z" for part in parts.split("M")[1:])
    paper.put(f'<path d="{parts}"{_paint(channels, first)}/>')
    if reaching:
        _reach((one for one in places if one), _half_stroke(channels, first), paper)


def _area(rows: Sequence[Row | None], channels: Channels, paper: Paper, *, reaching: bool) -> None:
    """Draw the ground between two lines, anew after each break."""
    x, y, y2 = channels["x"], channels["y"], channels["y2"]
    parts: list[list[Row]] = [[]]
    for row in rows:
        if row is not None:
            parts[-1].append(row)
        elif parts[-1]:
            parts.append([])
    drawn = [part for part in parts if part]
    rims = [
        [*((x(row), y(row)) for row in part), *((x(row), y2(row)) for row in reversed(part))]
        for part in drawn
    ]
    if rims:
        path = "".join(f"{_path(rim)}Z" for rim in rims)
        paper.put(f'<path d="{path}"{_paint(channels, drawn[0][0])}/>')
    if reaching:
        _reach((place for rim in rims for place in rim), 0.0, paper)


def _path(places: Iterable[Point | None]) -> str:
    """Give a line through places, broken where there is none."""
    written, lifted = [], True
    for place in places:
        if place is not None:
            written.append(f"{'M' if lifted else 'L'}{px(place[0])},{px(place[1])}")
        lifted = place is None
    return "".join(written)


def _reach(places: Iterable[Point], room: float, paper: Paper) -> None:
    for right, down in places:
        paper.reach((right - room, down - room, right + room, down + room))


def _ends(channels: Channels, row: Row) -> tuple[Point, Point]:
    """Give both ends of a rule, or two corners of a box."""
    at = {name: channels[name](row) for name in ("x", "y", "x2", "y2") if name in channels}
    x, y = at["x"], at["y"]
    return (x, y), (at.get("x2", x), at.get("y2", y))


def _rules(rows: Sequence[Row], channels: Channels, paper: Paper, *, reaching: bool) -> None:
    for row in rows:
        ends = _ends(channels, row)
        paper.put(f'<path d="{_path(ends)}"{_paint(channels, row)}/>')
        if reaching:
            _reach(ends, _half_stroke(channels, row), paper)


def _boxes(rows: Sequence[Row], channels: Channels, paper: Paper, *, reaching: bool) -> None:
    for row in rows:
        (x, y), (x2, y2) = ends = _ends(channels, row)
        place = f'x="{px(min(x, x2))}" y="{px(min(y, y2))}"'
        size = f'width="{px(abs(x2 - x))}" height="{px(abs(y2 - y))}"'
        paper.put(f"<rect {place} {size}{_paint(channels, row)}/>")
        if reaching:
            _reach(ends, _half_stroke(channels, row), paper)


def _symbols(rows: Sequence[Row], channels: Channels, paper: Paper, *, reaching: bool) -> None:
    for row in rows:
        right, down, area = (channels[name](row) for name in ("x", "y", "size"))
        turned = channels["angle"](row) if "angle" in channels else 0.0
        turn = f" rotate({px(turned)})" if turned else ""
        path = outline(channels["shape"](row), area)
        at = f"translate({px(right)},{px(down)}){turn}"
        paper.put(f'<path transform="{at}" d="{path}"{_paint(channels, row)}/>')
        if reaching:
            room = math.sqrt(area) / 2 + _half_stroke(channels, row)
            _reach([(right, down)], room, paper)


def _texts(rows: Sequence[Row], channels: Channels, paper: Paper, *, reaching: bool) -> None:
    def said(name: str, row: Row, usual: Any) -> Any:  # noqa: ANN401 (of any channel)
        return channels[name](row) if name in channels else usual

    for row in rows:
        text = said("text", row, "")
        if not text:
            continue
        size = said("fontSize", row, 11)
        right = channels["x"](row) + said("dx", row, 0)
        down = channels["y"](row) + said("dy", row, 0)
        down += down_px(said("baseline", row, "alphabetic"), size)
        anchor = _ANCHORS[said("align", row, "left")]
        weight, style = said("fontWeight", row, None), said("fontStyle", row, None)
        letters = f' text-anchor="{anchor}" font-family="{channels["font"](row)}"'
        letters += f' font-size="{px(size)}px"'
        letters += f' font-weight="{weight}"' if weight else ""
        letters += f' font-style="{style}"' if style else ""
        rim = ' paint-order="stroke"' if said("stroke", row, None) else ""
        at = f"translate({px(right)},{px(down)})"
        paper.put(words(str(text), at, f"{letters}{_paint(channels, row)}{rim}"))
        if reaching:
            width = width_px(str(text), size, bold=weight == "bold")
            paper.reach(box_px(width, anchor, (right, down), size))


_DRAWN: dict[str, Callable[..., None]] = {
    "line": _line,
    "area": _area,
    "rule": _rules,
    "symbol": _symbols,
    "rect": _boxes,
    "text": _texts,
}
