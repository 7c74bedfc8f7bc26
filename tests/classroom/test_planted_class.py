"""A class of 40 graded from its files: the page says each thing that was planted in it."""

from __future__ import annotations

import re
import subprocess
import sys

import pytest
from classes import make_class, write_class
from classes.class_written import valid_class
from classes.members import FORMULA
from lxml import html

SEED = 100_301


@pytest.fixture(scope="module")
def made():
    return make_class(SEED, legs=4, interval_s=5.0)


@pytest.fixture(scope="module")
def folder(made, tmp_path_factory):
    at = tmp_path_factory.mktemp("graded")
    files = write_class(made, at)
    subprocess.run(
        [sys.executable, "-m", "audit", "grade", *files.plans, at / "recordings",
         "--roster", files.roster, "--jobs", "2", "--out", at / "class"],
        check=True, capture_output=True, text=True, timeout=900,
    )  # fmt: skip
    return at / "class"


@pytest.fixture(scope="module")
def document(folder):
    return valid_class(folder)


@pytest.fixture(scope="module")
def page(folder):
    return html.fromstring((folder / "class.html").read_text(encoding="utf-8"))


def findings(document, what):
    return [one for one in document["findings"] if one["what"] == what]


def by_file(document, file):
    return next(one for one in document["walkers"] if one["track"].startswith(file[:3]))


def test_the_page_says_every_finding_in_full(document, page):
    told = [" ".join(one.text_content().split()) for one in page.cssselect(".finding, .question")]
    assert sorted(told) == sorted(" ".join(one["message"].split()) for one in document["findings"])
    assert len(page.cssselect(".matrix tbody tr")) == len(document["walkers"]) == 42


def test_misplaced_point_is_said_with_its_place_and_left_out(made, document):
    (fault,) = findings(document, "point-misplaced")
    lane = next(one for one in document["course"]["lanes"] if one["name"] == fault["lane"])
    leg = next(one for one in lane["legs"] if one["name"] == fault["leg"])
    assert leg["to"] == made.misplaced
    place = re.search(r"\((\d+) m east, (\d+) m south", fault["message"])
    assert (int(place[1]), int(place[2])) == pytest.approx((85, 70), abs=8)
    for walker in document["walkers"]:
        for one in walker["legs"]:
            assert one["left_out"] == (
                (walker["lane"], one["name"]) == (fault["lane"], leg["name"])
            )


def test_bad_compass_is_asked_about_and_no_other(made, document):
    asked = findings(document, "compass-reads-wrong")
    assert [f"Compass {made.bad_compass}:" in one["message"] for one in asked] == [True]


def test_swapped_pair_is_asked_about_and_nobody_else(made, document):
    swapped = {one.member.name for one in made.walks if one.member.holds}
    asked = findings(document, "other-lane")
    names = {walker["ident"]: walker["name"] for walker in document["walkers"]}
    assert {names[ident] for one in asked for ident in one["walkers"]} == swapped


def test_follower_is_asked_about_and_nobody_else(made, document):
    follower = next(one.member for one in made.walks if one.member.follows)
    asked = findings(document, "walked-together")
    assert [one["message"].startswith(f"Did {follower.name} walk with") for one in asked] == [True]


def test_broken_file_is_asked_for_again(made, document):
    broken = next(one.member.name for one in made.walks if one.member.broken)
    (asked,) = findings(document, "broken-file")
    assert broken in asked["message"]


def test_name_that_is_a_formula_stands_as_it_is(page):
    names = [one.text_content() for one in page.cssselect(".matrix tbody th")]
    assert sum(FORMULA in name for name in names) == 1


def test_every_link_of_the_page_leads_to_a_file(folder, page):
    links = {one.get("href").split("#")[0] for one in page.cssselect(".matrix a")}
    assert links
    assert {link for link in links if not (folder / link).is_file()} == set()


def test_legs_that_the_links_name_are_in_the_debrief(folder, page):
    link = page.cssselect("a.cell")[-1].get("href")
    name, leg = link.split("#")
    assert html.parse(str(folder / name)).getroot().get_element_by_id(leg) is not None
