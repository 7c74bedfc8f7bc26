"""`leg-audit guide` as somebody without a network uses it."""

from __future__ import annotations


def test_without_a_topic_it_lists_them(leg_audit):
    done = leg_audit("guide")
    assert (done.status, done.err) == (0, "")
    assert "causes" in done.out
    assert "cautions" in done.out


def test_a_page_is_shown(leg_audit):
    done = leg_audit("guide", "reciprocal")
    assert done.status == 0
    assert done.out.startswith("reciprocal: the back azimuth walked, 180° out\n")
    assert "Five-minute exercise\n---" in done.out


def test_a_topic_that_is_none_is_wrong_use(leg_audit):
    done = leg_audit("guide", "recipro")
    assert (done.status, done.out) == (2, "")
    assert "Perhaps reciprocal" in done.err


def test_help_shows_an_example(leg_audit):
    assert "leg-audit guide causes" in leg_audit("guide", "--help").out
