"""Whoever is killed takes along the processes that work for him: they would wait without end."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from hostile.killed import ENVIRONMENT

SLEEPERS = """
import time
from audit.cli.class_pool import Processes
with Processes(2) as all_of_them:
    for _ in all_of_them.over_all(time.sleep, [0.01, 0.01, {later_s}, {later_s}]):
        print("begun", flush=True)
        time.sleep({first_s})
"""
PATIENCE_S = 60.0


def living(group: int) -> list[str]:
    """Give what runs in a process group; who has ended and was not yet asked for does not."""
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            stat = (folder / "stat").read_text()
        except OSError:
            continue  # ended meanwhile
        state, _, in_group = stat.rpartition(")")[2].split()[:3]
        if int(in_group) == group and state not in "ZX":
            found.append(stat)
    return found


def in_time(told: Callable[[], bool]) -> bool:
    """Wait until it is so, or give up."""
    until_s = time.monotonic() + PATIENCE_S
    while not told():
        if time.monotonic() > until_s:
            return False
        time.sleep(0.05)
    return True


@pytest.mark.skipif(sys.platform != "linux", reason="looks processes up in /proc")
@pytest.mark.parametrize(
    ("later_s", "first_s"), [(600.0, 0.0), (0.01, 600.0)], ids=["at work", "idle"]
)
def test_a_killed_class_leaves_no_process_behind(later_s, first_s):
    script = SLEEPERS.format(later_s=later_s, first_s=first_s)
    with subprocess.Popen(
        [sys.executable, "-c", script], env=ENVIRONMENT, stdout=subprocess.PIPE,
        start_new_session=True,
    ) as first:  # fmt: skip
        assert first.stdout is not None
        assert first.stdout.readline() == b"begun\n"
        assert len(living(first.pid)) > 2  # both workers, and what started them
        first.kill()
        first.wait()
        assert in_time(lambda: not living(first.pid)), living(first.pid)
