"""Whatever happens to the program, a result is the old complete file or the new one."""

from __future__ import annotations

import os
import resource
import shutil
import subprocess
import sys
import threading
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from hostile.killed import COMMAND, COMMANDS, ENVIRONMENT

from audit.errors import InputRefusedError, OutputRefusedError
from audit.readers.gpx_track import read_track
from audit.reports.write import write_texts

LINUX = pytest.mark.skipif(sys.platform != "linux", reason="timers of Linux")
POSIX = pytest.mark.skipif(os.name != "posix", reason="signals and limits of POSIX")


# By hand each has been killed 200 times: `python tests/hostile/killed.py`.
@LINUX
@pytest.mark.parametrize(
    ("command", "kills", "files"),
    [("card", 5, 1), ("debrief", 5, 5), ("records", 5, 1), ("begun-records", 5, None)],
)
def test_killed_at_any_moment_a_result_is_the_old_or_the_new_one(tmp_path, command, kills, files):
    result = COMMANDS[command](tmp_path, kills, 11)
    assert result.torn == []
    assert result.kills == kills
    looks = result.kills + result.finished
    if files:
        assert result.states["old"] + result.states["new"] == files * looks
    else:  # records that are begun and empty are records
        assert set(result.states) <= {"old", "between", "new"}


@POSIX
def test_a_full_disk_leaves_what_was_there(tmp_path):
    """A limit on the size of a file stands for the disk: both fail in the middle of a write."""
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for name in ("plan.toml", "walk.gpx"):
            shutil.copy(demo / name, tmp_path)
    out = tmp_path / "out"
    out.mkdir()
    (out / "debrief.json").write_text("the old one")
    done = subprocess.run(
        [*COMMAND, "debrief", "plan.toml", "walk.gpx", "--only", "json", "--only", "csv", "--out", "out"],
        cwd=tmp_path, capture_output=True, text=True, check=False,
        env={**ENVIRONMENT, "PYTHONPATH": str(Path.cwd())},
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000)),
    )  # fmt: skip
    assert done.returncode == 2
    assert "the results cannot be written" in done.stderr
    assert "Nothing was changed" in done.stderr
    assert [path.name for path in out.iterdir()] == ["debrief.json"]
    assert (out / "debrief.json").read_text() == "the old one"


def test_it_is_said_what_is_new_where_only_part_could_be_put_in_place(tmp_path, monkeypatch):
    put = Path.replace

    def fails_at_b(draft: Path, target: Path) -> Path:
        if target.name == "b":
            raise PermissionError(13, "Permission denied")
        return put(draft, target)

    monkeypatch.setattr(Path, "replace", fails_at_b)
    with pytest.raises(OutputRefusedError, match="Only a is new there"):
        write_texts(tmp_path, {"a": "1", "b": "2"})
    assert [path.name for path in tmp_path.iterdir()] == ["a"]


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_may_only_be_read_is_one_sentence(tmp_path):
    tmp_path.chmod(0o500)
    with pytest.raises(OutputRefusedError, match="cannot be"):
        write_texts(tmp_path, {"a": "1"})


def test_a_recording_that_changes_while_it_is_read_is_a_track_or_a_refusal(tmp_path):
    path = tmp_path / "walk.gpx"
    fix = '<trkpt lat="36.5" lon="-84.2"><time>2026-10-03T10:00:00Z</time></trkpt>'
    whole = f"<gpx><trk><trkseg>{fix * 20_000}</trkseg></trk></gpx>".encode()
    path.write_bytes(whole)
    stop = threading.Event()

    def keep_changing() -> None:
        while not stop.is_set():
            path.write_bytes(whole[: len(whole) // 3])
            path.write_bytes(b"")
            path.write_bytes(whole)

    other = threading.Thread(target=keep_changing)
    other.start()
    read = refused = 0
    try:
        for _ in range(15):
            try:
                assert 0 < len(read_track(path)) <= 20_000
                read += 1
            except InputRefusedError:
                refused += 1
    finally:
        stop.set()
        other.join()
    assert read + refused == 15
