"""Whether the same sources give the same wheel, byte for byte, wherever and whenever built.

    PYTHONPATH=.:tests python tests/dependencies/same_wheel.py

Builds twice, from two copies of the folder with other times of their files. By hand and at
night: pip fetches the build backend.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCES = ("audit", "pyproject.toml", "README.md", "LICENSE")
DAY_S = 1_577_836_800
"""What the wheel says of its day: 2020-01-01, as SOURCE_DATE_EPOCH of reproducible-builds.org."""


def digest_of_wheel(folder: Path, age_s: int) -> str:
    """Copy the sources, give their files an age, build, and give the digest of the wheel."""
    for name in SOURCES:
        source, copy = ROOT / name, folder / name
        if source.is_dir():
            shutil.copytree(source, copy, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(source, copy)
    for path in folder.rglob("*"):
        os.utime(path, (age_s, age_s))
    subprocess.run(
        [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "-w", folder / "made", folder],
        check=True,
        env={**os.environ, "SOURCE_DATE_EPOCH": str(DAY_S)},
    )
    (wheel,) = (folder / "made").glob("*.whl")
    return f"{hashlib.sha256(wheel.read_bytes()).hexdigest()}  {wheel.name}"


def main() -> None:
    """Build twice and compare."""
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as other:
        digests = [
            digest_of_wheel(Path(one), 1_000_000_000),
            digest_of_wheel(Path(other), 1_700_000_000),
        ]
    print("\n".join(digests))
    if len(set(digests)) > 1:
        sys.exit("The wheels differ.")


if __name__ == "__main__":
    main()
