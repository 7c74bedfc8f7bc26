"""DEVELOPERS.md names what is there: files, layers, commands."""

from __future__ import annotations

import re
import shlex
import tomllib

from docs.readme_parts import ROOT

TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_every_path_is_there():
    paths = set(re.findall(r"`?\b((?:audit|tests|fixtures|\.ci)/[\w./-]*\w)", TEXT))
    assert len(paths) > 20
    assert {path for path in paths if not (ROOT / path).exists()} == set()


def test_the_picture_of_the_house_is_the_contract():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    layers = project["tool"]["importlinter"]["contracts"][0]["layers"]
    picture = re.search(r"```text\n(cli .*?)```", TEXT, re.DOTALL)
    assert picture
    drawn = [re.split(r"\s{2,}", line)[0] for line in picture[1].splitlines()]
    assert drawn == [there for there in map(_what_is_there, layers) if there]


def _what_is_there(layer: str) -> str:
    """Give a layer without the modules in brackets, which may come, that have not come yet."""
    names = [name.strip(" ()") for name in layer.split("|")]
    there = [n for n in names if (ROOT / "audit" / n).exists() or (ROOT / f"audit/{n}.py").exists()]
    return " | ".join(there)


def test_every_command_starts_a_program_that_is_there():
    commands = [
        line
        for block in re.findall(r"```sh\n(.*?)```", TEXT, re.DOTALL)
        for line in block.split("\n")
    ]
    for command in filter(None, commands):
        words = [word for word in shlex.split(command) if "=" not in word]
        assert words[0].startswith(".venv/bin/")
        if words[0].endswith("python"):
            program = words[1]
            if words[2:3] == ["pytest"]:
                asked = [word for word in words if word.startswith("tests/")]
                assert asked
                assert all((ROOT / one).exists() for one in asked), command
                continue
            if program == "-m":  # a module, or a package that is run
                module = words[2].replace(".", "/")
                program = f"tests/{module}.py" if "/" in module else f"tests/{module}/__main__.py"
            assert (ROOT / program).is_file(), command


def test_every_folder_of_the_tests_is_told():
    mirrored = {path.name for path in (ROOT / "audit").iterdir() if path.is_dir()}
    folders = {
        path.name
        for path in (ROOT / "tests").iterdir()
        if path.is_dir() and path.name != "__pycache__"
    }
    untold = {name for name in folders - mirrored if f"`tests/{name}" not in TEXT}
    assert untold - {"schema", "benchmarks"} == set()
