"""What one walk takes: processor, memory, bytes sent and kept. The figures of the guide's "many".

PYTHONPATH=.:tests python tests/benchmarks/many_walks.py
"""

from __future__ import annotations

import gzip
import pickle
import resource
import time
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from classes.class_files import write_class
from classes.made_class import make_class
from classes.members import Plants

from audit.classroom.assemble import assemble
from audit.classroom.attempt_of_walker import attempts_of_class
from audit.classroom.class_draft import ClassInputs, draft_class
from audit.classroom.lane import lane_of
from audit.classroom.lane_names import lane_names
from audit.cli.walker_work import look, work
from audit.readers.plan_file import read_plan
from audit.readers.roster_file import read_roster
from audit.readers.standard_file import read_standard
from audit.school_records.keep_attempts import keep
from audit.school_records.open_records import open_to_write
from audit.settings import Settings

WALKERS = 10
SEED = 900
COPIES = 20


def size(text: str | bytes, *, packed: bool = False) -> int:
    data = text.encode() if isinstance(text, str) else text
    return len(gzip.compress(data) if packed else data)


def measure(folder: Path) -> dict[str, float]:
    """Give the figures of one walk, each the mean over the class."""
    files = write_class(make_class(SEED, walkers=WALKERS, plants=Plants()), folder)
    plans = [read_plan(path) for path in files.plans]
    lanes = tuple(lane_of(n, p, None) for n, p in zip(lane_names(plans), plans, strict=True))
    begun = time.process_time()
    recordings = tuple(look(path, path.name, lanes, Settings()) for path in files.tracks)
    looked = time.process_time()
    draft = draft_class(
        ClassInputs(
            lanes=lanes, recordings=recordings, standard=read_standard("day-course"), version="0",
            name="", roster=read_roster(files.roster), punches=None, shift_s=0.0, private=False,
            settings=Settings(),
        )
    )  # fmt: skip
    work(draft.tasks[0])  # the libraries are loaded once
    before = time.process_time()
    done = [work(task) for task in draft.tasks]
    graded = time.process_time()
    attempts = attempts_of_class(assemble(draft, [one.result for one in done]), draft, str)
    file = folder / "records.db"
    records = open_to_write(str(file))
    empty = file.stat().st_size
    keep(records, [replace(one, version=f"{n}") for n in range(COPIES) for one in attempts])
    made = [text for one in done for text in one.files.values()]
    pages = [text for one in done for name, text in one.files.items() if name.endswith(".html")]
    return {
        "looking through, s": (looked - begun) / WALKERS,
        "grading, s": (graded - before) / WALKERS,
        "memory, MB": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0,
        "recording, kB": sum(path.stat().st_size for path in files.tracks) / WALKERS / 1e3,
        "sent, kB": sum(len(pickle.dumps(task)) for task in draft.tasks) / WALKERS / 1e3,
        "sent back, kB": sum(len(pickle.dumps(one)) for one in done) / WALKERS / 1e3,
        "debrief, kB": sum(map(size, made)) / WALKERS / 1e3,
        "debrief packed, kB": sum(size(one, packed=True) for one in made) / WALKERS / 1e3,
        "its page, kB": sum(map(size, pages)) / WALKERS / 1e3,
        "attempt kept, kB": (file.stat().st_size - empty) / (COPIES * len(attempts)) / 1e3,
    }


if __name__ == "__main__":
    with TemporaryDirectory() as place:
        for name, figure in measure(Path(place)).items():
            print(f"{name:24}{figure:10.3g}")
