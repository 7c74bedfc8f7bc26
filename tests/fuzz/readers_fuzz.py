"""Coverage-guided fuzzing of the readers: whatever the bytes, a record or one refusal.

    PYTHONPATH=.:tests python tests/fuzz/readers_fuzz.py KIND [libFuzzer options] [CORPUS]

KIND is one of those in readers_by_kind.py. A finding is written to crash-*: make it a named
test. Needs atheris, which is no dependency: pip install atheris.
"""

from __future__ import annotations

import difflib
import os
import sys
import tempfile
import warnings
from functools import lru_cache
from pathlib import Path

import atheris

# Near names are most of the time that a refused table takes; the same ones come again and again.
_near = lru_cache(maxsize=20_000)(difflib.get_close_matches)
difflib.get_close_matches = lambda word, known, n=3, cutoff=0.6: _near(
    word, tuple(known), n, cutoff
)

with atheris.instrument_imports(include=["audit.readers"]):
    from fuzz.readers_by_kind import READERS

    from audit.errors import InputRefusedError


def main() -> None:
    warnings.simplefilter("error")
    read, name = READERS[sys.argv.pop(1)]
    shared = Path("/dev/shm")  # noqa: S108 (memory, not disk, where there is any)
    folder = Path(tempfile.mkdtemp(dir=shared if shared.is_dir() else None))
    path = folder / name

    def one_input(data: bytes) -> None:
        path.write_bytes(data)
        try:
            read(path)
        except InputRefusedError as refusal:
            if not refusal.problems or len(str(refusal)) > 100_000:
                raise AssertionError("a refusal that says nothing, or too much") from refusal

    os.environ.setdefault("OMP_NUM_THREADS", "1")
    atheris.Setup(sys.argv, one_input)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
