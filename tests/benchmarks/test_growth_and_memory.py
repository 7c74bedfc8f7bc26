"""Speed as it can be checked on any machine: work that is counted, and memory, never time.

Times, and the ratios of times, depend on what else a machine does; they are measured by
``python -m benchmarks``, beside those of gpxpy and expat, and kept.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from unittest import mock

from benchmarks import company, growth, large_file
from benchmarks.__main__ import RECORDED, kept_of, table
from benchmarks.suite import AIMS, LEAST
from benchmarks.whole_command import run_python
from benchmarks.whole_growth import calls_to_read, counted, grown, in_own_process, read
from reports.sample_debrief import sample_debrief

from audit.reports import picture
from audit.reports.html_report import render_html
from audit.settings.class_shows import ClassShowsSettings

ROOT = Path(__file__).resolve().parents[2]


def test_reading_grows_no_faster_than_the_recording_and_holds_little():
    small, large = (in_own_process(calls_to_read, fixes) for fixes in (10_000, 60_000))
    assert large < 1.2 * 6.0 * small
    # Seven columns of eight bytes, held twice while the places are looked at, and the pieces.
    assert in_own_process(read, (200_000, 1))["bytes_a_fix"] < 2 * 56 + 150


def test_the_work_of_a_debrief_grows_no_faster_than_the_recording():
    small, large = (in_own_process(counted, fixes) for fixes in (10_000, 40_000))
    assert large["calls"] < 1.2 * 4.0 * small["calls"]
    # Three rounds of the course are weighed as one walk, then by halves; and the shorter
    # recording ends before it comes to the last legs.
    assert large["portions"] < 4.0 * 4.0 * small["portions"]


def test_the_debrief_holds_little():
    large, huge = (in_own_process(grown, (fixes, 1)) for fixes in (60_000, 1_000_000))
    # Four rounds and more as one walk: what is laid out of it, and what is worked out of one
    # leg after the other. Two thousand where all portions were held as all legs at once.
    assert large["bytes_a_fix"] < 300.0
    # The cleaned track is six columns of eight bytes; cleaning holds it twice, with what is
    # measured of its steps. Of so long a recording matching weighs one round at a time.
    assert huge["bytes_a_fix"] < 150.0


def test_matching_grows_little_faster_than_legs_and_recording_together():
    some, many = (in_own_process(growth.weighed, (420 * legs + 60, legs)) for legs in (30, 100))
    # In one area: the more legs, the more of each other's ways they cross.
    assert many["portions"] < 1.5 * 100 / 30 * some["portions"]
    # All portions as all legs would take 400 MB.
    assert many["mb"] < 200.0


def test_looking_for_company_grows_with_the_pairs_of_a_class_and_no_faster():
    """Bug: of walkers who really walk together the work grew with the fourth power."""
    compared, pairs = company.compared(20)
    # Each pair as it is; and either way round, once for every step of time between two starts.
    apart = 2 * company.WITHIN_S / ClassShowsSettings().step_s + 2
    assert compared <= pairs * (1 + 2 * apart)


def test_a_large_recording_is_debriefed_in_little_memory(shared_tracks):
    assert shared_tracks.is_dir()
    assert large_file.figures(1)["debrief_mb"] < AIMS["large.peak_mb"]


def test_help_and_wrong_use_load_nothing_heavy():
    heavy = {"numpy", "pyproj", "jinja2", "vl_convert", "xml", "sqlalchemy"}
    for words in (["--help"], ["debrief"], ["debrief", "--help"]):
        code = (
            "import sys\nfrom audit.cli import main\n"
            f"sys.argv = ['leg-audit', *{words!r}]\n"
            "try:\n    main()\nexcept SystemExit:\n    pass\n"
            "print(*sorted(sys.modules), file=sys.stderr)"
        )
        done = subprocess.run(
            [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
        )
        assert heavy & set(done.stderr.split()) == set(), words


def test_a_page_draws_each_picture_once():
    debrief = sample_debrief()
    walked = sum(leg.audit.measures is not None for leg in debrief.legs)
    with (
        mock.patch.object(picture, "still", side_effect=picture.still) as drawn,
        mock.patch("vl_convert.vega_to_svg", side_effect=AssertionError),
    ):
        render_html(debrief)
    assert drawn.call_count == 3 + 3 * walked


def test_the_table_sets_figures_beside_those_that_were_kept():
    runs = [{"commit": "abc", "figures": {"a": 2.0}}, {"commit": "def", "figures": {"a": 4.0}}]
    assert kept_of(runs, None)["commit"] == "def"
    assert kept_of(runs, "ab")["commit"] == "abc"
    told = table({"a": 1.0, "large.peak_mb": 300.0, "new": 5.0}, runs[1])
    rows = {line.split()[0]: line.split()[1:] for line in told.splitlines()[1:]}
    assert rows["a"] == ["1.000", "4.000", "0.25"]
    assert rows["large.peak_mb"][-2:] == ["OVER", "250"]
    assert rows["new"] == ["5.000"]


def test_what_was_kept_is_kept_by_commit_and_covers_the_aims():
    runs = json.loads(RECORDED.read_text(encoding="utf-8"))
    commits = [run["commit"] for run in runs]
    assert len(set(commits)) == len(commits) >= 1
    assert set(runs[-1]["figures"]) >= {*AIMS, *LEAST}


def test_the_peak_of_a_command_is_its_own_and_not_that_of_who_started_it():
    held = bytearray(b"1") * 300_000_000
    assert run_python(["-c", ""])["peak_mb"] < 60.0
    del held
