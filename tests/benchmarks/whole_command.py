"""What a whole Python command takes, started as a user starts it."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
_STARTER = """
import ctypes, os, sys, time
if sys.platform == "linux":
    ctypes.CDLL(None).prctl(36, 1, 0, 0, 0)  # whoever is left comes here, and is counted
quiet = [(os.POSIX_SPAWN_OPEN, one, os.devnull, os.O_WRONLY, 0) for one in (1, 2)]
begun = time.perf_counter()
words = [sys.executable, *sys.argv[1:]]
number = os.posix_spawn(sys.executable, words, os.environ, file_actions=quiet)
_, status, used = os.wait4(number, 0)
taken = time.perf_counter() - begun
spent = used.ru_utime + used.ru_stime
try:
    while True:
        _, _, left = os.wait3(0)
        spent += left.ru_utime + left.ru_stime
except ChildProcessError:
    print(os.waitstatus_to_exitcode(status), taken, spent, used.ru_maxrss)
"""
"""A small program in between: the peak of a process begins with that of who started it."""


def run_python(words: Sequence[str], *, may_fail: bool = False) -> dict[str, float]:
    """Seconds by the clock and by the processor, and peak memory in MB."""
    command = [sys.executable, "-S", "-c", _STARTER, *words]
    # What is installed is compiled once, not at every start.
    kept = {name: said for name, said in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    done = subprocess.run(command, cwd=ROOT, env=kept, capture_output=True, text=True, check=True)
    ended, seconds, processor_s, peak_kb = done.stdout.split()
    if int(ended) and not may_fail:
        message = f"{' '.join(words[:4])} ended with {ended}"
        raise SystemExit(message)
    return {
        "seconds": float(seconds),
        "processor_s": float(processor_s),
        "peak_mb": float(peak_kb) / 1024.0,
    }
