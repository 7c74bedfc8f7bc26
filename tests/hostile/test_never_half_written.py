"""Whatever happens to the program, a result is the old complete file or the new one."""

from __future__ import annotations

import os
import resource
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from hostile.killed import COMMAND, COMMANDS, ENVIRONMENT, STATEMENTS

from audit.cli import walker_work
from audit.errors import InputRefusedError, OutputRefusedError
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.readers.roster_file import read_roster
from audit.reports.write import write_texts
from audit.settings import Settings

LINUX = pytest.mark.skipif(sys.platform != "linux", reason="timers of Linux")
DEMO = ("plan.toml", "walk.gpx")
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
    assert kills <= result.kills <= kills + STATEMENTS
    looks = result.kills + result.finished
    if files:
        assert result.states["old"] + result.states["new"] == files * looks
    else:  # records that are begun and empty are records
        assert set(result.states) <= {"old", "between", "new"}


ROOM: dict[str, tuple[list[str], int, int]] = {
    "debrief": (["debrief", *DEMO, "--only", "json", "--only", "csv", "--out", "out"], 20_000, 2),
    "grade": (["grade", *DEMO, "--jobs", "1", "--out", "out"], 20_000, 2),
    "grade in processes": (["grade", *DEMO, "--jobs", "2", "--out", "out"], 20_000, 2),
    "card": (["card", "plan.toml", "--out", "out/debrief.json.html"], 3000, 2),
    "copy": (["copy", "plan.toml", "--out", "out/copy.gpx"], 300, 2),
    "records": (
        ["debrief", *DEMO, "--only", "csv", "--out", "other", "--records", "s.db", "--walker", "a"],
        20_000,
        3,
    ),
}
"""What is asked for, the room that there is for a file of it, and how it ends."""


@POSIX
@pytest.mark.parametrize("name", ROOM)
def test_a_full_disk_leaves_what_was_there(tmp_path, name):
    """A limit on the size of a file stands for the disk: both fail in the middle of a write."""
    arguments, room, status = ROOM[name]
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for file in DEMO:
            shutil.copy(demo / file, tmp_path)
    out = tmp_path / "out"
    out.mkdir()
    (out / "debrief.json").write_text("the old one")
    done = subprocess.run(
        [*COMMAND, *arguments],
        cwd=tmp_path, capture_output=True, text=True, check=False,
        env={**ENVIRONMENT, "PYTHONPATH": str(Path.cwd())},
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (room, room)),
    )  # fmt: skip
    assert done.returncode == status, done.stderr
    assert "cannot be written" in done.stderr
    assert "ake room" in done.stderr
    assert status == 3 or "Nothing was changed" in done.stderr
    assert [path.name for path in out.rglob("*") if path.is_file()] == ["debrief.json"]
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


@contextmanager
def nobody_s_rights(folder: Path) -> Iterator[None]:
    """Have the rights of a user without any: root may read and write everywhere."""
    if os.geteuid() != 0:
        yield
        return
    for above in (folder, *folder.parents):
        if above != Path("/"):
            above.chmod(above.stat().st_mode | 0o111)
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


@POSIX
def test_a_folder_that_may_only_be_read_is_one_sentence(tmp_path):
    folder = tmp_path / "results"
    folder.mkdir()
    (folder / "a").write_text("the old one")
    folder.chmod(0o555)
    with (
        nobody_s_rights(tmp_path),
        pytest.raises(OutputRefusedError, match=r"permission denied.*Nothing was changed"),
    ):
        write_texts(folder, {"a": "1"})
    with nobody_s_rights(tmp_path), pytest.raises(OutputRefusedError, match="cannot be made"):
        write_texts(folder / "deeper", {"a": "1"})
    assert (folder / "a").read_text() == "the old one"


@POSIX
@pytest.mark.parametrize("read", [read_plan, read_track, read_roster], ids=lambda one: one.__name__)
def test_a_file_that_may_not_be_read_is_one_sentence(tmp_path, read):
    path = tmp_path / "a.gpx"
    path.write_text("<gpx/>")
    path.chmod(0)
    with (
        nobody_s_rights(tmp_path),
        pytest.raises(InputRefusedError, match=r"may not be read|Permission denied"),
    ):
        read(path)


def test_a_recording_that_changes_in_a_class_is_told_and_not_kept(tmp_path, monkeypatch):
    path = tmp_path / "walk.gpx"
    path.write_text("<gpx/>")

    def read_and_change(changing: Path) -> None:
        changing.write_text("<gpx></gpx>")

    monkeypatch.setattr(walker_work, "read_track", read_and_change)
    told = walker_work.look(path, "walk.gpx", [], Settings())
    assert told.problem == "walk.gpx: changed while it was read. Grade it again."
    monkeypatch.setattr(walker_work, "read_track", Path.unlink)
    assert "changed while it was read" in walker_work.look(path, "walk.gpx", [], Settings()).problem


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
