"""What is written before a walk and over many walks does no harm when it is opened either."""

from __future__ import annotations

import csv
import json
import re
import shutil
import zipfile
from pathlib import Path

import pytest
from hostile.evil_course import EVIL, assert_printable, run
from lxml import etree, html
from openpyxl import load_workbook

HARMFUL_TAGS = {"img", "iframe", "object", "embed", "form", "base", "link", "foreignObject"}
AREA = """{"type":"FeatureCollection","features":[{"type":"Feature","properties":
{"kind":"no-go","name":"</script><img src=x onerror=alert(1)>\\u202e=1+1"},"geometry":
{"type":"Polygon","coordinates":[[[-84.2295,36.632],[-84.229,36.632],[-84.229,36.633],
[-84.2295,36.632]]]}}]}"""
UNSHOWN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")


def assert_page_is_still(path: Path, scripts: int = 0) -> None:
    """A page whose names are text: no tag, no handler, no address of elsewhere came from them."""
    text = path.read_text(encoding="utf-8")
    page = html.fromstring(text)
    tags = [str(one.tag) for one in page.iter() if isinstance(one.tag, str)]
    assert HARMFUL_TAGS & set(tags) == set()
    assert tags.count("script") == scripts
    assert [name for one in page.iter() for name in one.attrib if name.startswith("on")] == []
    assert not UNSHOWN.search(text)
    addresses = [one.get(name) or "" for one in page.iter() for name in ("href", "src", "action")]
    assert [one for one in addresses if ":" in one and not one.startswith("data:image")] == []


def assert_cells_are_text(path: Path) -> None:
    with path.open(newline="", encoding="utf-8") as file:
        cells = [cell for row in csv.reader(file) for cell in row]
    risky = [cell for cell in cells if re.match(r"\s*[=+\-@\t\r＝＋－＠]", cell)]
    assert [cell for cell in risky if not re.fullmatch(r"-?[\d.]+(e-?\d+)?", cell)] == []
    assert not UNSHOWN.search(path.read_text(encoding="utf-8"))


def strict(path: Path) -> None:
    def no_constant(word: str) -> None:
        pytest.fail(f"{word} is not JSON")

    text = path.read_text(encoding="utf-8")
    json.loads(text, parse_constant=no_constant)
    assert not UNSHOWN.search(text)


@pytest.mark.parametrize("ending", [".html", ".txt"])
def test_the_card_carries_names_as_text(evil, tmp_path, ending):
    out = tmp_path / f"card{ending}"
    note = "<script>alert(1)</script>\x9b31m\u202e"
    status, said = run("card", evil / "plan.toml", "--out", out, "--safety-grid-azimuth", "90",
                       "--safety-note", note)  # fmt: skip
    assert status in (0, 1), said
    assert_printable(said)
    if ending == ".html":
        assert_page_is_still(out)
        assert "{{7*7}}" in out.read_text()
    else:
        assert_printable(out.read_text())


def test_the_card_as_pdf_reads_no_file_and_runs_nothing(evil, tmp_path):
    pytest.importorskip("typst")
    out = tmp_path / "card.pdf"
    status, said = run("card", evil / "plan.toml", "--out", out)
    assert status in (0, 1), said
    data = out.read_bytes()
    assert [word for word in (b"/JavaScript", b"/Launch", b"/EmbeddedFile") if word in data] == []
    assert b"root:" not in data


def test_a_forecast_and_a_check_for_programs_are_strict(evil, tmp_path):
    for command in (["forecast"], ["check"]):
        status, said = run(*command, evil / "plan.toml", "--json")
        assert status in (0, 1)
        (tmp_path / "said.json").write_text(said, encoding="utf-8")
        strict(tmp_path / "said.json")


def test_a_rehearsal_keeps_names_as_text(evil, tmp_path):
    (tmp_path / "areas.geojson").write_text(AREA)
    status, said = run("rehearse", evil / "plan.toml", "--areas", tmp_path / "areas.geojson",
                       "--walk", "2=gm-angle-omitted", "--out", tmp_path / "out")  # fmt: skip
    assert status in (0, 1), said
    assert_printable(said)
    assert {one.name for one in tmp_path.iterdir()} == {"areas.geojson", "out"}
    assert_page_is_still(tmp_path / "out" / "rehearsal.html")
    for path in (tmp_path / "out").rglob("*"):
        if path.suffix in {".json", ".geojson"}:
            strict(path)
        elif path.suffix == ".gpx":
            etree.fromstring(path.read_bytes())


def test_lanes_keep_names_as_text(evil, tmp_path):
    shutil.copy(evil / "plan.toml", tmp_path / "=1+1.toml")
    shutil.copy(evil / "plan.toml", tmp_path / "<img src=x>\u202e.toml")
    (tmp_path / "areas.geojson").write_text(AREA)
    status, said = run("lanes", *sorted(tmp_path.glob("*.toml")), "--areas",
                       tmp_path / "areas.geojson", "--out", tmp_path / "out")  # fmt: skip
    assert status in (0, 1), said
    assert_printable(said)
    assert_page_is_still(tmp_path / "out" / "lanes.html")
    assert_cells_are_text(tmp_path / "out" / "lanes.csv")
    strict(tmp_path / "out" / "lanes.json")


def test_a_trend_keeps_names_as_text(evil, tmp_path):
    pytest.importorskip("sqlalchemy")
    records = ["--records", tmp_path / "school.db"]
    walker = "</script><img src=x>=1+1\x9b31m\u202e"
    status, said = run("debrief", evil / "plan.toml", evil / "walk.gpx", "--only", "json",
                       "--out", tmp_path / "o", *records, "--walker", walker)  # fmt: skip
    assert status == 0, said
    assert_printable(said)
    status, said = run("trend", walker, *records, "--out", tmp_path / "trend")
    assert status == 0, said
    assert_printable(said)
    assert_page_is_still(tmp_path / "trend" / "trend.html")
    strict(tmp_path / "trend" / "trend.json")
    assert "img src" not in (tmp_path / "school.db").read_bytes().decode("latin-1")


@pytest.fixture(scope="module")
def evil_class(evil, tmp_path_factory):
    folder = tmp_path_factory.mktemp("class")
    shutil.copy(evil / "plan.toml", folder)
    for number in range(2):
        text = (evil / "walk.gpx").read_text()
        own = text.replace("</metadata>", f"<keywords>{number}</keywords></metadata>")
        (folder / f"{number}.gpx").write_text(own)
    (folder / "roster.csv").write_text(
        'name,lane,device,file,compass\n"=cmd|\'/c calc\'!A1","","@x",0.gpx,+1\n'
        '"../../<img src=x onerror=alert(1)>\x9b\u202e","","-y",1.gpx,"=2"\n',
        encoding="utf-8",
    )
    (folder / "punches.csv").write_text(
        f"name,point,code\n\"=cmd|'/c calc'!A1\",{EVIL['Two Pines']},=1+1\n", encoding="utf-8"
    )
    # So small a radius that most points are doubtful, and have a sheet to appeal with.
    (folder / "standard.toml").write_text(
        'name = "=1+1<script>alert(1)</script>\\u202e"\nradius_m = 0.5\n'
        '[sources]\nradius_m = "=1+1<img src=x>"\n'
    )
    status, said = run("grade", folder / "plan.toml", "--standard", folder / "standard.toml",
                       "--punches", folder / "punches.csv", folder / "0.gpx", folder / "1.gpx", "--jobs",
                       "1", "--roster", folder / "roster.csv", "--out", folder / "out",
                       "--name", "<script>alert(1)</script>=1+1\x9b\u202e")  # fmt: skip
    assert status == 0, said
    assert_printable(said)
    return folder


def test_the_pages_of_a_class_keep_names_as_text(evil_class):
    out = evil_class / "out"
    sheets = sorted((out / "appeals").glob("*.html"))
    assert sheets
    for page in (out / "class.html", *sheets):
        assert_page_is_still(page)
    assert_cells_are_text(out / "class.csv")
    strict(out / "class.json")
    inside = {one.name for one in evil_class.iterdir()}
    assert inside == {
        "plan.toml",
        "0.gpx",
        "1.gpx",
        "roster.csv",
        "punches.csv",
        "standard.toml",
        "out",
    }
    names = [one.name for one in out.rglob("*")]
    assert [name for name in names if not re.fullmatch(r"[\w.][\w. \-]*", name)] == []


def test_the_sheets_of_a_class_hold_no_formula_and_no_link(evil_class):
    path = evil_class / "out" / "class.xlsx"
    book = load_workbook(path)
    cells = [cell for sheet in book for row in sheet.iter_rows() for cell in row]
    assert [cell.value for cell in cells if cell.data_type == "f"] == []
    assert [cell.hyperlink for cell in cells if cell.hyperlink] == []
    texts = [cell.value for cell in cells if isinstance(cell.value, str)]
    assert any("cmd|" in text for text in texts)
    assert [text for text in texts if UNSHOWN.search(text)] == []
    inside = zipfile.ZipFile(path).namelist()
    assert [name for name in inside if "externalLink" in name or "vba" in name.lower()] == []
