"""A class graded on a cluster that loses a worker, and kept in records: the same as here."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from classes.class_written import files_of
from cluster.cluster_workers import started

import audit.cli.grade_files as grade_files_module

NAMES = ("Adder", "Bittern", "Curlew", "Dunlin", "Egret")


@pytest.fixture
def many(course: Path) -> Path:
    """The demo's walk for each walker, with a roster."""
    text = (course / "walk.gpx").read_text(encoding="utf-8")
    (course / "recordings").mkdir()
    for number, name in enumerate(NAMES):
        own = text.replace("</metadata>", f"<keywords>{number}</keywords></metadata>")
        (course / "recordings" / f"{name}.gpx").write_text(own, encoding="utf-8")
    rows = "".join(f"{name},{name}\n" for name in NAMES)
    (course / "roster.csv").write_text(f"name,device\n{rows}", encoding="utf-8")
    return course


def test_a_cluster_that_loses_a_worker_gives_the_same_bytes(many, leg_audit, tmp_path, monkeypatch):
    asked = ("grade", "plan.toml", "recordings", "--roster", "roster.csv")
    here = leg_audit(*asked, "--out", "here", "--jobs", "1")
    assert here.status == 0, here.err
    put_by, put = grade_files_module.put_by, []
    place = tmp_path / "cluster"
    place.mkdir()
    with started(place) as hands:

        def and_kill(work, folder):
            put.append(work.result.ident)
            put_by(work, folder)
            hands.workers[0].kill()  # it is at the next walker, or about to be

        monkeypatch.setattr(grade_files_module, "put_by", and_kill)
        there = leg_audit(*asked, "--out", "there", "--cluster", hands.address, "--jobs", "1")
    assert there.status == 0, there.err
    assert sorted(put) == sorted(NAMES)
    assert there.out == here.out
    assert files_of(many / "there") == files_of(many / "here")


def test_a_class_is_kept_by_walker_once_with_or_without_names(many, leg_audit):
    asked = ("grade", "plan.toml", "recordings", "--roster", "roster.csv", "--jobs", "1",
             "--records", "school.db")  # fmt: skip
    first = leg_audit(*asked, "--out", "class")
    assert "Kept in the records: 5 attempts." in first.err
    assert "0 attempts; 5 kept already" in leg_audit(*asked, "--out", "class").err
    assert "0 attempts; 5 kept already" in leg_audit(*asked, "--out", "hidden", "--private").err
    # The same walk debriefed alone is no second attempt.
    leg_audit("debrief", "plan.toml", "walk.gpx", "--only", "json", "--out", "alone",
              "--records", "school.db", "--walker", "curlew")  # fmt: skip
    told = json.loads(leg_audit("trend", "Curlew", "--records", "school.db", "--json").out)
    assert told["attempts"] == 1
    assert re.search("of walks that were done again", told["notes"][0])
    legs = json.loads((many / "alone" / "debrief.json").read_text())["legs"]
    ordinary = [one["azimuth_error_deg"] for one in legs]  # without a log none is named
    heading = told["lights"][0]["attempts"][0]["heading_deg"]["value"]
    assert heading == pytest.approx(sum(ordinary) / len(ordinary), abs=1e-9)
    document = (many / "school.db").read_bytes().lower()
    assert not [name for name in NAMES if name.lower().encode() in document]


def test_asking_for_what_cannot_be(many, leg_audit):
    asked = ("grade", "plan.toml", "recordings")
    for options, words in (
        (("--keep-until", "2999-01-01"), "go with --records"),
        (("--records", "s.db", "--private"), "needs a roster"),
        (("--cluster", "tcp://127.0.0.1:9"), "is not the address of a scheduler"),
    ):
        done = leg_audit(*asked, *options)
        assert done.status in (2, 3)
        assert words in done.err
    assert not (many / "class").exists()
