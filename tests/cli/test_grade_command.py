"""`leg-audit grade` as a user runs it: files told apart, kept, stopped, taken up again."""

from __future__ import annotations

import datetime as dt
import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from classes.class_written import files_of, valid_class

ROOT = Path(__file__).resolve().parents[2]
NAMES = ("Adder", "Bittern")


@pytest.fixture
def class_files(course: Path) -> Path:
    """The demo's walk twice over, and a roster; one file is broken, one name a formula."""
    text = (course / "walk.gpx").read_text(encoding="utf-8")
    (course / "recordings").mkdir()
    for number in range(1, 3):
        own = text.replace("</metadata>", f"<keywords>{number}</keywords></metadata>")
        (course / "recordings" / f"R{number}.gpx").write_text(own, encoding="utf-8")
    (course / "recordings" / "R4.gpx").write_text("<gpx><trk>", encoding="utf-8")
    rows = [f"{name},R{number}" for number, name in enumerate(NAMES, start=1)]
    (course / "roster.csv").write_text(
        "name,device\n" + "\n".join(rows) + "\n\"=cmd|'/c calc'!A1\",R4\n", encoding="utf-8"
    )
    return course


def test_the_class_is_written_whole_and_the_same_whatever_the_jobs(class_files, leg_audit):
    one = leg_audit("grade", "plan.toml", "recordings", "--roster", "roster.csv",
                    "--out", "one", "--jobs", "1")  # fmt: skip
    assert one.status == 0, one.err
    two = leg_audit("grade", "recordings", "plan.toml", "--roster", "roster.csv",
                    "--out", "two", "--jobs", "2")  # fmt: skip
    assert two.status == 0, two.err
    assert one.out == two.out
    assert files_of(class_files / "one") == files_of(class_files / "two")
    document = valid_class(class_files / "one")
    assert [walker["verdict"] for walker in document["walkers"]] == [
        *[document["walkers"][0]["verdict"]] * 2, "no-evidence"
    ]  # fmt: skip
    assert "broken-file" in [finding["what"] for finding in document["findings"]]
    for walker in document["walkers"]:
        for page in walker["pages"]:
            assert (class_files / "one" / page).is_file()
    assert (class_files / "one" / "debriefs" / "Adder" / "debrief.html").is_file()


def test_a_second_run_takes_up_what_is_done_and_a_changed_file_is_done_anew(class_files, leg_audit):
    asked = ("grade", "plan.toml", "recordings", "--roster", "roster.csv", "--out", "out",
             "--jobs", "1")  # fmt: skip
    assert leg_audit(*asked).status == 0
    first = files_of(class_files / "out")
    again = leg_audit(*asked)
    assert "3 of 3 walkers are done already" in again.err
    assert files_of(class_files / "out") == first
    page = class_files / "out" / "debriefs" / "Bittern" / "debrief.html"
    page.write_text("spoilt", encoding="utf-8")
    assert "2 of 3 walkers are done already" in leg_audit(*asked).err
    assert files_of(class_files / "out") == first
    (class_files / "out" / "debriefs" / "Zander").mkdir()
    standard = leg_audit(*asked, "--standard", "night-course")
    assert "done already" not in standard.err
    assert "holds 1 that are not of this class" in standard.err
    assert len(list((class_files / "out" / ".kept").iterdir())) == 3


@pytest.mark.usefixtures("heard_interruption")
def test_ctrl_c_keeps_what_is_done_and_the_next_run_goes_on(class_files):
    for number in range(5, 10):
        shutil.copy(class_files / "recordings" / "R1.gpx",
                    class_files / "recordings" / f"R{number}.gpx")  # fmt: skip
    command = [sys.executable, "-m", "audit", "grade", "plan.toml", "recordings", "--out", "out",
               "--jobs", "2"]  # fmt: skip
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.PIPE, "text": True,
             "env": {**os.environ, "PYTHONPATH": str(ROOT)}, "cwd": class_files}  # fmt: skip
    running = subprocess.Popen(command, **quiet)
    kept = class_files / "out" / ".kept"
    for _ in range(1200):
        if kept.is_dir() and any(kept.glob("*.json")):
            break
        time.sleep(0.1)
    running.send_signal(signal.SIGINT)
    _, said = running.communicate(timeout=120)
    assert running.returncode == 130, said
    assert "Traceback" not in said
    assert "The same command goes on from there" in said
    assert not (class_files / "out" / "class.json").exists()
    done = len(list(kept.glob("*.json")))
    assert 1 <= done < 8
    again = subprocess.run(command, check=True, **quiet)
    assert f"{done} of 8 walkers are done already" in again.stderr
    assert len(valid_class(class_files / "out")["walkers"]) == 8


def test_private_leaves_no_name_anywhere(class_files, leg_audit):
    done = leg_audit("grade", "plan.toml", "recordings", "--roster", "roster.csv",
                     "--out", "out", "--jobs", "1", "--private")  # fmt: skip
    assert done.status == 0, done.err
    for path, content in files_of(class_files / "out").items():
        assert not any(name in path for name in NAMES)
        if not path.endswith(".xlsx"):
            for secret in (*NAMES, "R1.gpx", "R4.gpx", "2026-09-19T1"):
                assert secret.encode() not in content, (path, secret)
    assert not (class_files / "out" / ".kept").exists()
    assert valid_class(class_files / "out")["private"]


@pytest.mark.parametrize(
    ("arguments", "status", "said"),
    [
        (["recordings"], 2, "There is no plan among these files"),
        (["plan.toml"], 2, "There is no recording among these files"),
        (["plan.toml", "nowhere.gpx"], 3, "nowhere.gpx: there is no such file"),
        (["plan.toml", "walk.gpx", "--standard", "dawn"], 3, "day-course, night-course"),
        (["plan.toml", "walk.gpx", "--roster", "plan.toml"], 3, "plan.toml"),
        (["plan.toml", "walk.gpx", "--shift", "soon"], 2, "no shift of a clock"),
        (["plan.toml", "walk.gpx", "--jobs", "0"], 2, "--jobs"),
    ],
)
@pytest.mark.usefixtures("class_files")
def test_wrong_use_is_told_in_a_sentence(leg_audit, arguments, status, said):
    done = leg_audit("grade", *arguments, "--out", "out")
    assert (done.status, "Traceback" in done.err) == (status, False)
    assert said in done.err
    assert not Path("out").exists()


def test_a_gpx_with_route_and_track_is_the_plan_only_where_it_comes_first(course):
    from audit.cli.plans_and_tracks import sort_files

    both = course / "both.gpx"
    both.write_text('<gpx><rte><rtept lat="1" lon="1"/></rte><trk><trkseg>'
                    '<trkpt lat="1" lon="1"/></trkseg></trk></gpx>', encoding="utf-8")  # fmt: skip
    walk, plan = course / "walk.gpx", course / "plan.toml"
    first = sort_files([both, walk])
    assert (first.plans, first.tracks) == ((both,), (walk,))
    later = sort_files([plan, both, walk])
    assert (later.plans, later.tracks) == ((plan,), (both, walk))
    assert all("both.gpx" in one.said[0] for one in (first, later))


def test_another_class_in_the_folder_is_told_before_it_is_replaced(class_files, leg_audit):
    """Bug: a second day's class took the place of the first with no word."""
    asked = ("grade", "plan.toml", "recordings", "--roster", "roster.csv", "--jobs", "1")
    assert "takes its place" not in leg_audit(*asked).err
    before = json.loads((class_files / "class" / "class.json").read_text(encoding="utf-8"))
    assert "takes its place" not in leg_audit(*asked).err  # the same again
    other = leg_audit(*asked, "--standard", "practice-circuit")
    (said,) = [line for line in other.err.splitlines() if "takes its place" in line]
    assert before["name"] in said
    assert before["fingerprint"] in said
    assert before["walkers"][0]["began"][:10] in said
    (class_files / "class" / "class.json").write_text("{", encoding="utf-8")
    assert "no class that could be read" in leg_audit(*asked).err


def test_the_same_plan_and_names_on_another_day_are_another_class(class_files, leg_audit):
    asked = ("grade", "plan.toml", "recordings/R1.gpx", "--jobs", "1")
    leg_audit(*asked)
    walk = class_files / "recordings" / "R1.gpx"
    text = walk.read_text(encoding="utf-8")
    day = re.search(r"<time>(\d{4}-\d\d-)(\d\d)T", text)
    later = f"{int(day[2]) + 1:02d}"
    walk.write_text(text.replace(f"{day[1]}{day[2]}T", f"{day[1]}{later}T"), encoding="utf-8")
    assert f"of {day[1]}{day[2]} " in leg_audit(*asked).err


def test_a_class_that_walks_past_midnight_is_the_same_again(class_files, leg_audit):
    """Bug: the day of its middle fix was held against the day on which it set out."""
    walk = class_files / "recordings" / "R1.gpx"
    text = walk.read_text(encoding="utf-8")
    times = [dt.datetime.fromisoformat(one) for one in re.findall(r"<time>([^<]*)</time>", text)]
    begun = min(times)
    late = begun.replace(hour=23, minute=30, second=0)
    text = re.sub(
        r"<time>([^<]*)</time>",
        lambda one: f"<time>{dt.datetime.fromisoformat(one[1]) - begun + late:%FT%TZ}</time>",
        text,
    )
    walk.write_text(text, encoding="utf-8")
    asked = ("grade", "plan.toml", "recordings/R1.gpx", "--jobs", "1")
    assert leg_audit(*asked).status == 0
    assert "takes its place" not in leg_audit(*asked).err


@pytest.mark.usefixtures("class_files")
def test_clocks_that_cannot_be_put_by_the_start_are_told(leg_audit):
    """Bug: --shift start without a roster did nothing and said nothing."""
    asked = ("grade", "plan.toml", "recordings/R1.gpx", "--shift", "start", "--jobs", "1")
    assert "without a roster" in leg_audit(*asked, "--out", "one").err
    roster = ("--roster", "roster.csv", "--out", "two")
    assert "no row of the roster has a start" in leg_audit(*asked, *roster).err


def test_a_folder_of_plans_stands_for_its_plans(class_files, leg_audit):
    """Bug: refused as a folder without a recording, though the manual lets folders be given."""
    plans = class_files / "plans"
    plans.mkdir()
    shutil.copy(class_files / "plan.toml", plans / "lane-1.toml")
    shutil.copy(class_files / "plan.toml", plans / "lane-2.toml")
    shutil.copy(class_files / "roster.csv", plans / "roster.csv")
    (plans / "standard.toml").write_text('name = "x"', encoding="utf-8")
    done = leg_audit("grade", "plans", "recordings", "--jobs", "1", "--out", "out")
    assert done.status == 0, done.err
    lanes = valid_class(class_files / "out")["course"]["lanes"]
    assert [lane["name"] for lane in lanes] == ["lane-1", "lane-2"]
    shutil.copy(class_files / "plan.toml", class_files / "recordings" / "old.toml")
    beside = leg_audit("grade", "plan.toml", "recordings", "--jobs", "1", "--out", "out-2")
    assert "old.toml left aside" in beside.err
    assert len(valid_class(class_files / "out-2")["course"]["lanes"]) == 1


def test_a_recording_of_no_day_is_told_of_its_walker_and_the_class_goes_on(course, leg_audit):
    """Bug: one recording without times ended a class whose plan has neither date nor angle."""
    text = (course / "walk.gpx").read_text(encoding="utf-8")
    (course / "bare.gpx").write_text(re.sub("<time>[^<]*</time>", "", text), encoding="utf-8")
    (course / "unset.gpx").write_text(text.replace("2026-09-19T", "1970-01-01T"), encoding="utf-8")
    plan = (course / "plan.toml").read_text(encoding="utf-8")
    plan = re.sub(r"(?m)^(date|grid_magnetic_angle_deg) = .*$", "", plan)
    (course / "plan.toml").write_text(plan, encoding="utf-8")
    done = leg_audit("grade", "plan.toml", "walk.gpx", "bare.gpx", "unset.gpx",
                     "--out", "class", "--jobs", "1")  # fmt: skip
    assert done.status == 0, done.err
    verdicts = {one["name"]: one["verdict"] for one in valid_class(course / "class")["walkers"]}
    assert verdicts["walk"] == "pass"
    assert verdicts["bare"] == verdicts["unset"] == "no-evidence"
