"""A walk kept by debrief, its trend, and its deletion, as whole commands."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path

import pytest
from typer.testing import CliRunner

from audit.cli.app import app

DEMO = Path(__file__).resolve().parents[2] / "audit" / "demo_course"
NAME = "Tilly Example"
"""No digits of a pseudonym spell it: three letters up to f are found in one of 60 by chance."""


def run(*arguments):
    return CliRunner().invoke(app, [str(one) for one in arguments])


def kept(folder, *options):
    files = (DEMO / "plan.toml", DEMO / "walk.gpx", "--log", DEMO / "log.csv")
    done = run("debrief", *files, "--only", "json", "--out", folder / "out",
               "--records", folder / "school.db", "--walker", NAME, *options)  # fmt: skip
    assert done.exit_code == 0, done.stderr
    return done.stderr


@pytest.fixture(scope="module")
def school(tmp_path_factory):
    folder = tmp_path_factory.mktemp("school")
    assert "Kept in the records: 1 attempt." in kept(folder)
    return folder


def test_the_trend_is_what_the_debrief_measured(school):
    done = run("trend", "tilly example", "--records", school / "school.db", "--json")
    assert done.exit_code == 0, done.stderr
    (light,) = json.loads(done.stdout)["lights"]
    legs = json.loads((school / "out" / "debrief.json").read_text())["legs"]
    assert light["light"] == "day"  # an afternoon in September, on the demo's course
    ordinary = [one["azimuth_error_deg"] for one in legs if one["name"] != "6"]
    heading = light["attempts"][0]["heading_deg"]["value"]
    assert heading == pytest.approx(sum(ordinary) / len(ordinary), abs=1e-9)
    causes = {one["cause"]: one["legs"] for one in light["causes"]}
    told = sum(c["probability"] for leg in legs for c in leg["causes"]
               if c["cause"] == "gm-angle-omitted")  # fmt: skip
    assert causes["gm-angle-omitted"] == pytest.approx(told, abs=1e-9)


def test_the_same_walk_again_is_not_kept_twice(school):
    assert "0 attempts; 1 kept already" in kept(school)


def test_a_private_result_is_kept_without_the_hour_and_counts_as_the_same_walk(tmp_path):
    """Bug: begin and end stood in the records to the second under --private too."""
    assert "1 attempt" in kept(tmp_path, "--private")
    assert "0 attempts; 1 kept already" in kept(tmp_path, "--private")
    with sqlite3.connect(tmp_path / "school.db") as records:
        row = "SELECT walked_on, begun_s, ended_s FROM leg_audit_attempt"
        assert records.execute(row).fetchall() == [("2026-09-19", None, None)]
    assert "0 attempts; 1 kept already" in kept(tmp_path)  # with its times it is the same result
    done = run("trend", NAME, "--records", tmp_path / "school.db", "--json")
    assert json.loads(done.stdout)["attempts"] == 1


def test_the_records_hold_no_name_and_no_file(school):
    bytes_ = (school / "school.db").read_bytes().lower()
    for word in (b"tilly", b"example", b"walk.gpx"):
        assert word not in bytes_
    with sqlite3.connect(school / "school.db") as connection:
        (walker,) = connection.execute("SELECT walker FROM leg_audit_attempt").fetchone()
    done = run("trend", walker, "--records", school / "school.db")
    assert done.stdout.startswith(f"{walker}: 1 attempt\n")


def test_the_page_is_written(school):
    done = run("trend", NAME, "--records", school / "school.db", "--out", school / "tilly")
    assert done.exit_code == 0
    assert {path.name for path in (school / "tilly").iterdir()} == {"trend.html", "trend.json"}


def test_an_unknown_walker_and_no_records_are_refused(school, tmp_path):
    for arguments in (("Nobody", school / "school.db"), (NAME, tmp_path / "no.db")):
        done = run("trend", arguments[0], "--records", arguments[1])
        assert done.exit_code == 3
        assert len(done.stderr.splitlines()) == 1


def test_what_cannot_be_kept_is_said_before_the_walk_is_debriefed(tmp_path):
    done = run("debrief", DEMO / "plan.toml", DEMO / "walk.gpx", "--out", tmp_path / "out",
               "--records", "mysql://host/school", "--walker", NAME)  # fmt: skip
    assert done.exit_code == 3
    assert "mysql is a kind of database" in done.stderr
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--records", "school.db"), "whose walk is it?"),
        (("--walker", NAME), "go with --records"),
        (("--records", "s.db", "--walker", NAME, "--keep-until", "2020-01-01"), "has passed"),
        (("--records", "s.db", "--walker", NAME, "--keep-until", "soon"), "is no day like"),
    ],
)
def test_options_that_make_no_sense(options, words, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    done = run("debrief", DEMO / "plan.toml", DEMO / "walk.gpx", *options)
    assert done.exit_code == 2
    assert words in done.stderr
    assert list(tmp_path.iterdir()) == []


def test_nothing_is_forgotten_of_records_that_are_not_there(tmp_path):
    """Whoever mistyped their name would believe the walks gone."""
    for more in ([], ["--walker", "Tilly"], ["--before", "2030-01-01"]):
        done = run("forget", "--records", str(tmp_path / "scool.db"), *more)
        assert (done.exit_code, done.stdout) == (3, "")
        assert "scool.db: is not there." in done.stderr
    assert list(tmp_path.iterdir()) == []


def test_records_without_a_name_are_refused():
    for blank in ("", "  "):
        for command in (["trend", "Tilly"], ["forget"]):
            done = run(*command, "--records", blank)
            assert done.exit_code in (2, 3)
            assert "--records" in done.stderr
            assert "names no file" in done.stderr


def test_forgetting(tmp_path):
    address = tmp_path / "school.db"
    kept(tmp_path, "--keep-until", "2999-12-31")
    assert "all else stays" in run("forget", "--records", address).stdout
    assert "1 attempt deleted" in run("forget", "--records", address, "--walker", NAME).stdout
    assert run("trend", NAME, "--records", address).exit_code == 3
    kept(tmp_path)
    both = ("forget", "--records", address, "--walker", NAME, "--before")
    assert "0 attempts deleted" in run(*both, "2026-09-19").stdout
    gone = run("forget", "--records", address, "--before", "2026-09-20").stdout
    assert "walked before 2026-09-20: 1 attempt deleted" in gone


def test_a_secret_of_ones_own(tmp_path):
    secret = tmp_path / "secret.txt"
    secret.write_text("seven grey stones\n")
    kept(tmp_path, "--records-secret", secret)
    address = tmp_path / "school.db"
    assert run("trend", NAME, "--records", address).exit_code == 3
    assert run("trend", NAME, "--records", address, "--records-secret", secret).exit_code == 0
    secret.write_text("\n")
    done = run("trend", NAME, "--records", address, "--records-secret", secret)
    assert "secret.txt: is empty" in done.stderr


def test_one_walk_of_a_walker_is_forgotten_by_its_number(tmp_path):
    """Bug: a walk kept under the wrong name could go only with all that its walker had."""
    kept(tmp_path)
    kept(tmp_path, "--private")  # the same result, and kept already
    records = ("--records", tmp_path / "school.db")
    assert run("forget", *records, "--attempt", "1").exit_code == 2
    missing = run("forget", *records, "--walker", NAME, "--attempt", "2")
    assert missing.exit_code == 2
    assert "hold 1" in missing.stderr
    done = run("forget", *records, "--walker", NAME, "--attempt", "1")
    assert done.exit_code == 0, done.stderr
    assert "attempt 1, of 2026-09-19" in done.stdout
    assert run("trend", NAME, *records).exit_code == 3
