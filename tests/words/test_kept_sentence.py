"""A sentence that was kept as plain data is told in any words as before."""

from __future__ import annotations

import json

import pytest

from audit.words import Words, sentence
from audit.words.figures import Length, Listed
from audit.words.kept_sentence import from_plain_data, plain_data

SAID = sentence(
    "shows-roads",
    walker="Adder",
    within=Length(metres=25.0),
    roads=Listed(things=["Mill Road", sentence("figure-leg", name="3")]),
    seen=Length(metres=812.0),
    minutes="11",
    sure="none",
    sure_minutes="none",
    rule="cross-only",
)


def kept(value):
    return from_plain_data(json.loads(json.dumps(plain_data(value))))


@pytest.mark.parametrize("words", [Words(), Words(language="de")])
def test_a_sentence_is_told_as_before(words):
    back = kept({"notes": [SAID, "a plain text"], "number": 3})
    assert back["notes"][0] == SAID  # in plain English
    assert words.told(back["notes"][0]) == words.told(SAID)
    assert back["notes"][1:] == ["a plain text"]
    assert back["number"] == 3


@pytest.mark.parametrize(
    "spoilt",
    [
        {"message": "no-such-message", "values": {}},
        {"message": "shows-no-recording", "values": {}},
        {"message": "shows-no-recording", "values": {"walker": {"figure": "ModuleType"}}},
        {"message": "shows-no-recording", "values": {"walker": {"figure": "Length", "miles": 3}}},
    ],
)
def test_what_is_no_sentence_of_this_program_is_not_taken_for_one(spoilt):
    with pytest.raises((KeyError, TypeError, AttributeError)):
        from_plain_data(spoilt)
