"""A scheduler and workers in processes of their own, and work that tells where it was done."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from audit.cli.cluster import this_program

ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True, slots=True, kw_only=True)
class Started:
    """The address of a scheduler, and its workers."""

    address: str
    scheduler: subprocess.Popen[bytes]
    workers: tuple[subprocess.Popen[bytes], ...]


@contextmanager
def started(folder: Path, workers: int = 2) -> Iterator[Started]:
    """Run a scheduler with so many workers of one thread; all are gone afterwards."""
    where = folder / "scheduler.json"
    processes: list[subprocess.Popen[bytes]] = []

    def run(*arguments: str) -> subprocess.Popen[bytes]:
        path = os.pathsep.join([str(ROOT), str(ROOT / "tests")])
        env = {**os.environ, "PYTHONPATH": path, "OMP_NUM_THREADS": "1"}
        command = [sys.executable, "-m", *arguments]
        with (folder / f"{len(processes)}.log").open("wb") as log:
            process = subprocess.Popen(command, env=env, cwd=folder, stdout=log, stderr=log)
        processes.append(process)
        return process

    try:
        run("distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", "0",
            "--no-dashboard", "--scheduler-file", str(where))  # fmt: skip
        _await(where.exists)
        hands = [
            run("distributed.cli.dask_worker", "--scheduler-file", str(where), "--nthreads", "1",
                "--no-nanny", "--no-dashboard", "--memory-limit", "0", "--name", f"hand-{number}",
                "--local-directory", str(folder))
            for number in range(workers)
        ]  # fmt: skip
        address = _address(where)
        _await(lambda: _threads(address) == workers)
        yield Started(address=address, scheduler=processes[0], workers=tuple(hands))
    finally:
        for process in reversed(processes):
            process.kill()
            process.wait()


def _address(where: Path) -> str:
    import json

    return str(json.loads(where.read_text())["address"])


def _threads(address: str) -> int:
    from distributed import Client

    with Client(address, timeout=30, set_as_default=False) as client:
        return sum(client.nthreads().values())


def _await(ready, patience_s: float = 120.0) -> None:
    end = time.monotonic() + patience_s
    while not ready():
        assert time.monotonic() < end, "the scheduler or its workers do not start"
        time.sleep(0.1)


def squared(item: tuple[str, int]) -> tuple[int, int]:
    """Square a number, slowly, and note in a folder which process began and ended it."""
    folder, number = item
    mine = Path(folder) / f"{number}-{os.getpid()}"
    mine.with_suffix(".begun").touch()
    time.sleep(0.25)
    mine.with_suffix(".done").touch()
    return number * number, os.getpid()


def ends_its_worker(_: int) -> None:
    os._exit(1)


def fails(_: int) -> None:
    message = "a fault of the work"
    raise ArithmeticError(message)


def other_program() -> dict[str, str]:
    return {**this_program(), "numpy": "0.0.1"}
