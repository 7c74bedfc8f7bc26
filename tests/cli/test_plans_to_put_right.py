"""What is worked out with a plan that is not right says so first."""

from __future__ import annotations

from pathlib import Path

import pytest

FIRST = "1 thing to put right in east.toml: see leg-audit check east.toml"
PLAN = """
[course]
name = "East"
date = 2026-09-19
grid_magnetic_angle_deg = -7.5
[[point]]
name = "Gate"
position = "16S GF 4832 5828"
[[point]]
name = "Alder"
position = "16S GF 4865 5865"
[[leg]]
from = "Gate"
to = "Alder"
grid_azimuth_deg = 141.7
"""


@pytest.fixture
def wrong_plan(tmp_path: Path, monkeypatch) -> Path:
    """Give the current folder, with a plan whose leg has a grid azimuth 100 degrees off."""
    (tmp_path / "east.toml").write_text(PLAN)
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize(
    "command", [("lanes",), ("forecast",), ("rehearse", "--out", "out")], ids=lambda one: one[0]
)
@pytest.mark.usefixtures("wrong_plan")
def test_a_plan_with_something_to_put_right_is_told_of_first(leg_audit, command):
    """Bug: only check and card said so; lanes of a wrong azimuth were "nothing to look at"."""
    name, *options = command
    assert "1 thing to put right." in leg_audit("check", "east.toml").out
    assert leg_audit(name, "east.toml", *options).out.splitlines()[0] == FIRST


def test_the_pages_say_it_on_top(leg_audit, wrong_plan: Path):
    leg_audit("rehearse", "east.toml", "--out", "out")
    assert leg_audit("lanes", "east.toml", "--out", "out").status == 1
    for page in ("rehearsal.html", "lanes.html"):
        head, _ = (wrong_plan / "out" / page).read_text().split("</header>")
        assert FIRST in head
