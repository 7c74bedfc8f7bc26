"""A dotted key of a hundred parts and more is refused; full stops elsewhere are only text."""

from __future__ import annotations

import pytest
from readers.test_plan_toml import POINTS, problems_of, read


@pytest.mark.parametrize(
    "line",
    ["# " + "." * 101, 'name = "' + "." * 101 + '"', "name = '" + "a." * 101 + "' # " + "a." * 101],
)
def test_full_stops_in_a_comment_or_a_text_are_no_long_key(tmp_path, line):
    """Bug: a comment of 101 dots had a plan refused."""
    assert len(read(tmp_path, f"[course]\n{line}\n{POINTS}").points) == 3


@pytest.mark.parametrize("part", ["a", '"a.b"', "'#'", '"\\""', "a "])
@pytest.mark.parametrize(
    "where", ["{key} = 1", "[{key}]", "x = {{{key} = 1}}", 'x = 1 # " \n{key} = 1']
)
def test_a_key_of_many_parts_is_refused_wherever_it_stands(tmp_path, part, where):
    (problem,) = problems_of(tmp_path, where.format(key=".".join([part] * 200)))
    assert "more than 100 full stops" in problem
