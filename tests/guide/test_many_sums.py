"""The sums of the page on many tracks follow from the figures that stand on it."""

from __future__ import annotations

import re

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
    assert walk_s == pytest.approx(1.03)
    never_rest = 1e6 * walk_s / DAY_S
    assert round(never_rest) == 12
    assert round(never_rest / 0.6) == 20
    assert round(6 * 12 / 0.6) == 120
    memory = figure("memory of a process")
    assert (round(20 * memory), round(120 * memory)) == (7, 41)
    sent_mb = figure("sent to a worker") / 1e3 + figure("sent back")
    assert sent_mb == pytest.approx(1.22, abs=0.005)
    assert round(1e6 * sent_mb / DAY_S) == 14
    assert round(1e6 * sent_mb / (4 * 3600)) == 85


def test_records_of_a_day_and_a_year():
    kept_kb = figure("one attempt in the records")
    assert f"{kept_kb} GB a day" in TEXT
    assert round(kept_kb * 365 / 1e3) == 1
    assert round(1e6 / DAY_S) == 12
