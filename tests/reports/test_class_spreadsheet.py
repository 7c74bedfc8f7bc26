"""Spreadsheets of a class, read back by another library: numbers, frozen headings, no formula."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import openpyxl
import pytest
from classroom.hand_made import lane, track

from audit.classroom.grade_class import grade
from audit.readers.standard_file import SHIPPED_STANDARDS, read_standard
from audit.reports.class_files import class_texts
from audit.reports.class_rows import standard_sheet
from audit.reports.spreadsheet_cells import tame
from audit.roster import Roster, RosterEntry
from audit.words import Words, spoken

NAMES = ('=HYPERLINK("x","y")', "+1", "-2+3", "@SUM(A1)", "\uff1d1+1", " =1", "Zoë; Ångström")


@pytest.fixture(scope="module")
def result():
    places = ((600.0, 100.0), (900.0, -500.0))
    plan = lane("east", *places).plan
    roster = Roster(entries=tuple(RosterEntry(name=name, device=f"={n}=")
                                  for n, name in enumerate(NAMES)))  # fmt: skip
    one = grade({"east": plan}, [track((0.0, 0.0), *places, source="t.gpx")],
                read_standard("day-course"),
                roster=Roster(entries=(RosterEntry(name=NAMES[0], files=("t.gpx",)),)))  # fmt: skip
    many = grade({"east": plan}, [], read_standard("day-course"), roster=roster)
    return replace(many, walkers=(*one.walkers, *many.walkers[1:]))


@pytest.fixture(scope="module")
def book(result):
    return openpyxl.load_workbook(io.BytesIO(class_texts(result)["class.xlsx"]))


def test_a_cause_is_told_in_words(book):
    """Bug: the sheet for people called ordinary error "within-skill"."""
    cells = {str(cell.value) for row in book["points"] for cell in row}
    assert "ordinary error" in cells
    assert "within-skill" not in cells


def test_every_sheet_has_frozen_headings_and_a_filter(book):
    assert book.sheetnames == ["walkers", "points", "legs", "lanes", "findings", "standard"]
    for sheet in book:
        assert sheet.freeze_panes == "B2"
        assert sheet.auto_filter.ref


def test_the_sources_of_shipped_standards_are_told_in_german(result):
    """Bug: the German spreadsheet had the sources of the standard in English."""
    for name in SHIPPED_STANDARDS:
        standard = read_standard(name)
        english = {source for _, source in standard.sources}
        of_it = replace(result, standard=standard)
        assert english <= {row[2] for row in standard_sheet(of_it).rows}
        with spoken(Words(language="de")):
            told = {row[2] for row in standard_sheet(of_it).rows}
        assert english & told == set()
    own = replace(standard, sources=(("order", "agreed by us"),))
    with spoken(Words(language="de")):
        assert "agreed by us" in {
            row[2] for row in standard_sheet(replace(result, standard=own)).rows
        }


def test_no_cell_is_a_formula_and_none_begins_like_one(book):
    for sheet in book:
        for row in sheet.iter_rows():
            for cell in row:
                assert cell.data_type != "f"
                if isinstance(cell.value, str):
                    assert not cell.value.lstrip().startswith(("=", "+", "-", "@", "\uff1d"))


def test_numbers_are_numbers_with_a_format(book, result):
    sheet = book["points"]
    heading = [cell.value for cell in sheet[1]]
    first = dict(zip(heading, sheet[2], strict=True))
    leg = result.walkers[0].legs[0]
    assert first["nearest_m"].value == pytest.approx(leg.point.approach.distance_m)
    assert first["nearest_m"].number_format == "0.0"
    assert first["cause_probability"].number_format == "0%"
    assert first["point"].value == "east1"
    began = book["walkers"].cell(2, [c.value for c in book["walkers"][1]].index("began") + 1)
    assert began.is_date


def test_the_csv_holds_the_same_points_and_no_formula(result):
    rows = list(csv.DictReader(io.StringIO(class_texts(result)["class.csv"])))
    assert len(rows) == sum(len(walker.legs) for walker in result.walkers)
    assert rows[0]["name"] == "'" + NAMES[0]
    assert all(not row["name"].lstrip().startswith(("=", "+", "-", "@")) for row in rows)
    assert float(rows[0]["nearest_m"]) < 30.0
    assert rows[-1]["name"] == NAMES[-1]


def test_the_same_class_gives_the_same_bytes(result):
    assert class_texts(result) == class_texts(result)


@pytest.mark.parametrize("text", ["Adder", "a=b", "1", "", "Zoë"])
def test_what_is_no_formula_stays(text):
    assert tame(text) == text
