"""What is said of known weaknesses: as pip-audit tells them, and "not checked" where it cannot."""

from __future__ import annotations

import subprocess

import pytest
from dependencies import known_weaknesses
from dependencies.known_weaknesses import Told, ask, read_answer
from dependencies.oldest_versions import oldest, requirements

# The shape of its "json" format, as pip-audit's README gives it.
ANSWER = {
    "dependencies": [
        {"name": "jinja2", "version": "3.1.4", "vulns": [
            {"id": "PYSEC-0", "fix_versions": ["3.1.5"], "aliases": [], "description": ""}]},
        {"name": "pyproj", "version": "3.6.1", "vulns": [
            {"id": "PYSEC-1", "fix_versions": [], "aliases": [], "description": ""}]},
        {"name": "pytest", "version": "9.0", "vulns": [
            {"id": "PYSEC-2", "fix_versions": ["9.1"], "aliases": [], "description": ""}]},
        {"name": "numpy", "version": "2.4.6", "vulns": []},
        {"name": "mgrs", "skip_reason": "Dependency not found"},
    ],
    "fixes": [],
}  # fmt: skip


def test_what_users_need_and_could_be_mended_is_to_mend():
    told = read_answer(ANSWER, {"jinja2", "pyproj", "numpy", "mgrs"})
    assert (told.checked, told.not_checked, len(told.weak)) == (4, 1, 3)
    assert told.to_mend == ("jinja2",)
    assert told.weak[0] == "jinja2 3.1.4: PYSEC-0, mended in 3.1.5"
    assert told.weak[1].endswith("not mended yet")


@pytest.mark.parametrize("said", ["", "ConnectionError: nobody answers"])
def test_without_an_answer_nothing_was_checked_and_nothing_fails(monkeypatch, said):
    def no_network(*_: object, **__: object) -> subprocess.CompletedProcess[str]:
        return subprocess.CompletedProcess([], 1, stdout="", stderr=said)

    monkeypatch.setattr(subprocess, "run", no_network)
    told = ask(["a==1", "b==2"])
    assert (told.checked, told.not_checked, told.to_mend) == (0, 2, ())
    assert told.why


def test_it_ends_badly_only_where_something_can_be_mended(monkeypatch, capsys):
    monkeypatch.setattr(known_weaknesses, "ask", lambda _: Told(not_checked=3, why="no network"))
    known_weaknesses.main()
    assert "not checked: 3 (no network)" in capsys.readouterr().out
    monkeypatch.setattr(known_weaknesses, "ask", lambda _: read_answer(ANSWER, {"jinja2"}))
    with pytest.raises(SystemExit, match="jinja2"):
        known_weaknesses.main()


def test_every_library_that_users_need_has_a_lower_bound():
    assert len([oldest(one) for one in requirements()]) > 15
