"""The sums of the page on many tracks follow from the figures that stand on it."""

from __future__ import annotations

import re
from math import ceil

import pytest

from audit.guide.pages_on_file import topic_pages

TEXT = topic_pages()["many"].text
DAY_S = 86_400.0


def figure(words: str) -> float:
    found = re.search(rf"{words} +([\d.]+)", TEXT)
    assert found, words
    return float(found[1])


def test_processors_memory_and_network_of_a_day():
    walk_s = figure("looking through a recording") + figure("grading it, with its page")
    assert figure("1 000 000 x") == pytest.approx(walk_s)
    never_rest = 1e6 * walk_s / DAY_S
    by_day, by_four_hours = ceil(never_rest / 0.6), ceil(6.0 * never_rest / 0.6)
    assert f"so {ceil(never_rest)} that never rest, {by_day} at 60 %" in TEXT
    assert f"{ceil(6.0 * never_rest)}, or {by_four_hours} at 60 %" in TEXT
    memory = figure("memory of a process")
    assert f"{by_day} x {memory} GB = {by_day * memory:.0f} GB" in TEXT
    assert f"{by_four_hours} x {memory} GB = {by_four_hours * memory:.0f} GB" in TEXT
    sent_mb = figure("sent to a worker") / 1e3 + figure("sent back")
    assert f"= {sent_mb:.2f} TB a day, {1e6 * sent_mb / DAY_S:.0f} MB a" in TEXT
    assert f"within 4 hours {1e6 * sent_mb / (4 * 3600):.0f} MB a second" in TEXT


def test_records_of_a_day_and_a_year():
    kept_kb = figure("one attempt in the records")
    assert f"{kept_kb} GB a day, {kept_kb * 365 / 1e3:.1f} TB a year" in TEXT
    assert round(1e6 / DAY_S) == 12
