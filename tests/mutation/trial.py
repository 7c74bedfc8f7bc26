"""The tests that reach a wrong, run on copies of this process that have it in them."""

from __future__ import annotations

import importlib
import json
import signal
import sys
import time
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import zip_longest
from pathlib import Path
from types import FrameType

import pytest

from mutation.copied_process import in_a_copy
from mutation.mutants import Mutant
from mutation.planted import plant

SLOWER = 5.0
MORE_S = 5.0
"""A test that takes so many times its processor time, and so much more, does not end."""

NOT_PLANTED = "not planted"
"""What a mutant comes to whose function is not found among those loaded."""
ROOT = Path(__file__).resolve().parents[2]

Reached = set[tuple[str, int]]
"""File and line."""
Looked = dict[str, tuple[float, Reached]]
"""The seconds of processor time of each test, and what it reaches."""


@dataclass(slots=True, kw_only=True)
class Trial:
    """A plugin of pytest that runs what was collected once for each mutant."""

    every: int
    chosen: Sequence[tuple[Path, Mutant]]
    most_s: float
    _failed: bool = False
    _kills: Counter[str] = field(default_factory=Counter)

    def run(self, tests: Sequence[str]) -> int:
        """Collect these tests and try the mutants; give the exit status."""
        return int(pytest.main(["-p", "no:terminal", "-o", "timeout=0", *tests], plugins=[self]))

    def pytest_collection(self) -> None:
        """Let a failure be enough, the smallest not looked for, and slowness be none."""
        from hypothesis import HealthCheck, Phase, settings  # pytest wants to load it first

        settings.register_profile(
            "mutants",
            phases=[Phase.explicit, Phase.generate],
            database=None,
            deadline=None,
            suppress_health_check=list(HealthCheck),
        )
        settings.load_profile("mutants")

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        self._failed |= report.failed

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Learn what each test reaches, then try each mutant."""
        files = {str(file) for file, _ in self.chosen}
        load(file for file, _ in self.chosen)
        looked = in_a_copy(lambda: self._look(session.items, files))
        if not isinstance(looked, dict):
            print(f"The tests fail without any wrong: {looked}", file=sys.stderr)
            session.testsfailed = 1
            return True
        killed = unplanted = 0
        for number, (file, mutant) in enumerate(self.chosen, start=1):
            items = self._nearest_first(session.items, looked, file, mutant)
            by = self._killer(file, mutant, items, looked)
            planted = by != NOT_PLANTED
            by = by if planted else ""
            killed += bool(by)
            unplanted += not planted
            self._kills[by] += 1
            row = {"file": file.name, "function": mutant.function, "line": mutant.line,
                   "what": mutant.what, "boundary": mutant.boundary, "tests": len(items),
                   "planted": planted, "killed_by": by}  # fmt: skip
            print(json.dumps(row), flush=True)
            count = f"{killed} of {number} killed, of {self.every} there are"
            count += f"; {unplanted} could not be planted" if unplanted else ""
            print(count, file=sys.stderr, flush=True)
        return True

    def _look(self, items: Sequence[pytest.Item], files: set[str]) -> Looked:
        """Run all tests as they are; say how long each takes, and what it reaches."""
        looked: Looked = {}
        for item, following in zip_longest(items, items[1:]):
            began = time.process_time()
            with lines_reached(files) as reached:
                item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
            if self._failed:
                raise AssertionError(item.nodeid)
            looked[item.nodeid] = (time.process_time() - began, reached)
        return looked

    def _nearest_first(
        self, items: Sequence[pytest.Item], looked: Looked, file: Path, mutant: Mutant
    ) -> list[pytest.Item]:
        """Give the tests that reach a wrong, as many as the time allows."""

        def cost(item: pytest.Item) -> float:
            near = 0.1 if file.stem in item.path.stem else 1.0
            return near * looked[item.nodeid][0] / (1 + self._kills[item.nodeid])

        wrong = {(str(file), line) for line in mutant.lines}
        fit, left_s = [], self.most_s
        for item in sorted(items, key=cost):
            lasts_s, reached = looked[item.nodeid]
            if reached & wrong and lasts_s <= left_s:
                left_s -= lasts_s
                fit.append(item)
        return fit

    def _killer(
        self, file: Path, mutant: Mutant, items: Sequence[pytest.Item], looked: Looked
    ) -> str:
        """Plant a wrong in a copy; give the test that notices it, nothing, or that it cannot be."""

        def tried() -> str:
            if items and not plant(file, mutant):
                return NOT_PLANTED
            for item, following in zip_longest(items, items[1:]):
                signal.setitimer(signal.ITIMER_PROF, MORE_S + SLOWER * looked[item.nodeid][0])
                item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
                if self._failed:
                    return item.nodeid
            return ""

        return str(in_a_copy(tried))


def load(files: Iterable[Path]) -> None:
    """Import what wrongs are planted into: what only some test loads is not there for others."""
    for file in sorted(set(files)):
        parts = file.relative_to(ROOT).with_suffix("").parts
        importlib.import_module(".".join(part for part in parts if part != "__init__"))


@contextmanager
def lines_reached(files: set[str]) -> Iterator[Reached]:
    """Gather the lines of these files that are run."""
    reached: Reached = set()

    def in_line(frame: FrameType, event: str, _: object) -> object:
        if event == "line":
            reached.add((frame.f_code.co_filename, frame.f_lineno))
        return in_line

    def in_call(frame: FrameType, _: str, __: object) -> object:
        return in_line if frame.f_code.co_filename in files else None

    sys.settrace(in_call)
    yield reached
    sys.settrace(None)
