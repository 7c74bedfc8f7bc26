"""Points of recorded tracks, gathered while the parser passes over the file."""

from __future__ import annotations

import math
from array import array
from collections import Counter
from xml.parsers import expat

import numpy as np

from audit.errors import refuse, refuse_file
from audit.readers.alike_points import AT_ANY_DEPTH, CHILDREN
from audit.readers.gpx_times import seconds_since_1970
from audit.readers.xml_guard import too_deep, web_page
from audit.settings import ReadingSettings
from audit.units import FloatArray

# Where a file says what it is: which elements, of which parents.
_ABOUT = ("name", "desc", "keywords")
_ABOUT_WHAT = ("gpx", "metadata", "trk")


class GatheredPoints:
    """Columns of numbers, one row a <trkpt>; no object is made for a point.

    Attributes
    ----------
    columns : dict of array of float
        lon, lat, time, ele, hdop, cadence; NaN where a point has none that can be read.
    segment : array of int
        Number of the <trkseg>, from 0.
    complete : int
        Points whose end was met. Where the file breaks off inside a point the columns
        are one row longer.
    in_point : bool
        Whether a point is open.
    elements : Counter
        How often each element outside of points was met, by local name.
    unreadable : dict
        By column: how many texts were there and no number or time, and the first of them.
    without_zone : int
        Times that name no zone.
    track_names : list of (first point, name)
        Filled only when asked for.
    simulated : bool
        Whether the file calls itself simulated in its name, description or keywords.
    """

    def __init__(
        self,
        parser: expat.XMLParserType,
        file: str,
        settings: ReadingSettings,
        *,
        keep_names: bool,
    ) -> None:
        names = ("lon", "lat", "time", "ele", "hdop", "cadence")
        self.columns = {name: array("d") for name in names}
        self.segment = array("q")
        self.complete = 0
        self.in_point = False
        self.elements: Counter[str] = Counter()
        self.unreadable: dict[str, tuple[int, str]] = {}
        self.without_zone = 0
        self.track_names: list[tuple[int, str]] = []
        self.simulated = False
        self._file = file
        self._settings = settings
        self._most = dict.fromkeys(self.columns, math.inf) | {
            "ele": settings.furthest_elevation_m,
            "hdop": settings.largest_reading,
            "cadence": settings.largest_reading,
        }
        self._keep_names = keep_names
        self._local_name = _LocalNames()
        self._path: list[str] = []
        self._point_depth = 0
        self._listening_to = ""
        self._text: list[str] = []
        self._text_length = 0
        self._parser = parser
        parser.buffer_text = True
        parser.StartElementHandler = self._start_root
        parser.EndElementHandler = self._end

    def ends_with(self, row: dict[str, FloatArray]) -> bool:
        """Whether the last point is this row of columns, and nothing beside."""
        return all(
            values[-1] == row[name][-1] if name in row else math.isnan(values[-1])
            for name, values in self.columns.items()
        )

    def add_run(self, columns: dict[str, FloatArray]) -> bool:
        """Add points read elsewhere; False, and none added, if one must be looked at singly."""
        count = len(columns["lat"])
        if self.complete + count > self._settings.most_fixes:
            return False
        for name, values in columns.items():
            if not (np.isfinite(values).all() and np.abs(values).max() <= self._most[name]):
                return False
        for name, column in self.columns.items():
            column.frombytes(columns.get(name, np.full(count, math.nan)).tobytes())
        self.segment.extend(self.segment[-1:] * count)
        self.complete += count
        return True

    def _start_root(self, name: str, _attributes: dict[str, str]) -> None:
        tag = self._local_name[name]
        if tag.lower() == "html":
            raise web_page(self._file)
        if tag != "gpx":
            rule = "is another kind of XML and no GPX"
            raise refuse(self._file, "", f"<{tag}>", rule, "Export the recording as GPX.")
        self._path.append(tag)
        self._parser.StartElementHandler = self._start

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        tag = self._local_name[name]
        parent = self._path[-1]
        self._path.append(tag)
        if self.in_point:
            is_child = len(self._path) == self._point_depth + 1
            if tag in (CHILDREN if is_child else AT_ANY_DEPTH):
                self._listen(tag)
        elif tag == "trkpt":
            self._open_point(attributes)
        else:
            self.elements[tag] += 1
            if tag in _ABOUT and parent in _ABOUT_WHAT:
                self._listen(tag)
        if len(self._path) > self._settings.deepest_element:
            raise too_deep(self._file, self._parser, self._settings)
        if len(self._local_name) > self._settings.most_element_names:
            rule = f"holds elements of more than {self._settings.most_element_names:,} names"
            raise refuse_file(self._file, rule, "Export the recording again as GPX.")

    def _end(self, _name: str) -> None:
        tag = self._path.pop()
        if tag == self._listening_to:
            self._parser.CharacterDataHandler = None
            self._listening_to = ""
            self._take("".join(self._text).strip(), tag)
        elif self.in_point and len(self._path) < self._point_depth:
            self.in_point = False
            self.complete += 1

    def _listen(self, tag: str) -> None:
        self._listening_to = tag
        self._text = []
        self._text_length = 0
        self._parser.CharacterDataHandler = self._hear

    def _hear(self, text: str) -> None:
        """Keep a text as far as it can matter: a name may go on for a gigabyte."""
        if self._text_length < self._settings.longest_element_text:
            self._text.append(text)
            self._text_length += len(text)

    def _open_point(self, attributes: dict[str, str]) -> None:
        if self.complete >= self._settings.most_fixes:
            rule = f"holds more than {self._settings.most_fixes:,} points"
            raise refuse_file(self._file, rule, "Cut it to the day of the walk.")
        self.in_point = True
        self._point_depth = len(self._path)
        for column in self.columns.values():
            column.append(math.nan)
        self.segment.append(max(self.elements["trkseg"] - 1, 0))
        self._read("lat", attributes.get("lat", ""))
        self._read("lon", attributes.get("lon", ""))

    def _take(self, text: str, tag: str) -> None:
        if tag in _ABOUT:
            self.simulated = self.simulated or "simulated" in text.lower()
            if self._keep_names and tag == "name" and self._path[-1] == "trk":
                self.track_names.append((self.complete, text))
        elif text:
            self._read(CHILDREN[tag], text)

    def _read(self, column: str, text: str) -> None:
        """Put the number or time into the last row, unless an earlier element filled it."""
        values = self.columns[column]
        if not math.isnan(values[-1]):
            return
        try:
            value = self._seconds(text) if column == "time" else float(text)
        except ValueError:
            value = math.nan
        if math.isfinite(value) and abs(value) <= self._most[column]:
            values[-1] = value
        else:
            count, first = self.unreadable.get(column, (0, text))
            self.unreadable[column] = (count + 1, first)

    def _seconds(self, text: str) -> float:
        seconds, zone_named = seconds_since_1970(text)
        self.without_zone += not zone_named
        return seconds


class _LocalNames(dict[str, str]):
    """Names without their prefix; each is worked out once."""

    def __missing__(self, name: str) -> str:
        local = self[name] = name.rpartition(":")[2]
        return local
