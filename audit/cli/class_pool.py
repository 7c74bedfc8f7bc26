"""Many walkers over all processors: a line of progress, and Ctrl-C that loses nothing done."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from multiprocessing import forkserver
from threading import Thread
from typing import Self, TypeVar

from audit import words
from audit.cli.messages import say_as_it_stands
from audit.errors import AuditError
from audit.reports.printable import printable
from audit.words.figures import Number

Item = TypeVar("Item")
Made = TypeVar("Made")
_AHEAD = 3
"""Items that wait for each process: enough that none idles, few enough to be taken back."""

_LONGEST_NAME = 30
"""Signs of a name in the line of progress, which is one line on a terminal of 80."""

_LOADED_AHEAD = ("audit.cli.walker_work", "jinja2", "shapely")
"""What grading needs, loaded once for all processes."""
_START = "forkserver" if "forkserver" in multiprocessing.get_all_start_methods() else "spawn"
"""Never copies of this process: copies of one that runs threads may hang."""


def processors() -> int:
    """Give how many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


class Processes:
    """So many processes, begun once and used for one list of items after another."""

    def __init__(self, jobs: int) -> None:
        self.jobs = jobs
        self._pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        if self._pool is not None:
            self._pool.shutdown(wait=True, cancel_futures=True)

    def load_ahead(self) -> None:
        """Let one process load what grading needs, while this one still loads itself.

        The others are copies of it, where the system can make them.
        """
        if self.jobs > 1 and _START == "forkserver":
            forkserver.set_forkserver_preload(list(_LOADED_AHEAD))
            forkserver.ensure_running()

    def over_all(
        self, function: Callable[[Item], Made], items: Sequence[Item]
    ) -> Iterator[tuple[int, Made]]:
        """Give (place, result) of each item as it is done.

        Raises
        ------
        AuditError
            Where a process was ended from outside.
        """
        if self.jobs <= 1 or (len(items) <= 1 and self._pool is None):
            for place, item in enumerate(items):
                yield place, function(item)
            return
        waiting: dict[Future[Made], int] = {}
        left = iter(enumerate(items))
        try:
            while True:
                while len(waiting) < _AHEAD * self.jobs and (one := next(left, None)):
                    waiting[self._begun().submit(function, one[1])] = one[0]
                if not waiting:
                    return
                done, _ = wait(waiting, return_when=FIRST_COMPLETED)
                for future in done:
                    yield waiting.pop(future), future.result()
        except BrokenProcessPool as broken:
            message = (
                "A process was ended from outside, perhaps for want of memory. What is done is "
                "kept; give the same command again, with --jobs 1 if this comes back."
            )
            raise AuditError(message) from broken

    def _begun(self) -> ProcessPoolExecutor:
        if self._pool is None:
            self._pool = ProcessPoolExecutor(
                self.jobs,
                mp_context=multiprocessing.get_context(_START),
                initializer=_follow_the_first,
            )
        return self._pool


def _follow_the_first() -> None:
    """Leave interrupts to the process that began this one, and end when it has ended."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_the_first, daemon=True).start()


def _end_with_the_first() -> None:
    """Wait for the end of the process that began this one: who is killed dismisses nobody."""
    first = multiprocessing.parent_process()
    if first is not None:
        first.join()
        os._exit(1)


class Progress:
    """One line on standard error: what is done, the last walker, the rate, the time left.

    On a terminal it is written over; elsewhere a line stands for every tenth of the way.
    ``what`` is the message of the line.
    """

    def __init__(self, what: str, total: int, done: int = 0) -> None:
        self.what, self.total, self.done, self.begun = what, total, done, done
        self.start_s = time.monotonic()
        self.live = sys.stderr is not None and sys.stderr.isatty()
        self.told = -1

    def step(self, name: str) -> None:
        """Count one more, and tell."""
        self.done += 1
        tenth = 10 * self.done // max(self.total, 1)
        if self.live:
            say_as_it_stands(f"\r\x1b[K{self._line(name)}")
        elif tenth != self.told:
            say_as_it_stands(self._line(name) + "\n")
        self.told = tenth

    def end(self) -> None:
        """Leave the line."""
        if self.live and self.done > self.begun:
            say_as_it_stands("\n")

    def _line(self, name: str) -> str:
        taken_s = max(time.monotonic() - self.start_s, 1e-6)
        rate = (self.done - self.begun) / taken_s
        left_s = (self.total - self.done) / rate
        return words.say(
            self.what,
            done=str(self.done),
            all=str(self.total),
            last=printable(name)[:_LONGEST_NAME],
            rate=Number(value=rate, decimals=1),
            left=Number(value=left_s),
        )
