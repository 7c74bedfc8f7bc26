"""The scripts of the page, and the policy that lets these run and nothing else."""

from __future__ import annotations

import base64
import gzip
import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any

from audit.debriefing.finished_debrief import Debrief
from audit.measurement.speed_and_direction import SpeedAndDirection
from audit.reports.map_frame import MARGIN_STRIP_PX
from audit.reports.page_words import script_words
from audit.reports.picture import Picture
from audit.reports.walk_moments import moments

_FOLDER = "script"


@dataclass(frozen=True, slots=True, kw_only=True)
class PageScript:
    """What the page carries to move.

    Attributes
    ----------
    own : str
        The page's own script, as it stands in the page.
    library : str
        The drawing library, packed with gzip and written in base 64: the own script unpacks it.
    notice : str
        The licences of the library.
    policy : str
        The content policy: no network for anything, and no script but these two.
    """

    own: str
    library: str
    notice: str
    policy: str


@lru_cache(maxsize=1)
def page_script() -> PageScript:
    """Give the scripts of every page."""
    folder = files("audit.reports").joinpath(_FOLDER)
    own = "\n" + folder.joinpath("debrief_page.js").read_text(encoding="utf-8")
    packed = folder.joinpath("vega_bundle.js.gz").read_bytes()
    hashes = " ".join(
        f"'sha256-{base64.b64encode(hashlib.sha256(script).digest()).decode()}'"
        for script in (own.encode(), gzip.decompress(packed))
    )
    policy = (
        f"default-src 'none'; script-src {hashes}; style-src 'unsafe-inline'; img-src data:; "
        "connect-src 'none'; base-uri 'none'; form-action 'none'"
    )
    return PageScript(
        own=own,
        library=base64.b64encode(packed).decode(),
        notice=folder.joinpath("notice.txt").read_text(encoding="utf-8"),
        policy=policy,
    )


def data_blocks(
    debrief: Debrief, moved: SpeedAndDirection, pictures: Sequence[Picture]
) -> list[tuple[str, str]]:
    """Give (id, JSON) of what the script reads: moments, words, and the pictures to draw."""
    walk: dict[str, Any] = {
        **moments(debrief, moved),
        "timed": debrief.clean.timed,
        "start_s": _start_of_clock(debrief),
        "legs": [leg.name for leg in debrief.legs],
        "map_strip_px": MARGIN_STRIP_PX,
    }
    shapes: dict[int, dict[str, Any]] = {}
    charts = {}
    for picture in pictures:
        chart = picture.chart
        shapes.setdefault(id(chart.shape), chart.shape)
        number = list(shapes).index(id(chart.shape))
        charts[picture.ident] = {
            "shape": number,
            "rows": chart.rows,
            "numbers": chart.numbers,
            "size": chart.size,
        }
    contents: list[tuple[str, Any]] = [
        ("walk-moments", walk),
        ("page-words", script_words()),
        ("chart-shapes", list(shapes.values())),
        ("charts", charts),
    ]
    return [(ident, _json(content)) for ident, content in contents]


def _start_of_clock(debrief: Debrief) -> float | None:
    """Give the first moment, or None where times count from the start of the recording."""
    begin_s = float(debrief.clean.time_s[0])
    return begin_s if debrief.clean.timed and begin_s > 0.0 else None


def _json(content: object) -> str:
    """Write JSON that no text of a file can break out of."""
    text = json.dumps(content, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
