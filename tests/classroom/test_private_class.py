"""No name is left in what is told, and no word is spoilt by a short one."""

from __future__ import annotations

from audit.classroom.private_class import _told


def test_a_short_name_is_no_part_of_a_word():
    called = {"Al Oak": "Walker 2", "Al": "Walker 1", "a": "Walker 3", "R1.gpx": "recording 1"}
    told = _told("Al Oak and Al left all R1.gpx: a walk, R1.gpx2.", called)
    assert told == "Walker 2 and Walker 1 left all recording 1: Walker 3 walk, R1.gpx2."


def test_signs_in_a_name_are_only_signs():
    assert _told('The recording of =A1+("x") fits.', {'=A1+("x")': "Walker 1"}) == (
        "The recording of Walker 1 fits."
    )
