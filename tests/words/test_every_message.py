"""Every message in every language, held against the format's own library (fluent.runtime)."""

from __future__ import annotations

from importlib.resources import files
from itertools import product

import pytest
from fluent.runtime import FluentBundle, FluentResource

from audit.words.filled_pattern import variables
from audit.words.fluent_text import entries
from audit.words.spoken_words import (
    LANGUAGES,
    PLAIN_ENGLISH,
    Words,
    choices_of_terms,
    message,
    message_names,
)

NAMES = sorted(name for name, topic in message_names("en").items() if topic != "terms")


def file_text(language: str, topic: str) -> str:
    return files("audit.words").joinpath(language, f"{topic}.ftl").read_text(encoding="utf-8")


def bundle(language: str) -> FluentBundle:
    made = FluentBundle([language], use_isolating=False)
    for topic in sorted(set(message_names(language).values())):
        assert made.add_resource(FluentResource(file_text(language, topic))) is None
    return made


def variant_keys(pattern) -> dict[str, set[str]]:
    """The keys that each variable is asked for."""
    found: dict[str, set[str]] = {}
    for part in pattern:
        if isinstance(part, str):
            continue
        if part.variable and part.variants:
            found.setdefault(part.variable, set()).update(part.variants)
        for variant in part.variants.values():
            for name, keys in variant_keys(variant).items():
                found.setdefault(name, set()).update(keys)
    return found


@pytest.mark.parametrize("language", LANGUAGES)
def test_messages_read_as_the_formats_own_library_reads_them(language):
    reference = bundle(language)
    for name in NAMES:
        pattern = message(language, name).pattern
        keys = variant_keys(pattern)
        names = sorted(set(variables(pattern)))
        choices = [
            [1, 5]
            if keys.get(one, set()) & {"one", "other"}
            else [*sorted(keys.get(one, ())), "Xy"]
            for one in names
        ]
        for chosen in product(*choices):
            values = dict(zip(names, chosen, strict=True))
            theirs, errors = reference.format_pattern(reference.get_message(name).value, values)
            assert errors == []
            ours = Words(language=language).say(name, **values)
            assert ours.split() == theirs.split(), name


def test_both_languages_have_the_same_messages_in_the_same_topics():
    english, german = (
        {name: topic for name, topic in message_names(one).items() if topic != "terms"}
        for one in LANGUAGES
    )
    assert english == german


@pytest.mark.parametrize("name", NAMES)
def test_each_value_of_a_message_is_used_in_both_languages(name):
    english, german = (set(variables(message(one, name).pattern)) for one in LANGUAGES)
    assert english == german


@pytest.mark.parametrize("language", LANGUAGES)
def test_messages_stand_in_the_file_that_their_name_begins_with(language):
    astray = {
        name: topic
        for name, topic in message_names(language).items()
        if topic != "terms" and not name.startswith(f"{topic}-")
    }
    assert astray == {}


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_message_stands_twice(language):
    for topic in set(message_names(language).values()):
        text = file_text(language, topic)
        begun = [line for line in text.splitlines() if line[:1].isalpha() or line[:1] == "-"]
        assert len(begun) == len(entries(text)), topic


def test_terms_follow_the_tradition_that_is_chosen():
    words = Words(terms={"azimuth": "bearing", "point": "control"})
    assert words.say("leg-began-off", size="9 m") == "began 9 m off the control"
    assert words.say("cause-right-angle") == "a bearing 90° out"
    assert PLAIN_ENGLISH.say("cause-right-angle") == "an azimuth 90° out"


def test_all_choices_of_a_term_have_the_forms_that_sentences_ask_for():
    for language in LANGUAGES:
        for term, choices in choices_of_terms(language).items():
            for choice in choices:
                words = Words(language=language, terms={term: choice})
                for name in NAMES:
                    pattern = message(language, name).pattern
                    values = dict.fromkeys(variables(pattern), 2)
                    assert words.say(name, **values)


@pytest.mark.parametrize(
    ("word", "said"),
    [
        ("marschzahl", "eine falsche oder vertauschte Ziffer in der Marschzahl"),
        ("azimut", "eine falsche oder vertauschte Ziffer im Azimut"),
        ("richtungswinkel", "eine falsche oder vertauschte Ziffer im Richtungswinkel"),
    ],
)
def test_article_goes_by_the_gender_of_the_word_that_is_chosen(word, said):
    """Bug: "Die Azimut eines anderen Abschnitts": the articles were those of Marschzahl."""
    words = Words(language="de", terms={"azimuth": word})
    assert words.say("cause-azimuth-digits") == said
    article = {"marschzahl": "die", "azimut": "das", "richtungswinkel": "der"}[word]
    assert words.say("cause-neighbour-azimuth").startswith(f"{article} ")


def test_exercises_follow_the_tradition_that_is_chosen():
    """Bug: with "bearing" and "control" the exercises still said azimuth and point."""
    words = Words(terms={"azimuth": "bearing", "point": "control"})
    exercises = [words.say(name) for name in NAMES if name.startswith("exercise-")]
    assert [one for one in exercises if "azimuth" in one or " points " in one] == []
    assert "each plotted control" in words.say("exercise-digit-wrong")
