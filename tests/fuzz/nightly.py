"""Coverage-guided fuzzing of all readers in turn, then walks to the end: ten minutes in all.

    PYTHONPATH=.:tests python tests/fuzz/nightly.py [--seconds-each 40 | --runs-each 1000000]

Says how many runs each kind of file had, and ends with status 1 at the first finding and says
where it lies. Needs atheris.
"""

from __future__ import annotations

import argparse
import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from fuzz.readers_by_kind import READERS

HERE = Path(__file__).parent
MOST_BYTES = 600
"""Long enough for every construction of a file, short enough to try many."""


def main() -> None:
    """Fuzz each kind of file for its time, or its runs."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds-each", type=int, default=40)
    parser.add_argument("--runs-each", type=int)
    parser.add_argument("--grown", type=Path, help="a folder that keeps what the fuzzing finds new")
    parser.add_argument("--only", choices=[*READERS], action="append")
    parser.add_argument("--walks", type=int, default=300, help="whole walks after the readers")
    asked = parser.parse_args()
    much = f"-max_total_time={asked.seconds_each}"
    if asked.runs_each:
        much = f"-runs={asked.runs_each}"
    findings = Path(tempfile.mkdtemp(prefix="findings-"))
    for kind in asked.only or READERS:
        with tempfile.TemporaryDirectory() as passing:
            grown = (asked.grown or Path(passing)) / kind
            grown.mkdir(parents=True, exist_ok=True)
            words = Path(passing) / "words"
            words.write_text(words_of(HERE / "corpus" / kind), encoding="ascii")
            done = subprocess.run(
                [sys.executable, HERE / "readers_fuzz.py", kind, much, f"-max_len={MOST_BYTES}",
                 "-timeout=20", "-rss_limit_mb=2000", f"-dict={words}",
                 f"-artifact_prefix={findings}/{kind}-", grown, HERE / "corpus" / kind],
                capture_output=True, text=True, errors="replace", check=False,
                env={**os.environ, "OMP_NUM_THREADS": "1"},
            )  # fmt: skip
        if done.returncode:
            sys.exit(f"{done.stderr[-4000:]}\nA finding of {kind} is in {findings}.")
        runs = [line for line in done.stderr.splitlines() if line.startswith("Done ")]
        print(f"{kind}: {' '.join(runs)}", flush=True)
    findings.rmdir()
    if asked.walks:
        words = [sys.executable, HERE / "whole_walks.py", "--examples", str(asked.walks)]
        sys.exit(subprocess.run(words, check=False).returncode)


def words_of(corpus: Path) -> str:
    """Give the words of a corpus as a dictionary of libFuzzer, so that it need not guess them."""
    words: set[bytes] = set()
    for sample in corpus.iterdir():
        words |= set(
            re.findall(rb"[A-Za-z_][A-Za-z_0-9]{2,24}|\d[\d.:TZ-]{3,20}", sample.read_bytes())
        )
    return "".join(f'"{word.decode("ascii")}"\n' for word in sorted(words))


if __name__ == "__main__":
    main()
