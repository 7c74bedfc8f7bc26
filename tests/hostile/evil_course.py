"""The demo with names that would do harm wherever they were taken for more than names."""

from __future__ import annotations

import shutil
from importlib.resources import as_file, files
from pathlib import Path

from typer.testing import CliRunner

from audit.cli.app import app

EVIL = {
    "Beech Knoll": "<script>alert(1)</script>",
    "Stone Ford": r"=1+1\u0085\u009b31mX\u202eY",
    "Spring Head": r"\"><img src=x onerror=alert(1)>",
    "Fern Rise": "]]>--></svg></style>'+alert(1)+'",
    "Flat Rock": r"datum.x\u007f'; @SUM(A1)",
    "Two Pines": "+cmd|' /C calc'!A0",
    "Fernbank Plateau": r"</title><script>alert(2)</script>{{7*7}} #read(\"/etc/passwd\") \\\\",
}


def write_evil_course(folder: Path) -> None:
    """Write plan, walk and log of the demo, all names made hostile."""
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for name in ("plan.toml", "walk.gpx", "log.csv"):
            shutil.copy(demo / name, folder)
    text = (folder / "plan.toml").read_text()
    for name, hostile in EVIL.items():
        text = text.replace(name, hostile)
    (folder / "plan.toml").write_text(text)
    log = (folder / "log.csv").read_text().splitlines()
    log[1] += '"=HYPERLINK(""x"")\x9b2J"' if log[1].endswith(",") else ""
    (folder / "log.csv").write_text("\n".join(log))


def run(*arguments: object) -> tuple[int, str]:
    """Run a command; give its status, and all that it says."""
    done = CliRunner().invoke(app, [str(one) for one in arguments], prog_name="leg-audit")
    return done.exit_code, done.stdout + done.stderr


def assert_printable(text: str) -> None:
    assert {sign for line in text.split("\n") for sign in line if not sign.isprintable()} == set()
