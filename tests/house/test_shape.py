"""The house keeps its shape: short files, short functions, telling names, one front door."""

from __future__ import annotations

import ast
import re
import tomllib
from collections import Counter
from pathlib import Path

import pytest

import audit

ROOT = Path(__file__).resolve().parents[2]
SOURCES = sorted((ROOT / "audit").rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
LONGEST_FILE = 400
LONGEST_TEST_FILE = 500
LONGEST_FUNCTION = 50
"""Lines of a function, its docstring left out."""
LONGER = {
    "audit/measurement/measure_leg.py: measure_leg": 60,  # one record filled in
    "audit/cli/debrief_command.py: debrief": 65,  # one parameter an option
    "audit/debriefing/debrief_walk.py: debrief": 52,  # every stage of the pipeline, in order
}
EMPTY_NAMES = {"utils", "util", "helpers", "helper", "core", "common", "misc", "base", "lib"}


def inside(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def lines(path: Path) -> int:
    return len(path.read_text(encoding="utf-8").splitlines())


def test_no_file_is_long():
    long = {inside(path): lines(path) for path in SOURCES}
    assert {name: n for name, n in long.items() if n > LONGEST_FILE} == {}
    tests = {inside(path): lines(path) for path in TESTS}
    assert {name: n for name, n in tests.items() if n > LONGEST_TEST_FILE} == {}


def test_no_function_is_long():
    long = {}
    for path in SOURCES:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                docstring = ast.get_docstring(node, clean=False) or ""
                length = (node.end_lineno or node.lineno) - node.lineno - docstring.count("\n")
                name = f"{inside(path)}: {node.name}"
                if length > LONGER.get(name, LONGEST_FUNCTION):
                    long[name] = length
    assert long == {}


def test_names_say_what_a_file_holds():
    words = {inside(path): set(path.stem.split("_")) for path in SOURCES}
    assert {name: found for name, of in words.items() if (found := of & EMPTY_NAMES)} == {}


def test_no_two_files_have_one_name():
    """Bug: six files were called records.py. The thresholds of a part go by the part's name."""
    parts = [path for path in SOURCES if path.parent.name != "settings"]
    times = Counter(path.stem for path in parts if path.stem not in {"__init__", "__main__"})
    assert [name for name, found in times.items() if found > 1] == []


def test_the_top_level_is_what_the_house_has():
    shown = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    made = {"leg-audit-demo", "build", "dist"}
    assert shown - made == {
        "README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "audit", "tests", "fixtures"
    }  # fmt: skip


def test_every_public_name_can_be_had():
    for name in audit.__all__:
        assert getattr(audit, name) is not None
    assert set(audit.__all__) <= set(dir(audit))
    with pytest.raises(AttributeError, match="no attribute 'walk'"):
        audit.walk  # noqa: B018


def test_the_version_stands_in_one_place():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    assert "version" not in project["project"]
    assert project["tool"]["hatch"]["version"]["path"] == "audit/__init__.py"
    assert re.fullmatch(r"\d+\.\d+\.\d+", audit.__version__)


def test_nothing_below_the_command_line_looks_at_clock_environment_or_folder():
    looks = re.compile(
        r"\b(?:time\.time|perf_counter|datetime\.now|date\.today|utcnow|os\.environ|getenv"
        r"|Path\.cwd|getcwd|Path\.home|expanduser)\b"
    )
    found = [
        f"{inside(path)}: {match}"
        for path in SOURCES
        if "cli" not in path.parts
        for match in looks.findall(path.read_text(encoding="utf-8"))
    ]
    assert found == []


def test_a_note_is_known_by_its_message_and_not_by_its_words():
    """Bug: a name with the word in it made a walk a simulated one. `says` knows a note."""
    looks = {"startswith", "endswith", "find", "index", "lower", "casefold", "split", "partition"}
    patterns = {"search", "match", "fullmatch", "findall"}

    def looked_into(node: ast.AST) -> bool:
        if isinstance(node, ast.Compare):
            within = [isinstance(one, ast.In | ast.NotIn) for one in node.ops]
            return any(
                of and is_note(one) for of, one in zip(within, node.comparators, strict=True)
            )
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)):
            return False
        called = node.func
        return (called.attr in looks and is_note(called.value)) or (
            called.attr in patterns and any(is_note(one) for one in node.args)
        )

    def is_note(node: ast.AST) -> bool:
        return isinstance(node, ast.Name) and node.id == "note"

    found = [
        f"{inside(path)}:{node.lineno}"
        for path in SOURCES
        if "words" not in path.parts
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if looked_into(node)
    ]
    assert found == []


def test_records_that_hold_arrays_are_compared_as_themselves():
    """Bug: two debriefs of one walk could not be compared: ValueError, the truth of an array."""
    compared = [
        f"{inside(path)}: {node.name}"
        for path in SOURCES
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.ClassDef)
        and any(is_compared(one) for one in node.decorator_list)
        and any(holds_array(one) for one in node.body)
    ]
    assert compared == []


def is_compared(decorator: ast.expr) -> bool:
    """Whether a decorator makes a dataclass that is compared field by field."""
    text = ast.unparse(decorator)
    return text.startswith("dataclass") and "eq=False" not in text


def holds_array(node: ast.stmt) -> bool:
    if not isinstance(node, ast.AnnAssign):
        return False
    left_out = node.value is not None and "compare=False" in ast.unparse(node.value)
    return not left_out and re.search(r"Array\b|NDArray", ast.unparse(node.annotation)) is not None


def test_no_path_or_address_of_a_machine_stands_in_the_code():
    address = re.compile(
        r"(?<![\w.])/(?:work|tmp|home|root)/|https?://(?!vega\.github\.io/schema|www\.w3\.org/)"
    )
    found = [
        f"{inside(path)}: {line.strip()}"
        for path in SOURCES
        for line in path.read_text(encoding="utf-8").splitlines()
        if address.search(line)
    ]
    assert found == []
