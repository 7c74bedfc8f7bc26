"""How the process ends: quietly when interrupted, in one sentence when the program is at fault."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from audit.cli import debrief_files

ROOT = Path(__file__).resolve().parents[2]
COMMAND = [sys.executable, "-m", "audit"]
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT)}


def run(*arguments: str, **options) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [*COMMAND, *arguments],
        capture_output=True, text=True, timeout=60, env=ENVIRONMENT, check=False, **options,
    )  # fmt: skip


def break_it(monkeypatch, fault: BaseException) -> None:
    def broken(*_, **__):
        raise fault

    monkeypatch.setattr(debrief_files, "debrief", broken)


@pytest.mark.usefixtures("course")
def test_a_fault_of_the_program_is_told_without_a_traceback(leg_audit, monkeypatch):
    break_it(monkeypatch, ZeroDivisionError("legs by zero"))
    done = leg_audit("debrief", "plan.toml", "walk.gpx")
    assert done.status == 4
    assert done.out == ""
    first, second = done.err.splitlines()
    assert first == (
        "This is a fault of the program, not of your files: ZeroDivisionError: legs by zero"
    )
    assert "--traceback" in second


@pytest.mark.usefixtures("course")
def test_the_traceback_is_there_for_the_asking(leg_audit, monkeypatch):
    break_it(monkeypatch, ZeroDivisionError("legs by zero"))
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--traceback")
    assert done.status == 4
    assert done.err.startswith("Traceback")
    assert "in broken" in done.err
    assert "This is a fault of the program" in done.err.splitlines()[-1]


@pytest.mark.usefixtures("course")
def test_too_little_memory_is_no_fault_of_the_program(leg_audit, monkeypatch):
    break_it(monkeypatch, MemoryError())
    done = leg_audit("debrief", "plan.toml", "walk.gpx")
    assert (done.status, done.out) == (4, "")
    (said,) = done.err.splitlines()
    assert said.startswith("There is not enough memory for this.")


@pytest.mark.usefixtures("course")
def test_an_interruption_ends_quietly(leg_audit, monkeypatch):
    break_it(monkeypatch, KeyboardInterrupt())
    done = leg_audit("debrief", "plan.toml", "walk.gpx")
    assert (done.status, done.out, done.err) == (130, "", "")


@pytest.mark.skipif(os.name != "posix", reason="no named pipes elsewhere")
@pytest.mark.usefixtures("heard_interruption")
def test_ctrl_c_ends_the_process_quietly_and_leaves_nothing_half_written(course):
    os.mkfifo(course / "slow.gpx")
    command = [*COMMAND, "debrief", "plan.toml", "slow.gpx"]
    pipes = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
    with (
        subprocess.Popen(command, text=True, env=ENVIRONMENT, **pipes) as process,
        (course / "slow.gpx").open("w"),  # opens once the program reads, and gives it nothing
    ):
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)
    # Either way a shell reports 130.
    assert process.returncode in (130, -signal.SIGINT)
    assert (out, err) == ("", "")
    assert [path.name for path in course.rglob("*") if path.suffix == ".part"] == []


@pytest.mark.skipif(os.name != "posix", reason="pipes end otherwise elsewhere")
def test_a_reader_that_goes_away_is_no_error(course):
    arguments = " ".join([*COMMAND, "debrief", "plan.toml", "walk.gpx", "--only", "json"])
    done = subprocess.run(
        ["bash", "-c", f"{arguments} | true; echo ${{PIPESTATUS[0]}}"],
        capture_output=True, text=True, timeout=60, env=ENVIRONMENT, check=True,
    )  # fmt: skip
    assert done.stdout.strip() == "141"
    assert "rror" not in done.stderr
    assert "Exception" not in done.stderr
    assert (course / "walk-debrief" / "debrief.json").is_file()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.usefixtures("course")
def test_a_full_standard_output_is_told():
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(
            [*COMMAND, "debrief", "plan.toml", "walk.gpx", "--only", "json"],
            stdout=full, stderr=subprocess.PIPE, text=True, timeout=60, env=ENVIRONMENT, check=False,
        )  # fmt: skip
    assert done.returncode == 2
    assert "standard output cannot be written" in done.stderr
    assert "Traceback" not in done.stderr


UNHEARD = {
    "closed": "2>&-",
    "without a reader": "2> >(true)",
    "full": "2>/dev/full",
}


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("how", UNHEARD)
def test_where_nobody_hears_what_is_said_the_work_goes_on(course, how):
    """The status tells how it ended all the same, and results are where they were asked for."""
    for words, status in (
        ("grade plan.toml walk.gpx --jobs 1 --out class", 0),
        ("check missing.toml", 3),
    ):
        command = " ".join([*COMMAND, words])
        done = subprocess.run(
            ["bash", "-c", f"{command} {UNHEARD[how]}; echo status $?"],
            capture_output=True, text=True, timeout=120, env=ENVIRONMENT, check=True,
        )  # fmt: skip
        assert done.stdout.splitlines()[-1] == f"status {status}"
        assert done.stderr == ""
    assert (course / "class" / "class.json").is_file()


@pytest.mark.usefixtures("course")
def test_letters_that_the_terminal_lacks_do_not_stop_it():
    plain = {**ENVIRONMENT, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    done = subprocess.run(
        [*COMMAND, "debrief", "plan.toml", "walk.gpx", "--only", "json"],
        capture_output=True, text=True, timeout=60, env=plain, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "legs walked" in done.stdout


def test_an_unknown_command_is_wrong_use():
    for name in ("steer", "navigate"):
        done = run(name)
        assert done.returncode == 2
        assert f"No such command '{name}'" in done.stderr
        assert done.stdout == ""


def test_the_version_is_that_of_the_package():
    import audit

    done = run("--version")
    assert (done.returncode, done.stdout) == (0, f"leg-audit {audit.__version__}\n")


@pytest.mark.parametrize("command", [[], ["demo"], ["debrief"]])
@pytest.mark.parametrize("asked", ["-h", "--help"])
def test_help_shows_an_example(command, asked):
    done = run(*command, asked)
    assert done.returncode == 0
    assert done.stderr == ""
    assert "leg-audit " + (command[0] if command else "demo") in done.stdout.split("xample")[-1]
    assert max(map(len, done.stdout.splitlines())) <= 88


def test_no_command_shows_the_help_as_wrong_use():
    done = run()
    assert done.returncode == 2
    assert "Commands:" in done.stdout + done.stderr


def test_help_comes_at_once():
    """Within a quarter of a second of an empty interpreter, in processor time."""

    def seconds(*arguments: str) -> float:
        least = 9.0
        for _ in range(5):
            before = os.times()
            subprocess.run(
                [sys.executable, *arguments], env=ENVIRONMENT, check=True, capture_output=True
            )
            after = os.times()
            least = min(
                least,
                after.children_user - before.children_user
                + after.children_system - before.children_system,
            )  # fmt: skip
        return least

    assert seconds("-m", "audit", "--help") - seconds("-c", "pass") < 0.25  # s
