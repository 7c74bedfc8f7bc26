"""The settings file of words: what it chooses, and how wrong ones are refused."""

from __future__ import annotations

import pytest

from audit.errors import InputRefusedError
from audit.readers.words_file import read_words
from audit.words.in_other_units import Units
from audit.words.spoken_words import PLAIN_ENGLISH, Words


def file(tmp_path, text):
    path = tmp_path / "words.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_file_chooses_language_units_and_terms(tmp_path):
    text = """
language = "de"
[units]
angle = "mil6400"
paces = "double"
[terms]
point = "posten"
"""
    words = read_words(file(tmp_path, text))
    units = Units(angle="mil6400", paces="double")
    assert words == Words(language="de", units=units, terms={"point": "posten"})


def test_an_empty_file_leaves_everything_as_it_is(tmp_path):
    assert read_words(file(tmp_path, "# nothing chosen\n")) == PLAIN_ENGLISH


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('language = "fr"', 'language: "fr" is not known here. Choose from en, de.'),
        ('[units]\nangle = "mil"', 'units, angle: "mil" is not known here. Choose from degrees,'),
        ("[units]\nlength = 3", "units, length: 3 is not known here"),
        ('[terms]\nazimuth = "heading"', "Choose from azimuth, bearing."),
        ('[terms]\npoints = "control"', 'is no setting of terms. Perhaps "point" is meant.'),
        ('[unit]\nangle = "gon"', 'is no setting of words. Perhaps "units" is meant.'),
        ("terms = 1", "is not a table"),
        ('[units]\npaces_counted = "double"', "says nothing without paces"),
        ("language = de", "is not TOML"),
        ("# words\n\nlanguage=", "words.toml, line 3: is not TOML"),  # no line end after it
        ("language=", "words.toml, line 1: is not TOML"),
    ],
)
def test_a_wrong_file_is_refused_in_one_sentence(tmp_path, text, said):
    with pytest.raises(InputRefusedError) as refused:
        read_words(file(tmp_path, text))
    assert said in str(refused.value)
    assert str(refused.value).startswith("words.toml")


def test_every_problem_is_told_at_once(tmp_path):
    text = 'language = "fr"\n[units]\nangle = "x"\n[terms]\npoint = "y"'
    with pytest.raises(InputRefusedError) as refused:
        read_words(file(tmp_path, text))
    assert len(refused.value.problems) == 3
