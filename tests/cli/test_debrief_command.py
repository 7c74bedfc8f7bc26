"""leg-audit debrief: files in, files and a short debrief out, every refusal in sentences."""

from __future__ import annotations

import gzip
import json

import pytest

from audit.cli.options import REPORTS
from audit.reports.write import REPORT_KINDS

FILES = {"debrief.html", "debrief.json", "legs.csv", "debrief.geojson"}


def names(folder) -> set[str]:
    return {path.name for path in folder.iterdir()}


def document(folder) -> dict:
    return json.loads((folder / "debrief.json").read_text())


def test_a_debrief_writes_its_files_and_tells_the_short_debrief(leg_audit, course):
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--log", "log.csv", "--out", "here")
    assert done.status == 0
    assert names(course / "here") == FILES
    # The result is all that stands on standard output; where it went is a message.
    assert done.out.startswith("Fernbank Plateau, compass afternoon\n")
    assert "7 of 7 legs walked" in done.out
    assert "here/debrief.html" in done.err
    assert "here/" not in done.out
    assert document(course / "here")["legs"][0]["walked"]["paces_from"] == "log"


def test_the_folder_is_named_after_the_recording(leg_audit, course):
    (course / "Ida's walk.GPX.gz").write_bytes(gzip.compress((course / "walk.gpx").read_bytes()))
    assert leg_audit("debrief", "plan.toml", "walk.gpx", "--only", "json").status == 0
    assert leg_audit("debrief", "plan.toml", "Ida's walk.GPX.gz", "--only", "json").status == 0
    assert (
        names(course / "walk-debrief") == names(course / "Ida's walk-debrief") == {"debrief.json"}
    )


def test_only_the_reports_asked_for_are_written_and_other_files_stay(leg_audit, course):
    (course / "out").mkdir()
    (course / "out" / "mine.txt").write_text("kept")
    done = leg_audit(
        "debrief", "plan.toml", "walk.gpx", "--out", "out", "--only", "csv", "--only", "JSON"
    )
    assert done.status == 0
    assert names(course / "out") == {"mine.txt", "legs.csv", "debrief.json"}
    assert "browser" not in done.err


def test_the_command_knows_the_reports_that_the_writers_know():
    assert REPORTS == REPORT_KINDS


def test_everything_on_request(leg_audit, course):
    done = leg_audit(
        "debrief", "plan.toml", "walk.gpx", "--only", "json", "--out", "all",
        "--pdf", "--paper", "Letter", "--overlay", "1:25 000", "--gpx", "--pictures", "--private",
    )  # fmt: skip
    assert done.status == 0, done.err
    made = names(course / "all")
    assert {"debrief.json", "debrief.pdf", "overlay.pdf", "debrief.gpx", "map.svg"} <= made
    assert f"{sum(name.endswith(('.svg', '.png')) for name in made)} pictures" in done.err
    track = document(course / "all")["track"]
    assert track["source"] == ""
    assert track["start"] == "1970-01-01T00:00:00Z"
    assert "note: Private: " in done.err


@pytest.mark.usefixtures("course")
def test_a_private_debrief_beside_older_results_says_so(leg_audit):
    """Bug: the folder was shared for private, with the walker's own report still in it."""
    leg_audit("debrief", "plan.toml", "walk.gpx", "--only", "csv", "--out", "out")
    done = leg_audit(
        "debrief", "plan.toml", "walk.gpx", "--only", "json", "--private", "--out", "out"
    )
    assert "out also holds legs.csv, which this run did not write" in done.err.replace("\n", " ")
    again = leg_audit("debrief", "plan.toml", "walk.gpx", "--private", "--out", "new")
    assert "also holds" not in again.err


def test_private_results_are_not_named_after_the_recording(leg_audit, course):
    (course / "jo-bloggs.gpx").write_bytes((course / "walk.gpx").read_bytes())
    done = leg_audit("debrief", "plan.toml", "jo-bloggs.gpx", "--only", "json", "--private")
    assert done.status == 0
    assert names(course / "private-debrief") == {"debrief.json"}
    assert "bloggs" not in (course / "private-debrief" / "debrief.json").read_text().lower()


@pytest.mark.parametrize(
    ("words", "status", "said"),
    [
        (("--overlay", "10000"), 2, "25000 or 1:50000"),
        (("--paper", "papyrus"), 2, "choose from a4, letter"),
        # Bug: a paper for nothing that goes on paper was taken without a word.
        (("--paper", "letter"), 2, "--paper goes with --pdf or --overlay."),
        (("--ground", "no-such.tif"), 3, "there is no such file"),
    ],
)
def test_what_cannot_be_had_on_request_is_refused(leg_audit, course, words, status, said):
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--only", "json", *words)
    assert done.status == status
    assert said in " ".join(done.err.replace("\u2502", " ").split())
    assert not (course / "walk-debrief").exists()


def test_settings_of_the_course_come_from_options_where_a_plan_cannot_carry_them(leg_audit, course):
    rows = [
        "leg,from,to,from_position,to_position,distance_m",
        "1,Gate,Beech Knoll,16S GF 4832 5828,16S GF 4865 5865,500",
        "2,Beech Knoll,Stone Ford,,16S GF 4908 5915,660",
    ]
    (course / "plan.csv").write_text("\n".join(rows))
    done = leg_audit(
        "debrief", "plan.csv", "walk.gpx", "--only", "json", "--name", "Two legs",
        "--date", "2026-09-19", "--grid", "EPSG:32616", "--grid-magnetic-angle", "-7.5",
        "--paces-per-100m", "65", "--arrival-radius", "25",
    )  # fmt: skip
    assert done.status == 0, done.err
    said = document(course / "walk-debrief")["course"]
    assert said["name"] == "Two legs"
    assert (said["date"], said["date_from"]) == ("2026-09-19", "option")
    assert said["grid"] == "EPSG:32616"
    assert (said["grid_magnetic_angle_deg"], said["paces_per_100m"]) == (-7.5, 65.0)
    assert said["arrival_radius_m"] == 25.0
    assert document(course / "walk-debrief")["legs"][0]["planned"]["paces"] == 325


def test_an_option_comes_before_the_plan_and_says_so(leg_audit, course):
    done = leg_audit(
        "debrief", "plan.toml", "walk.gpx", "--only", "json", "--arrival-radius", "12"
    )  # fmt: skip
    assert document(course / "walk-debrief")["course"]["arrival_radius_m"] == 12.0
    assert "note: arrival_radius_m: 12.0 from the options, in place of 30 in the file." in done.err


def test_the_corridor_is_as_wide_as_is_asked_for(leg_audit, course):
    shares = []
    for width in ("5", "400"):
        done = leg_audit("debrief", "plan.toml", "walk.gpx", "--only", "json", "--corridor", width)
        assert done.status == 0, done.err
        walked = [leg["details"] for leg in document(course / "walk-debrief")["legs"]]
        lines = [details["planned_line"] for details in walked if details]
        assert {line["corridor_m"] for line in lines} == {float(width)}
        shares.append(sum(line["corridor_share"] for line in lines) / len(lines))
    assert shares[0] < shares[1] == 1.0


GPX_PLAN = """<?xml version="1.0"?>
<gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1">
<rte><name>Short</name><rtept lat="36.637767" lon="-84.222640"/>
<rtept lat="36.641014" lon="-84.218830"/></rte>
<rte><name>Long</name><rtept lat="36.637767" lon="-84.222640"/>
<rtept lat="36.641014" lon="-84.218830"/><rtept lat="36.645406" lon="-84.213870"/></rte>
</gpx>"""


def test_one_of_several_routes_is_picked(leg_audit, course):
    (course / "plan.gpx").write_text(GPX_PLAN)
    refused = leg_audit("debrief", "plan.gpx", "walk.gpx")
    assert refused.status == 3
    assert 'holds 2 routes: 1 "Short", 2 "Long"' in refused.err
    assert "with --route." in refused.err
    assert (
        leg_audit("debrief", "plan.gpx", "walk.gpx", "--only", "json", "--route", "Long").status
        == 0
    )
    assert len(document(course / "walk-debrief")["legs"]) == 2


def test_any_order_is_found_whatever_the_plan_says_of_its_legs(leg_audit, course):
    # The law: who may go in any order went as he went, however the points are listed.
    text = (course / "plan.toml").read_text()
    head, *points = text[: text.index("[[leg]]")].split("[[point]]")
    orders = []
    for listed in (points, [points[0], *reversed(points[1:])]):
        legs = text[text.index("[[leg]]") :]
        (course / "any.toml").write_text("[[point]]".join([head, *listed]) + legs)
        done = leg_audit(
            "debrief", "any.toml", "walk.gpx", "--any-order", "--only", "json", "--out", "any"
        )
        assert done.status == 0
        assert "in its legs (7) was put aside" in done.err
        found = document(course / "any")
        assert found["course"]["order"] == "free"
        orders.append([leg["name"] for leg in found["legs"]])
    walked = ["Beech Knoll", "Stone Ford", "Spring Head", "Fern Rise", "Flat Rock", "Two Pines"]
    assert orders == [walked, walked]  # as planted in the demo's walk


def test_boundaries_settled_by_hand(leg_audit, course):
    done = leg_audit(
        "debrief", "plan.toml", "walk.gpx", "--only", "json",
        "--claim", "2=17:35:48", "--from", "3=17:42Z",
    )  # fmt: skip
    assert done.status == 0
    assert "note: Leg 2: its claim at 17:35:48Z settled by hand." in done.err
    legs = document(course / "walk-debrief")["legs"]
    assert legs[1]["end"]["time"] == "2026-09-19T17:35:48Z"
    assert legs[2]["start"]["time"] == "2026-09-19T17:42:00Z"
    assert [leg["pinned"] for leg in legs[:4]] == [[], ["claim"], ["from"], []]


# Wrong use, and files that cannot be used


def test_every_problem_of_all_files_is_told_one_a_line(leg_audit, course):
    (course / "plan.toml").write_text('[course]\ndate = "soon"\npaces_per_100m = 6\n')
    (course / "log.csv").write_text("leg,paces\n1,many\n2,500\n2,480\n")
    done = leg_audit("debrief", "plan.toml", "nowhere.gpx", "--log", "log.csv")
    assert done.status == 3
    assert done.out == ""
    lines = done.err.splitlines()
    assert [line.split(",")[0].split(":")[0] for line in lines] == [
        "plan.toml", "plan.toml", "nowhere.gpx", "log.csv", "log.csv"
    ]  # fmt: skip
    assert names(course) == {"plan.toml", "walk.gpx", "log.csv"}


@pytest.mark.parametrize(("plan", "track"), [("walk.gpx", "plan.toml"), ("walk.gpx", "plan.gpx")])
def test_swapped_files_are_told_as_such(leg_audit, course, plan, track):
    (course / "plan.gpx").write_text(
        GPX_PLAN.replace("<rte><name>Long", "<!--").replace("</rte>\n</gpx>", "--></gpx>")
    )
    done = leg_audit("debrief", plan, track)
    assert done.status == 2
    assert f"{track} holds the plan and {plan} the recording" in done.err
    assert f"leg-audit debrief {track} {plan}" in done.err


def test_the_command_for_swapped_files_survives_a_blank(leg_audit, course):
    (course / "plan.toml").rename(course / "my plan.toml")
    done = leg_audit("debrief", "walk.gpx", "my plan.toml")
    assert "leg-audit debrief 'my plan.toml' walk.gpx" in done.err


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--date", "2026-13-01"], '--date: "2026-13-01" is not a date'),
        (["--grid", "EPSG:1"], "--grid: "),
        (["--grid-magnetic-angle", "270"], "--grid-magnetic-angle: 270.0 is out of range"),
        (["--grid-magnetic-angle", "nan"], "--grid-magnetic-angle: nan is not a finite number"),
        (["--paces-per-100m", "1000"], "--paces-per-100m: 1000.0 is out of range"),
        (["--arrival-radius", "0"], "--arrival-radius: 0.0 is out of range"),
        (["--corridor", "0"], "Invalid value for '--corridor'"),
        (["--route", "2"], '--route: "2" picks a route of a GPX file'),
        (["--paces-per-100m", "many"], "Invalid value for '--paces-per-100m'"),
        (["--only", "pdf"], 'there is no report "pdf"; choose from json, csv, geojson, html'),
        (["--from", "3"], '"3" is not the name of a leg, "=" and a time, like 3=09:15:30'),
        (["--claim", "3=noon"], '--claim: "3=noon" is no moment. Write a clock time'),
        (["--from", "12=18:00"], '--from: "12=18:00" is for leg "12", which the plan does not'),
        (["--from", "3=11:00"], "lies outside the recording, which runs from 2026-09-19T17:05"),
        (["--claim", "3=18:00", "--claim", "3=18:01"], "leg 3 has two times, 18:00 and 18:01"),
        (["--colour"], "No such option: --colour"),
        (["third.gpx"], "one too many"),
        (["--out", ""], "is empty"),  # Bug: the results went into the current folder.
    ],
)
def test_wrong_use_is_told_with_status_2(leg_audit, course, arguments, words):
    done = leg_audit("debrief", "plan.toml", "walk.gpx", *arguments)
    assert done.status == 2
    assert words in done.err
    assert "Traceback" not in done.err
    assert names(course) == {"plan.toml", "walk.gpx", "log.csv"}


def test_a_walk_elsewhere_is_refused(leg_audit, course):
    walk = (course / "walk.gpx").read_text().replace('lat="36.', 'lat="37.')
    (course / "walk.gpx").write_text(walk)
    done = leg_audit("debrief", "plan.toml", "walk.gpx")
    assert done.status == 3
    assert "comes no nearer than" in done.err
    assert names(course) == {"plan.toml", "walk.gpx", "log.csv"}


@pytest.mark.usefixtures("course")
def test_a_file_in_place_of_the_folder_is_refused(leg_audit):
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--only", "json", "--out", "log.csv")
    assert done.status == 2
    assert "a file stands where a folder is wanted" in done.err


def test_notes_of_the_log_and_entries_of_no_leg_are_told(leg_audit, course):
    (course / "log.csv").write_text("leg,paces\n1,330\ncar,12\n")
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--log", "log.csv", "--only", "json")
    assert done.status == 0
    assert (
        'note: The walker\'s log has entries for "car", which the plan has no leg for' in done.err
    )
    assert any("car" in note for note in document(course / "walk-debrief")["track"]["notes"])


# What a terminal must not be sent


def test_control_characters_of_files_never_reach_the_terminal(leg_audit, course):
    evil = "\\u001b[31mRed\\u0007 \\u202Eknoll"
    plan = (course / "plan.toml").read_text().replace("Beech Knoll", evil)
    (course / "plan.toml").write_text(plan)
    (course / "walk.gpx").rename(course / "wa\x1b[2Jlk.gpx")
    done = leg_audit("debrief", "plan.toml", "wa\x1b[2Jlk.gpx", "--only", "json")
    assert done.status == 0
    refused = leg_audit("debrief", "pl\x1ban", "wa\x07lk")
    assert refused.status == 3
    for text in (done.out, done.err, refused.out, refused.err):
        assert all(letter.isprintable() for line in text.splitlines() for letter in line)


def test_the_walkers_own_card_says_which_step_went_wrong(leg_audit, course):
    # Without references, and with one leg converted the wrong way.
    rows = "leg,magnetic_azimuth_deg,distance_m,paces\n1,34,500,325\n2,48,660,429\n"
    (course / "own.csv").write_text(rows)
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--card", "own.csv", "--only", "json")
    assert done.status == 0
    assert "leg 1: Converted: the card's magnetic azimuth 034.0" in done.out
    assert "says nothing of legs 3, 4, 5, 6 and 7" in done.err
    assert "names no" not in done.err
    document = json.loads((course / "walk-debrief" / "debrief.json").read_text())
    first, *_, last = document["legs"]
    assert "converted" in first["steps"]["entered"]
    assert "gm-angle-reversed" in first["steps"]["hops"][1]["slips"]
    assert last["steps"] is None


def test_a_card_that_cannot_be_read_is_refused_by_its_name(leg_audit, course):
    (course / "own.csv").write_text("leg,distance_m\n1,many\n")
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--card", "own.csv")
    assert done.status == 3
    assert "own.csv, line 2, distance_m" in done.err


@pytest.mark.parametrize("only", [["json,csv"], ["json", "--only", "CSV"], ["json", "csv"]])
def test_several_reports_are_asked_for_in_any_writing(leg_audit, course, only):
    """Bug: "Got unexpected extra argument(s) (csv)", "there is no report "json,csv""."""
    done = leg_audit("debrief", "plan.toml", "walk.gpx", "--out", "out", "--only", *only)
    assert done.status == 0, done.err
    assert names(course / "out") == {"debrief.json", "legs.csv"}


@pytest.mark.usefixtures("course")
@pytest.mark.parametrize("behind", [["more.gpx"], ["--only", "json", "more.gpx"], ["csv"]])
def test_what_stands_behind_the_recording_and_is_no_report_is_wrong_use(leg_audit, behind):
    done = leg_audit("debrief", "plan.toml", "walk.gpx", *behind)
    assert done.status == 2
    assert f'"{behind[-1]}" is one too many' in done.err
    assert "--only json,csv" in done.err
