"""What a whole Python command takes, started as a user starts it."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def run_python(words: Sequence[str], *, may_fail: bool = False) -> dict[str, float]:
    """Seconds by the clock and by the processor, and peak memory in MB."""
    begun = time.perf_counter()
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
    process = subprocess.Popen([sys.executable, *words], cwd=ROOT, **quiet)
    _, status, usage = os.wait4(process.pid, 0)
    taken = time.perf_counter() - begun
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode and not may_fail:
        message = f"{' '.join(words[:4])} ended with {process.returncode}"
        raise SystemExit(message)
    return {
        "seconds": taken,
        "processor_s": usage.ru_utime + usage.ru_stime,
        "peak_mb": usage.ru_maxrss / 1024.0,
    }
