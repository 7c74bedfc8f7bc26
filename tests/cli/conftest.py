"""The command line run in this process, and the demo's files to run it on."""

from __future__ import annotations

import shutil
import signal
from collections.abc import Iterator
from importlib.resources import as_file, files
from pathlib import Path
from types import SimpleNamespace

import pytest
from typer.testing import CliRunner

from audit.cli.app import app


@pytest.fixture
def leg_audit():
    """Give a function that runs the command line and returns status, stdout and stderr."""

    def run(*arguments: object) -> SimpleNamespace:
        done = CliRunner().invoke(app, [str(one) for one in arguments], prog_name="leg-audit")
        return SimpleNamespace(status=done.exit_code, out=done.stdout, err=done.stderr)

    return run


@pytest.fixture
def course(tmp_path: Path, monkeypatch) -> Path:
    """Give the current folder, with the demo's plan, walk and log in it and nothing else."""
    with as_file(files("audit").joinpath("demo_course")) as folder:
        for name in ("plan.toml", "walk.gpx", "log.csv"):
            shutil.copy(folder / name, tmp_path)
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def heard_interruption() -> Iterator[None]:
    """Let programs that a test starts hear Ctrl-C.

    What runs in the background has it ignored, and all that it starts, unless it is heard.
    """
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)
