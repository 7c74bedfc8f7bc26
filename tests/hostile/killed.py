"""Kill a command at many random moments: a result is the old complete file or the new one.

    PYTHONPATH=.:tests python tests/hostile/killed.py --kills 200

By hand; a test does some. One kill in some comes at any moment of the run, the others between one
write and the next; in records, between one statement that changes them and the next. The program's
modules are loaded once; each run is a process of its own that is forked from there, and that the
system kills (SIGKILL) when its time is up. Needs Linux.
"""

from __future__ import annotations

import argparse
import contextlib
import ctypes
import itertools
import json
import multiprocessing
import os
import random
import shutil
import signal
import sqlite3
import struct
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from importlib.resources import as_file, files
from itertools import pairwise
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import Any

COMMAND = [sys.executable, "-m", "audit"]
ENVIRONMENT = {**os.environ, "OMP_NUM_THREADS": "1"}
Content = dict[str, bytes]
CHANGES = ("INSERT", "UPDATE", "DELETE", "CREATE", "ALTER", "DROP", "COMMIT")
SAME_WRITE = 12
"""So many kills are tried from one write on, each in a copy of one process that stopped there;
two where records are changed, in which the statements tell more."""

STATEMENTS = 6
"""Killed in so many statements at a time, and so at most so many times more than asked."""


@dataclass(slots=True, kw_only=True)
class Killed:
    """How often a command was killed, and what stood there afterwards.

    ``amid`` counts the kills after which something of the run stood beside the results: they
    came while it wrote.
    """

    kills: int = 0
    amid: int = 0
    finished: int = 0
    states: Counter[str] = field(default_factory=Counter)
    torn: list[str] = field(default_factory=list)


def content_of_files(folder: Path) -> Content:
    """Give all results; drafts of a killed run begin with a dot and are none."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not (path.name.startswith(".") and path.suffix == ".part")
    }


def content_of_records(folder: Path) -> Content:
    """Give what a database holds, as any program reads it that opens it after the kill."""
    held: Content = {}
    for file in folder.glob("*.db"):
        with contextlib.closing(sqlite3.connect(file)) as records:
            whole = records.execute("PRAGMA integrity_check").fetchall()
            astray = records.execute("PRAGMA foreign_key_check").fetchall()
            text = "\n".join(records.iterdump())
        if whole != [("ok",)] or astray:
            text = f"damaged: {whole} {astray}"
        if "CREATE TABLE" in text:  # records that were not begun are none
            held[file.name] = text.encode()
    return held


def killed_often(
    arguments: Sequence[str],
    out: Path,
    kills: int,
    seed: int,
    content: Callable[[Path], Content] = content_of_files,
    between: Content | None = None,
) -> Killed:
    """Kill ``leg-audit ARGUMENTS`` again and again while ``out`` holds results already.

    ``between`` is what may stand there too, whole, of a run that does two things in turn.
    """
    kept = out.with_name("kept")
    shutil.copytree(out, kept)
    whole = content(out)
    run = Run(arguments, out)
    lasts_s, writes_at_s, statements_at_s = run.to_the_end()
    waits_s = [later - at for at, later in pairwise(writes_at_s)]
    of_statements_s = [later - at for at, later in pairwise(statements_at_s)]
    new = content(out)
    same_write = 2 if statements_at_s[1:] else SAME_WRITE
    moments = random.Random(seed)
    result = Killed()

    def look(status: int) -> None:
        assert status in (0, -signal.SIGKILL), status
        result.kills += status != 0
        result.finished += status == 0
        result.amid += any(path.suffix in {".part", ".db-journal"} for path in out.rglob("*"))
        found = content(out)
        for name in whole.keys() | found.keys():
            data = found.get(name)
            known = {"old": whole, "new": new, "between": between or {}}
            states = [state for state, held in known.items() if held.get(name) == data]
            state = states[0] if states else "torn"
            result.states[state] += 1
            result.torn += [name] if state == "torn" else []

    while result.kills < kills:
        _put_back(kept, out)
        look(run.killed_after(moments.uniform(0.0, lasts_s)))
        _put_back(kept, out)
        for statement in moments.sample(
            range(len(of_statements_s)), min(len(of_statements_s), STATEMENTS)
        ):
            look(run.killed_in(statement, moments.uniform(0.0, 1.1) * of_statements_s[statement]))
            _put_back(kept, out)
        write = moments.randrange(len(waits_s))
        with run.stopped_before(write) as go_on:
            now = out.with_name("now")
            _put_back(out, now)
            for _ in range(max(0, min(same_write, kills - result.kills))):
                look(go_on(moments.uniform(0.0, 1.1) * waits_s[write]))
                _put_back(now, out)
    return result


def _put_back(kept: Path, out: Path) -> None:
    shutil.rmtree(out, ignore_errors=True)
    shutil.copytree(kept, out)


class Run:
    """A command that can be run to its end, killed after some time, or stopped before a write.

    Each run is the program's own entry in a process of its own. "A write" is a file opened to be
    written in the folder of the results, or a database opened; "a statement" is one of SQL that
    changes something, or the end of a transaction.
    """

    def __init__(self, arguments: Sequence[str], out: Path) -> None:
        self._arguments = list(arguments)
        self._out = str(out)
        self._forks = multiprocessing.get_context("forkserver")
        self._forks.set_forkserver_preload(["hostile.loaded"])

    def to_the_end(self) -> tuple[float, list[float], list[float]]:
        """Give the processor time of the run; when it wrote and changed records, and its end."""
        process, pipe = self._started(_told)
        told = pipe.recv()
        process.join()
        assert process.exitcode == 0, self._arguments
        return told

    def killed_after(self, processor_s: float) -> int:
        """Let it be killed after so much processor time: a busy machine moves no kill."""
        process, _ = self._started(_killed_early, processor_s)
        process.join()
        assert process.exitcode is not None
        return process.exitcode

    def killed_in(self, statement: int, for_s: float) -> int:
        """Let it be killed so many seconds after a statement began."""
        process, _ = self._started(_killed_in, statement, for_s)
        process.join()
        assert process.exitcode is not None
        return process.exitcode

    @contextmanager
    def stopped_before(self, write: int) -> Iterator[Callable[[float], int]]:
        """Stop before a write; what is given lets a copy go on, killed after so many seconds."""
        process, pipe = self._started(_stopped, write)
        assert pipe.recv() == "stopped"

        def go_on(for_s: float) -> int:
            pipe.send(for_s)
            status = pipe.recv()
            assert isinstance(status, int)
            return status

        try:
            yield go_on
        finally:
            process.kill()
            process.join()

    def _started(
        self, what: Callable[..., None], *more: float
    ) -> tuple[BaseProcess, Connection[Any, Any]]:
        here, there = self._forks.Pipe()
        process = self._forks.Process(target=what, args=(self._arguments, self._out, there, *more))
        process.start()
        there.close()
        return process, here


def _told(arguments: list[str], out: str, pipe: Connection[Any, Any]) -> None:
    writes_s: list[float] = []
    statements_s: list[float] = []
    status = _be_the_program(
        arguments, out,
        lambda _: writes_s.append(time.monotonic()),
        lambda _: statements_s.append(time.monotonic()),
    )  # fmt: skip
    assert not status, status
    ended_s = time.monotonic()
    pipe.send((time.process_time(), [*writes_s, ended_s], [*statements_s, ended_s]))


def _killed_early(arguments: list[str], out: str, _: object, processor_s: float) -> None:
    _set_kill(time.CLOCK_PROCESS_CPUTIME_ID, processor_s)
    _be_the_program(arguments, out, lambda _: None)


def _killed_in(arguments: list[str], out: str, _: object, statement: int, for_s: float) -> None:
    def begin(number: int) -> None:
        if number == statement:
            _set_kill(time.CLOCK_MONOTONIC, for_s)

    _be_the_program(arguments, out, lambda _: None, begin)


def _stopped(arguments: list[str], out: str, pipe: Connection[Any, Any], write: int) -> None:
    def stop(number: int) -> None:
        if number != write:
            return
        pipe.send("stopped")
        while True:
            for_s = pipe.recv()
            if not (copy := os.fork()):
                _set_kill(time.CLOCK_MONOTONIC, for_s)
                return
            pipe.send(os.waitstatus_to_exitcode(os.waitpid(copy, 0)[1]))

    _be_the_program(arguments, out, stop)
    os._exit(0)  # the drawing engine, copied without its threads, would not end


def _be_the_program(
    arguments: list[str],
    out: str,
    before_write: Callable[[int], None],
    before_statement: Callable[[int], None] = lambda _: None,
) -> object:
    """Be the program, heard by nobody; call what is given with 0, 1, 2... before each write."""
    from sqlalchemy import event
    from sqlalchemy.engine import Engine

    from audit.cli import main as leg_audit

    nobody = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(nobody, stream)
    numbers, statements = itertools.count(), itertools.count()

    def hear(statement: str) -> None:
        if statement.lstrip().upper().startswith(CHANGES):
            before_statement(next(statements))

    def notice(what: str, of: tuple[object, ...]) -> None:
        inside = what == "open" and str(of[0]).startswith(out) and str(of[1])[0] in "xwa"
        if inside or what == "sqlite3.connect":
            before_write(next(numbers))

    sys.addaudithook(notice)
    event.listen(Engine, "connect", lambda records, _: records.set_trace_callback(hear))
    sys.argv = ["leg-audit", *arguments]
    try:
        leg_audit()
    except SystemExit as end:
        return end.code
    return 0


def _set_kill(clock: int, after_s: float) -> None:
    """Set a timer of POSIX.1-2017 that ends this process by SIGKILL."""
    libc = ctypes.CDLL(None, use_errno=True)
    event = struct.pack("qii", 0, signal.SIGKILL, 0).ljust(64, b"\0")
    timer = ctypes.c_void_p()
    whole_s, rest_s = divmod(after_s, 1.0)
    once = struct.pack("qqqq", 0, 0, int(whole_s), max(int(rest_s * 1e9), 1))
    if libc.timer_create(clock, event, ctypes.byref(timer)) or libc.timer_settime(
        timer, 0, once, None
    ):
        raise OSError(ctypes.get_errno(), "no timer")


def debrief_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the debrief of the demo, over results of the same plan in other words."""
    plan, track = _demo(folder)
    out = folder / "out"
    older = folder / "older.toml"
    older.write_text(plan.read_text().replace("Beech Knoll", "Old Knoll"))
    Run(["debrief", str(older), str(track), "--out", str(out), "--gpx"], out).to_the_end()
    again = ["debrief", str(plan), str(track), "--out", str(out), "--gpx"]
    return killed_often(again, out, kills, seed)


def card_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the card of the demo's plan, over the card of another."""
    plan, _ = _demo(folder)
    out = _made(folder / "out")
    (out / "card.html").write_text("the card of last year")
    return killed_often(["card", str(plan), "--out", str(out / "card.html")], out, kills, seed)


def grade_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the grading of a class of two, over the class of another name."""
    plan, track = _demo(folder)
    shutil.copy(track, folder / "second.gpx")
    out = folder / "out"
    words = ["grade", str(plan), str(track), str(folder / "second.gpx"), "--out", str(out)]
    words += ["--jobs", "1"]
    Run([*words, "--name", "Older"], out).to_the_end()
    return killed_often([*words, "--name", "Newer"], out, kills, seed)


def records_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the keeping of an attempt in records that hold another walker's."""
    words = _debrief_to_keep(folder)
    out = _made(folder / "out")
    Run([*words, "--walker", "one"], out).to_the_end()
    return killed_often([*words, "--walker", "two"], out, kills, seed, content_of_records)


def begun_records_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the keeping of a first attempt, while the records themselves are made."""
    out, begun = _made(folder / "out"), _made(folder / "begun")
    (folder / "secret").write_text("a salt that is the same each time")
    secret = ["--records-secret", str(folder / "secret")]
    (begun / "school.db").touch()  # a database that holds nothing yet
    Run(["forget", "--records", str(begun / "school.db"), *secret], begun).to_the_end()
    again = [*_debrief_to_keep(folder), "--walker", "one", *secret]
    return killed_often(
        again, out, kills, seed, content_of_records, between=content_of_records(begun)
    )


def forget_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the forgetting of a walker."""
    words = _debrief_to_keep(folder)
    out = _made(folder / "out")
    Run([*words, "--walker", "one"], out).to_the_end()
    Run([*words, "--walker", "two"], out).to_the_end()
    forget = ["forget", "--walker", "one", "--records", str(out / "school.db")]
    return killed_often(forget, out, kills, seed, content_of_records)


def _debrief_to_keep(folder: Path) -> list[str]:
    plan, track = _demo(folder)
    words = ["debrief", str(plan), str(track), "--only", "json", "--out", str(folder / "other")]
    return [*words, "--records", str(folder / "out" / "school.db")]


def _made(folder: Path) -> Path:
    folder.mkdir()
    return folder


def _demo(folder: Path) -> tuple[Path, Path]:
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for name in ("plan.toml", "walk.gpx"):
            shutil.copy(demo / name, folder)
    return folder / "plan.toml", folder / "walk.gpx"


COMMANDS: dict[str, Callable[[Path, int, int], Killed]] = {
    "debrief": debrief_killed,
    "card": card_killed,
    "grade": grade_killed,
    "records": records_killed,
    "begun-records": begun_records_killed,
    "forget": forget_killed,
}


def main() -> None:
    """Kill each command and say what stood there."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--command", choices=[*COMMANDS], action="append")
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    for name in asked.command or COMMANDS:
        with tempfile.TemporaryDirectory() as folder:
            result = COMMANDS[name](Path(folder), asked.kills, asked.seed)
        print(
            json.dumps({"command": name, "kills": result.kills, "while_writing": result.amid,
                        "finished": result.finished, **result.states, "torn_files": result.torn[:5]}),
            flush=True,
        )  # fmt: skip


if __name__ == "__main__":
    main()
