"""Reports on disk: whole or not at all."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from pathlib import Path

import pytest
from reports.sample_debrief import sample_debrief

from audit.errors import OutputRefusedError
from audit.reports.write import REPORT_KINDS, write_reports, write_texts

NAMES = {
    "html": "debrief.html",
    "json": "debrief.json",
    "csv": "legs.csv",
    "geojson": "debrief.geojson",
}


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


def test_all_reports_in_a_new_folder(debrief, tmp_path):
    folder = tmp_path / "a" / "b"
    paths = write_reports(debrief, folder)
    assert {path.name for path in paths} == set(NAMES.values())
    assert {path.name for path in folder.iterdir()} == set(NAMES.values())
    assert all(path.stat().st_size > 500 for path in paths)


@pytest.mark.parametrize("kind", REPORT_KINDS)
def test_only_what_is_asked(debrief, tmp_path, kind):
    paths = write_reports(debrief, tmp_path, only=[kind])
    assert [path.name for path in paths] == [NAMES[kind]]
    assert [path.name for path in tmp_path.iterdir()] == [NAMES[kind]]


def test_other_files_stay_and_old_reports_are_replaced(debrief, tmp_path):
    (tmp_path / "notes.txt").write_text("mine")
    (tmp_path / "legs.csv").write_text("old")
    write_reports(debrief, tmp_path, only=["csv"])
    assert (tmp_path / "notes.txt").read_text() == "mine"
    assert (tmp_path / "legs.csv").read_text().startswith("leg,from,to,")


def test_files_have_the_rights_that_new_files_have(tmp_path):
    (tmp_path / "usual").touch()
    [path] = write_texts(tmp_path, {"x.txt": "x"})
    assert path.stat().st_mode == (tmp_path / "usual").stat().st_mode


def test_same_input_same_bytes(debrief, tmp_path):
    first = [path.read_bytes() for path in write_reports(debrief, tmp_path / "1")]
    second = [path.read_bytes() for path in write_reports(sample_debrief(), tmp_path / "2")]
    assert first == second


def test_file_in_place_of_the_folder(debrief, tmp_path):
    (tmp_path / "out").write_text("mine")
    for folder in (tmp_path / "out", tmp_path / "out" / "deeper"):
        with pytest.raises(OutputRefusedError, match=r"out.*: a file stands where a folder"):
            write_reports(debrief, folder, only=["json"])
    assert (tmp_path / "out").read_text() == "mine"


def test_folder_in_place_of_a_file(debrief, tmp_path):
    (tmp_path / "legs.csv").mkdir()
    with pytest.raises(OutputRefusedError, match=r"legs\.csv: a folder stands"):
        write_reports(debrief, tmp_path, only=["json", "csv"])
    assert [path.name for path in tmp_path.iterdir()] == ["legs.csv"]


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EACCES, errno.EROFS])
def test_failure_leaves_the_folder_as_it_was(tmp_path, monkeypatch, number):
    (tmp_path / "b.txt").write_text("old")
    synced = []

    def sync(descriptor):
        synced.append(descriptor)
        if len(synced) == 2:
            raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "fsync", sync)
    with pytest.raises(OutputRefusedError) as refused:
        write_texts(tmp_path, {"a.txt": "new", "b.txt": "new", "c.txt": "new"})
    assert os.strerror(number).lower() in str(refused.value)
    assert [path.name for path in tmp_path.iterdir()] == ["b.txt"]
    assert (tmp_path / "b.txt").read_text() == "old"


@pytest.mark.skipif(os.name != "posix", reason="needs the limits of a POSIX system")
def test_full_disk_for_real(tmp_path):
    """A file size limit of the system stands in for the full disk."""
    program = (
        "import resource, signal, sys\n"
        "from pathlib import Path\n"
        "from audit.errors import OutputRefusedError\n"
        "from audit.reports.write import write_texts\n"
        "signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096))\n"
        "try:\n"
        "    write_texts(Path(sys.argv[1]), {'small': 'x', 'large': 'x' * 100_000})\n"
        "except OutputRefusedError as refused:\n"
        "    print(refused)\n"
    )
    root = Path(__file__).resolve().parents[2]
    done = subprocess.run(
        [sys.executable, "-c", program, str(tmp_path)],
        capture_output=True, text=True, check=True, timeout=60,
        env={**os.environ, "PYTHONPATH": str(root), "LC_ALL": "C"},
    )  # fmt: skip
    assert "the results cannot be written: file too large" in done.stdout
    assert list(tmp_path.iterdir()) == []
