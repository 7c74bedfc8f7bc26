"""Mutation testing: a sample of small wrongs, and whether the tests of that part notice each.

    PYTHONPATH=.:tests python -m mutation --part geodesy --sample 40 --seed 1

A mutant lives in a process of its own, where its source stands in place of the file's; the
files are not touched. First come the tests that are named after the file, then those that
name it, wherever they are, then the whole folder. A test that fails, or does not end, kills it.
"""

from __future__ import annotations

import argparse
import importlib.abc
import importlib.machinery
import importlib.util
import json
import os
import random
import signal
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from types import ModuleType

from mutation.mutants import Mutant, mutants

ROOT = Path(__file__).resolve().parents[2]
PARTS = {
    "units": (
        ["audit/units.py", "audit/azimuths.py"],
        ["tests/test_units.py", "tests/test_azimuths.py"],
    ),
    "geodesy": (["audit/geodesy"], ["tests/geodesy"]),
    "statistics": (["audit/statistics"], ["tests/statistics"]),
    "measurement": (["audit/measurement"], ["tests/measurement"]),
    "matching": (["audit/matching"], ["tests/matching"]),
}
MOST_S = 300
PASSED, FAILED, INTERRUPTED, NOT_RUN = 0, 1, 2, 99
"""Exit statuses of pytest, and ours where it did not begin. A file that cannot be collected
interrupts it."""


class Spoilt(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Loads one module from the source of a mutant."""

    def __init__(self, module: str, path: Path, source: str) -> None:
        self._module, self._path, self._source = module, path, source

    def find_spec(self, name: str, *_: object) -> importlib.machinery.ModuleSpec | None:
        if name != self._module:
            return None
        return importlib.util.spec_from_file_location(name, self._path, loader=self)  # type: ignore[arg-type]

    def create_module(self, _: object) -> None:
        return None

    def exec_module(self, module: ModuleType) -> None:
        exec(compile(self._source, str(self._path), "exec"), module.__dict__)  # noqa: S102


def killed_by(path: Path, source: str, tests: Sequence[str]) -> bool:
    """Run tests on a mutant, in a copy of this process."""
    child = os.fork()
    if child == 0:
        status = NOT_RUN
        try:
            nobody = os.open(os.devnull, os.O_WRONLY)
            os.dup2(nobody, 1)
            os.dup2(nobody, 2)
            module = path.relative_to(ROOT).with_suffix("").as_posix().replace("/", ".")
            sys.meta_path.insert(0, Spoilt(module, path, source))
            import pytest

            status = int(pytest.main(["-x", "-q", "--no-header", *tests]))
        finally:
            os._exit(status)
    began = time.monotonic()
    while time.monotonic() - began < MOST_S:
        done, ended = os.waitpid(child, os.WNOHANG)
        if done:
            status = os.waitstatus_to_exitcode(ended)
            if status in (PASSED, FAILED, INTERRUPTED):
                return status != PASSED
            if status < 0:  # the mutant brought the process down
                return True
            message = f"the tests of {path.name} did not run: status {status}"
            raise RuntimeError(message)
        time.sleep(0.02)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return True


def rounds_of_tests(path: Path, tests: Sequence[str]) -> list[list[str]]:
    """Give the tests of a file, nearest first."""
    files = [
        file
        for one in tests
        for file in (
            [ROOT / one] if one.endswith(".py") else sorted((ROOT / one).glob("test_*.py"))
        )
    ]
    module = path.relative_to(ROOT).with_suffix("").as_posix().replace("/", ".")
    everywhere = sorted((ROOT / "tests").rglob("test_*.py"))
    named = [file for file in files if path.stem in file.stem]
    telling = [
        file for file in everywhere if file not in named and module in file.read_text("utf-8")
    ]
    rest = [file for file in files if file not in named and file not in telling]
    return [[str(file) for file in some] for some in (named, telling, rest) if some]


def main() -> None:
    """Sample, try, and tell each survivor."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--part", choices=[*PARTS], required=True)
    parser.add_argument("--sample", type=int, default=40)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", action="append", help="files of the part, by their names")
    asked = parser.parse_args()
    os.chdir(ROOT)
    sources, tests = PARTS[asked.part]
    files = [
        file
        for one in sources
        for file in ([ROOT / one] if one.endswith(".py") else sorted((ROOT / one).glob("*.py")))
        if not asked.only or file.name in asked.only
    ]
    every: list[tuple[Path, Mutant]] = [
        (file, one) for file in files for one in mutants(file.read_text("utf-8"))
    ]
    chosen = random.Random(asked.seed).sample(every, min(asked.sample, len(every)))
    for library in ("numpy", "scipy.stats", "scipy.optimize", "pyproj", "shapely"):
        importlib.import_module(library)
    whole = files[0].read_text("utf-8")
    if any(killed_by(files[0], whole, some) for some in rounds_of_tests(files[0], tests)):
        sys.exit(f"The tests of {asked.part} fail without any wrong.")
    killed = 0
    for number, (file, mutant) in enumerate(chosen, start=1):
        died = any(killed_by(file, mutant.source, some) for some in rounds_of_tests(file, tests))
        killed += died
        told = {"part": asked.part, "file": file.name, "line": mutant.line, "what": mutant.what,
                "boundary": mutant.boundary, "killed": died}  # fmt: skip
        print(json.dumps(told), flush=True)
        print(
            f"{asked.part}: {killed} of {number} killed, of {len(every)}",
            file=sys.stderr,
            flush=True,
        )


if __name__ == "__main__":
    main()
