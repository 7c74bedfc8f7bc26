"""What is looked for in README.md is found: contents, anchors, headings, pages of the guide."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from docs.readme_parts import README, ROOT

from audit.guide.contents import guide_text
from audit.readers import (
    course_settings,
    leg_table,
    plan_csv,
    plan_toml,
    punch_file,
    roster_file,
    standard_file,
    walkers_log_file,
    words_file,
)

TEXT = README.read_text(encoding="utf-8")
PLAIN = re.sub(r"^```.*?^```$", "", TEXT, flags=re.MULTILINE | re.DOTALL)
HEADINGS = re.findall(r"^(#+) (.+)$", PLAIN, re.MULTILINE)

KEYS = {
    "log": walkers_log_file.LOG_COLUMNS,
    "plan in CSV": plan_csv.PLAN_COLUMNS,
    "course": course_settings.SETTING_KEYS,
    "point": plan_toml._POINT_KEYS,
    "leg": leg_table._LEG_KEYS,
    "roster": (*roster_file.ROSTER_COLUMNS, *roster_file._SAME),
    "codes": punch_file.PUNCH_COLUMNS,
    "standard": standard_file._KEYS,
    "words": (*words_file._KEYS, *words_file._UNITS),
}


def anchor(heading: str) -> str:
    """Give the anchor of a heading: small letters, hyphens for spaces, no other signs."""
    return re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-")


def test_the_anchor_of_a_heading():
    """As renderers of Markdown make them (common practice, no source)."""
    assert anchor("Two to keep, two to work on") == "two-to-keep-two-to-work-on"
    assert anchor("The walker's own card") == "the-walkers-own-card"


def test_every_link_leads_somewhere():
    anchors = {anchor(heading) for _, heading in HEADINGS}
    links = re.findall(r"\]\(([^)]+)\)", PLAIN)
    within = [link.removeprefix("#") for link in links if link.startswith("#")]
    assert len(within) > 20
    assert [link for link in within if link not in anchors] == []
    files = [link for link in links if not link.startswith(("#", "http"))]
    assert [link for link in files if not (ROOT / link).exists()] == []


def test_no_two_headings_have_one_anchor():
    anchors = [anchor(heading) for _, heading in HEADINGS]
    assert len(set(anchors)) == len(anchors)


def test_headings_are_a_tree():
    depths = [len(signs) for signs, _ in HEADINGS]
    assert depths[0] == 1
    assert depths.count(1) == 1
    assert all(2 <= one <= before + 1 for before, one in pairwise(depths))


def test_the_contents_lead_to_every_chapter():
    """The job and the two commands stand first; what may be left out is what everybody passes."""
    chapters = [heading for signs, heading in HEADINGS if signs == "##"]
    assert chapters[:2] == ["Two commands", "Contents"]
    contents = PLAIN.split("\n## Contents\n")[1].split("\n## ")[0]
    linked = set(re.findall(r"\(#([^)]+)\)", contents))
    assert {anchor(one) for one in chapters} - linked == {"two-commands", "contents", "licence"}


def test_every_page_of_the_guide_that_is_named_is_there():
    named = set(re.findall(r"`leg-audit guide ([a-z-]+)`", PLAIN))
    assert named
    assert all(guide_text(name) for name in named)


@pytest.mark.parametrize("kind", KEYS)
def test_every_column_and_key_of_a_file_is_told(kind):
    """Bug: a column of the roster, start_time, was read and told nowhere.

    What is told in degrees may be in mils, and that is told once.
    """
    told = set(re.findall(r"[a-z0-9_]+", TEXT))
    assert {"mil", "_mil"} & told
    untold = {key for key in KEYS[kind] if not {key, f"{key.removesuffix('_mil')}_deg"} & told}
    assert untold == set()
