"""Of all small wrongs in units and azimuths only those that change nothing go unnoticed."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
CHANGE_NOTHING = {
    "turn > 180.0: GtE",  # 180 becomes 180
    # Rounding leaves the range above only: see tests/mutation.md.
    "turn <= -180.0: Lt",
    "turn <= -180.0: Gt",
    "180.0 becomes 270.1",
}


@pytest.mark.skipif(not hasattr(os, "fork"), reason="mutants are copies of a process")
def test_no_wrong_in_units_goes_unnoticed_that_changes_anything():
    command = [sys.executable, "-m", "mutation", "--part", "units", "--sample", "999"]
    paths = {**os.environ, "PYTHONPATH": f"{ROOT}{os.pathsep}{ROOT / 'tests'}"}
    done = subprocess.run(
        command, cwd=ROOT, env=paths, capture_output=True, text=True, timeout=600, check=True
    )
    told = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(told) > 50
    survivors = [one["what"] for one in told if not one["killed_by"]]
    assert set(survivors) <= CHANGE_NOTHING, survivors
    assert len(survivors) <= 4
