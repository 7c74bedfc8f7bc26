"""Coverage-guided fuzzing of all readers in turn, ten minutes in all.

    PYTHONPATH=.:tests python tests/fuzz/nightly.py [--seconds-each 55]

Ends with status 1 at the first finding and says where it lies. Needs atheris.
"""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from fuzz.readers_by_kind import READERS

HERE = Path(__file__).parent


def main() -> None:
    """Fuzz each kind of file for its time."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds-each", type=int, default=55)
    parser.add_argument("--only", choices=[*READERS], action="append")
    asked = parser.parse_args()
    findings = Path(tempfile.mkdtemp(prefix="findings-"))
    for kind in asked.only or READERS:
        grown = Path(tempfile.mkdtemp())
        done = subprocess.run(
            [sys.executable, HERE / "readers_fuzz.py", kind,
             f"-max_total_time={asked.seconds_each}", "-max_len=3000", "-timeout=20",
             "-rss_limit_mb=2000", f"-artifact_prefix={findings}/{kind}-",
             grown, HERE / "corpus" / kind],
            capture_output=True, text=True, errors="replace", check=False,
            env={**os.environ, "OMP_NUM_THREADS": "1"},
        )  # fmt: skip
        shutil.rmtree(grown)
        if done.returncode:
            sys.exit(f"{done.stderr[-4000:]}\nA finding of {kind} is in {findings}.")
        runs = [line for line in done.stderr.splitlines() if line.startswith("Done ")]
        print(f"{kind}: {' '.join(runs)}", flush=True)
    findings.rmdir()


if __name__ == "__main__":
    main()
