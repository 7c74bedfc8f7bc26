"""What has been drawn so far, and how far it reaches."""

from __future__ import annotations

import math
from html import escape

from audit.reports.printable import printable
from audit.reports.still.letters import Box
from audit.reports.still.scene import Size


def px(value: float) -> str:
    """Write pixels to a hundredth, without noughts that say nothing."""
    text = f"{value:.2f}"
    if text.endswith("0"):
        text = text[:-3] if text.endswith(".00") else text[:-1]
    return "0" if text == "-0" else text


class Paper:
    """Elements of a picture in the order of drawing; places are within the current part."""

    def __init__(self, ident: str) -> None:
        self.ident = ident
        self.parts: list[str] = []
        self.origin: tuple[float, float] = (0.0, 0.0)
        self._clips: dict[Size, str] = {}
        self._edges = [math.inf, math.inf, -math.inf, -math.inf]

    def put(self, element: str) -> None:
        """Draw one more element."""
        self.parts.append(element)

    def reach(self, box: Box) -> None:
        """Make room for something that lies in a box."""
        right, down = self.origin
        edges = self._edges
        edges[0], edges[1] = min(edges[0], box[0] + right), min(edges[1], box[1] + down)
        edges[2], edges[3] = max(edges[2], box[2] + right), max(edges[3], box[3] + down)

    def clip(self, size: Size) -> str:
        """Give the name of a window of so much width and height."""
        return self._clips.setdefault(size, f"{self.ident}-{len(self._clips)}")

    def svg(self, size: Size, padding_px: float) -> tuple[str, Size]:
        """Give the body of a picture of this size, and its size with room round everything."""
        left, top = (math.ceil(-edge) for edge in self._edges[:2])
        right, bottom = (
            side + math.ceil(edge - side) for edge, side in zip(self._edges[2:], size, strict=True)
        )
        windows = "".join(
            f'<clipPath id="{name}"><rect width="{px(width)}" height="{px(height)}"/></clipPath>'
            for (width, height), name in self._clips.items()
        )
        defined = f"<defs>{windows}</defs>" if windows else ""
        place = f"translate({px(padding_px + left)},{px(padding_px + top)})"
        body = (
            f'<g fill="none" stroke-miterlimit="10" transform="{place}">{"".join(self.parts)}</g>'
        )
        whole = left + right + 2 * padding_px, top + bottom + 2 * padding_px
        return f"{body}{defined}", whole


def words(text: str, at: str, paint: str) -> str:
    """Give a text element."""
    return f'<text transform="{at}"{paint}>{escape(printable(text), quote=False)}</text>'
