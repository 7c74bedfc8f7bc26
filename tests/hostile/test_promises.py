"""Every promise of the guide's page on safety has tests, and the page names where they are."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

PAGE = files("audit.guide").joinpath("pages", "safety.md").read_text("utf-8")
HERE = Path(__file__).parent
TESTED = {
    "a file is only read": [
        "test_no_debrief_is_written_over_what_it_was_made_from",
        "test_inputs_that_may_only_be_read_are_enough",
    ],
    "nothing is fetched": ["test_the_attacks_that_defusedxml_knows_are_refused"],
    "little time and memory": [
        "test_a_plan_made_to_harm_is_one_sentence",
        "test_any_other_file_made_to_harm_is_one_sentence",
        "test_a_packed_bomb_is_met_on_the_way",
        "test_more_points_than_anyone_records_are_refused",
    ],
    "counts as\nmissing": ["test_heights_of_no_place_on_earth_are_missing"],
    "old or new, never half": [
        "test_killed_at_any_moment_a_result_is_the_old_or_the_new_one",
        "test_a_full_disk_leaves_what_was_there",
    ],
    "names stay names": [
        "test_no_name_becomes_a_part_of_the_page",
        "test_no_name_becomes_a_part_of_a_picture",
    ],
    "cells stay text": [
        "test_no_cell_runs_as_a_formula",
        "test_no_beginning_of_a_formula_survives_in_a_cell",
    ],
    "inside the folder": [
        "test_no_name_of_a_result_leaves_its_folder",
        "test_no_name_of_a_class_leaves_its_folder_or_acts",
        "test_a_link_in_the_folder_is_replaced_and_not_followed",
    ],
    "no process stays behind": ["test_a_killed_class_leaves_no_process_behind"],
    "plain text on the screen": [
        "test_no_command_sends_the_terminal_more_than_text",
        "test_a_file_name_neither_breaks_a_line_nor_steers_the_terminal",
    ],
}


def test_each_promise_of_the_page_has_its_tests() -> None:
    written = "\n".join(path.read_text("utf-8") for path in HERE.glob("test_*.py"))
    there = set(re.findall(r"^def (test_\w+)", written, re.MULTILINE))
    for promise, tests in TESTED.items():
        assert promise in PAGE
        assert set(tests) <= there, promise


def test_no_promise_is_without_tests() -> None:
    """A promise is what stands indented, from the left margin on."""
    promised = re.findall(r"^ {4}(\S.*?) {2,}", PAGE, re.MULTILINE)
    assert promised
    assert set(promised) <= set(TESTED)


def test_the_page_names_files_that_there_are() -> None:
    named = set(re.findall(r"test_\w+\.py", PAGE))
    assert named
    assert named <= {path.name for path in HERE.glob("test_*.py")}
