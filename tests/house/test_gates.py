"""Lint, form, types and import contracts hold: the gates, so that one command runs them all."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PYTHON = [sys.executable, "-m"]
GATES = {
    "lint": [*PYTHON, "ruff", "check", "--no-cache", "audit", "tests"],
    "form": [*PYTHON, "ruff", "format", "--no-cache", "--check", "audit", "tests"],
    "types": [*PYTHON, "mypy", "--no-error-summary"],
    "imports": [str(Path(sys.executable).with_name("lint-imports")), "--no-cache"],
}


@pytest.mark.parametrize("gate", GATES)
def test_gate(gate, tmp_path):
    command = GATES[gate]
    if gate == "types":
        command = [*command, "--cache-dir", str(tmp_path)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{' '.join(command)}\n{done.stdout}{done.stderr}"
