"""The readers by the kind of file that they take, with a name that such a file has."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from audit.readers.areas_file import read_areas
from audit.readers.earlier_debriefs import read_earlier_debriefs
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.readers.punch_file import read_punches
from audit.readers.roster_file import read_roster
from audit.readers.standard_file import read_standard
from audit.readers.walkers_log_file import read_log
from audit.readers.words_file import read_words

READERS: dict[str, tuple[Callable[[Path], Any], str]] = {
    "plan-toml": (read_plan, "a.toml"),
    "plan-csv": (read_plan, "a.csv"),
    "plan-gpx": (read_plan, "a.gpx"),
    "plan-geojson": (read_plan, "a.geojson"),
    "track": (read_track, "a.gpx"),
    "log": (read_log, "a.csv"),
    "roster": (read_roster, "a.csv"),
    "punches": (read_punches, "a.csv"),
    "standard": (read_standard, "a.toml"),
    "words": (read_words, "a.toml"),
    "areas": (read_areas, "a.geojson"),
    "debrief": (lambda path: read_earlier_debriefs([path]), "a.json"),
}
