"""--words: the language, terms and units of whatever a command tells people."""

from __future__ import annotations

import pytest

from audit.cli.app import app

ENGLISH_ONLY = {"demo", "guide"}
"""The demo's own files and the guide are in English."""


@pytest.fixture
def german(course):
    (course / "de.toml").write_text('language = "de"\n[units]\nangle = "mil6400"\n')
    return course


def test_every_command_that_tells_people_something_takes_words():
    for command in app.registered_commands:
        name = command.callback.__name__
        assert ("words" in command.callback.__wrapped__.__annotations__) != (name in ENGLISH_ONLY)


@pytest.mark.usefixtures("german")
@pytest.mark.parametrize(
    ("arguments", "told", "said"),
    [
        (("check", "plan.toml"), "Nichts zu berichtigen", "Hinweis: Gitter der Bahn"),
        (("card", "plan.toml"), "magnetisch, mil 0871", "Hinweis: Gitter der Bahn"),
        (("card", "plan.toml", "--out", "card.html"), "", "Geschrieben nach card.html"),
        (("forecast", "plan.toml"), "64 mil verdreht", "Hinweis: "),
        (("lanes", "plan.toml"), "bürgerliche Dämmerung", "Hinweis: Kein Plan gibt"),
        (("copy", "plan.toml", "--out", "copy.gpx"), "", "GPX enthält nicht: "),
    ],
)
def test_it_is_told_in_the_words_of_the_file(leg_audit, arguments, told, said):
    done = leg_audit(*arguments, "--words", "de.toml")
    assert done.status in (0, 1), done.err
    assert told in done.out
    assert said in done.err


@pytest.mark.usefixtures("german")
def test_the_next_command_speaks_plain_english_again(leg_audit):
    leg_audit("check", "plan.toml", "--words", "de.toml")
    assert "Nothing to put right" in leg_audit("check", "plan.toml").out


def test_files_for_programs_stay_as_they_are(leg_audit, german):
    plain = leg_audit("forecast", "plan.toml", "--json").out
    assert leg_audit("forecast", "plan.toml", "--json", "--words", "de.toml").out == plain
    leg_audit("copy", "plan.toml", "--out", "plain.gpx")
    leg_audit("copy", "plan.toml", "--out", "german.gpx", "--words", "de.toml")
    assert (german / "plain.gpx").read_bytes() == (german / "german.gpx").read_bytes()


def test_words_that_cannot_be_used_are_refused(leg_audit, german):
    (german / "bad.toml").write_text('language = "xx"\n')
    done = leg_audit("card", "plan.toml", "--words", "bad.toml")
    assert done.status == 3
    assert "bad.toml, language" in done.err
