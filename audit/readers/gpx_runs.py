"""The bytes of a recording on their way to the parser, and what need not go through it.

The parser hears the first point of every run. If it hears it as a point, what follows in
exactly the same form, without a byte between, can be nothing but points, and is read at
once. Whatever is out of the ordinary goes through the parser as ever.
"""

from __future__ import annotations

import sys
from xml.parsers import expat

from audit.readers.alike_points import form_of
from audit.readers.gpx_points import GatheredPoints

_BEGIN, _END, _SEGMENT_END = b"<trkpt", b"</trkpt>", b"</trkseg"
_LONGEST_POINT = 1 << 16
_WINDOW, _LARGEST_WINDOW = 1 << 11, 1 << 20
_SHORT_RUN = 8
"""Points; runs no longer than this are not worth the search for them."""


class GpxRuns:
    """Feeds a parser, and reads runs of points that are written alike past it.

    Attributes
    ----------
    fed : int
        Bytes that the parser was given.
    parser : XMLParserType
    at_once : int
        Points that were read past it. Places that the parser tells count none of these.
    """

    def __init__(
        self, parser: expat.XMLParserType, points: GatheredPoints, *, singly: bool
    ) -> None:
        self.fed = 0
        self.at_once = 0
        self.parser = parser
        self._points = points
        self._rest = b""
        self._window = _WINDOW
        self._passed_over = sys.maxsize if singly else 0

    def feed(self, piece: bytes) -> None:
        """Take the next piece; an empty one is the end.

        Raises
        ------
        ExpatError, LookupError, ValueError
            From the parser.
        """
        data = self._rest + piece
        self._rest = b""
        at = 0
        while piece:
            begin = data.find(_BEGIN, min(at + self._passed_over, len(data)))
            end = data.find(_END, begin) + len(_END)
            if begin < 0 or end < len(_END):
                break
            self._parse(data[at:begin])
            before = self.at_once
            at = self._run(data, begin, end) if self._hears_point(data[begin:end]) else end
            if self.at_once - before > _SHORT_RUN:
                self._passed_over = 0
            elif data.find(_BEGIN, at) >= 0:  # Points unlike each other: look ever less for runs.
                self._passed_over = min(max(2 * self._passed_over, _WINDOW), _LARGEST_WINDOW)
        else:
            self._parse(data, last=True)
            return
        # A point that is not all here waits for the next piece.
        if begin >= 0 and len(data) - begin < _LONGEST_POINT:
            self._rest = data[begin:]
            data = data[:begin]
        self._parse(data[at:])

    def _parse(self, some: bytes, *, last: bool = False) -> None:
        if some or last:
            self.fed += len(some)
            self.parser.Parse(some, last)

    def _hears_point(self, some: bytes) -> bool:
        """Whether the parser hears exactly one point in these bytes, and ends with its end."""
        points = self._points
        before, was_in_point = points.complete, points.in_point
        self._parse(some)
        return (
            points.complete == before + 1
            and not (was_in_point or points.in_point)
            and self.fed - self.parser.CurrentByteIndex <= len(_END)
            and some.count(_BEGIN) == 1
        )

    def _run(self, data: bytes, begin: int, end: int) -> int:
        """Read on from the end of a point that was heard; give where the run ends."""
        following = data.find(_BEGIN, end)
        if following < 0:
            return end
        point, gap = data[begin:end], data[end:following]
        form = form_of(point, gap)
        own = form.read(gap + point) if form else None
        other = data.find(_SEGMENT_END, end) % (len(data) + 1)  # -1 becomes the length
        while form is not None and own is not None and self._points.ends_with(own):
            stop = data.rfind(_END, end, min(end + self._window, other)) + len(_END)
            if stop <= end:
                break
            read = form.read(data[end:stop])
            if read is not None and self._points.add_run(read):
                self.at_once += len(read["lat"])
                end, own = stop, {name: column[-1:] for name, column in read.items()}
                self._window = min(2 * self._window, _LARGEST_WINDOW)
            elif self._window > _WINDOW:
                self._window //= 2
            else:
                break
        return end
