"""Points of a recording written alike: what one looks like, and many read at once.

A recorder writes all its points in one form; only the figures in them change. That form
is learnt from one point. A stretch of bytes is read by it only if it is that form over and
over, to the last byte, with figures in the places of figures, so nothing in it can be
anything else than such points.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.readers.gpx_times import seconds_of_alike
from audit.units import FloatArray

# Of elements in a point, which column takes their text: at any depth whatever a maker
# calls steps or turns a minute, the others only as its children.
AT_ANY_DEPTH = dict.fromkeys(
    ("cad", "cadence", "Cadence", "RunCadence", "runcadence", "run_cadence"), "cadence"
)
CHILDREN = {"time": "time", "ele": "ele", "hdop": "hdop"} | AT_ANY_DEPTH

_FIGURES = b"0123456789.-:TZ"
_PLACE = rb'[ \t\r\n]+(l(?:at|on))="([0-9.-]+)"'
_OPENING = re.compile(rb"<trkpt%b%b[ \t\r\n]*>" % (_PLACE, _PLACE))
_INSIDE = re.compile(
    rb'<(?P<end>/?)(?P<name>[A-Za-z_][A-Za-z0-9_.:-]*)(?:[ \t\r\n]+[A-Za-z_:]+="[^"<&\x00-\x1f'
    rb"\x7f-\xff]*\")?[ \t\r\n]*(?P<empty>/?)>|(?P<text>[ -%'-;=?-Z^-~\t\r\n]+)"
)
_NUMBER_IN_TEXT = re.compile(rb"[0-9.-]+")
# Signs that no XML may hold stand for what lies between the figures.
_MARKS = bytes((*range(1, 9), *range(14, 28)))
_TO_BLANKS = bytes(32 if sign in _MARKS else sign for sign in range(256))


@dataclass(frozen=True, slots=True, kw_only=True)
class PointForm:
    """How each of a run of points is written: fixed bytes, and figures between them.

    Attributes
    ----------
    head, tail : bytes
        Before the first figure, with what parts two points, and behind the last.
    marks : tuple of (bytes, bytes)
        What stands between two figures, the longest first, and the mark for it; behind
        the last figure of a point follows what leads to the first of the next.
    order : bytes
        The marks as they follow each other from the first figure of a point.
    columns : dict of int
        Which of the figures are read.
    spare : int
        By how many bytes the marks of one point are shorter than what they stand for.
    joint : int
        The same of the mark between two points.
    """

    head: bytes
    tail: bytes
    marks: tuple[tuple[bytes, bytes], ...]
    order: bytes
    columns: dict[str, int]
    spare: int
    joint: int

    def figures(self, run: bytes) -> list[str] | None:
        """Give all figures of a run, those of each point in turn; None if it is none."""
        if not (run.startswith(self.head) and run.endswith(self.tail)):
            return None
        body = run[len(self.head) : len(run) - len(self.tail)]
        whole = len(body)
        for fixed, mark in self.marks:
            body = body.replace(fixed, mark)
        found = body.translate(None, _FIGURES)
        points = (len(found) + 1) // len(self.order)
        # The length tells marks that stood in the file from those that were put there.
        shorter = points * self.spare - self.joint
        if found != (self.order * points)[:-1] or whole - len(body) != shorter:
            return None
        return body.translate(_TO_BLANKS).decode("ascii").split(" ")

    def read(self, run: bytes) -> dict[str, FloatArray] | None:
        """Give the columns of a run; None where one of them must be looked at singly."""
        figures = self.figures(run)
        if figures is None:
            return None
        count, step = len(figures) // len(self.order), len(self.order)
        read: dict[str, FloatArray] = {}
        try:
            for name, place in self.columns.items():
                texts = figures[place::step]
                if name == "time":
                    read[name] = seconds_of_alike(texts)
                else:
                    read[name] = np.fromiter(map(float, texts), np.float64, count)
        except ValueError:
            return None
        return read


def form_of(point: bytes, gap: bytes) -> PointForm | None:
    """Learn the form of a point and of the gap behind it; None if it is out of the ordinary."""
    opening = _OPENING.match(point)
    if opening is None or opening[1] == opening[3] or gap.strip(b" \t\r\n"):
        return None
    spans = [opening.span(2), opening.span(4)]
    columns = {opening[1].decode(): 0, opening[3].decode(): 1}
    inside = _figures_inside(point, opening.end(), len(point) - len(b"</trkpt>"))
    if inside is None:
        return None
    for column, span in inside:
        if column in columns:
            return None
        if column:
            columns[column] = len(spans)
        spans.append(span)
    return _form(gap + point, [(a + len(gap), b + len(gap)) for a, b in spans], columns)


def _form(unit: bytes, spans: list[tuple[int, int]], columns: dict[str, int]) -> PointForm | None:
    """Put the form together from where the figures of a point are."""
    head, tail = unit[: spans[0][0]], unit[spans[-1][1] :]
    fixed = [unit[one[1] : other[0]] for one, other in pairwise(spans)]
    fixed.append(tail + head)
    kinds = list(dict.fromkeys(fixed))
    if len(kinds) > len(_MARKS) or min(map(len, kinds)) < 2:
        return None
    mark = {kind: _MARKS[number : number + 1] for number, kind in enumerate(kinds)}
    return PointForm(
        head=head,
        tail=tail,
        marks=tuple(sorted(mark.items(), key=lambda one: -len(one[0]))),
        order=b"".join(mark[one] for one in fixed),
        columns=columns,
        spare=sum(map(len, fixed)) - len(fixed),
        joint=len(fixed[-1]) - 1,
    )


def _figures_inside(point: bytes, begin: int, end: int) -> list[tuple[str, tuple[int, int]]] | None:
    """Give where figures stand in the elements of a point, and of which column; "" if of none."""
    found: list[tuple[str, tuple[int, int]]] = []
    open_names: list[bytes] = []
    column = ""
    while begin < end:
        part = _INSIDE.match(point, begin, end)
        if part is None:
            return None
        if part["text"] is None:
            if column and not part["end"]:
                return None  # an element in one whose text is read
            if not _follow(open_names, part):
                return None
            column = _column(open_names)
        elif column and part["text"].strip():
            text = part["text"].strip(b" \t\r\n")
            if text.translate(None, _FIGURES):
                return None
            at = point.index(text, begin)
            found.append((column, (at, at + len(text))))
        elif open_names:
            found += [("", one.span()) for one in _NUMBER_IN_TEXT.finditer(point, *part.span())]
        elif part["text"].strip():
            return None
        begin = part.end()
    return None if open_names else found


def _follow(open_names: list[bytes], part: re.Match[bytes]) -> bool:
    """Open or close an element; False where another is open."""
    if part["end"]:
        return bool(open_names) and not part["empty"] and open_names.pop() == part["name"]
    if not part["empty"]:
        open_names.append(part["name"])
    return True


def _column(open_names: list[bytes]) -> str:
    """Give the column that takes the text of the innermost element; "" if none does."""
    if not open_names:
        return ""
    names = CHILDREN if len(open_names) == 1 else AT_ANY_DEPTH
    return names.get(open_names[-1].rpartition(b":")[2].decode(), "")
