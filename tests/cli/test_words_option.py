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
        (("card", "plan.toml"), "magnetisch, Strich 0871", "Hinweis: Gitter der Bahn"),
        (("card", "plan.toml", "--out", "card.html"), "", "Geschrieben nach card.html"),
        (("forecast", "plan.toml"), "um 64 Strich ab", "Hinweis: "),
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


def test_a_class_is_begun_and_looked_through_in_german(leg_audit, german):
    """Bug: what the files were taken for, and the line of progress, were told in English."""
    walk = (german / "walk.gpx").read_text(encoding="utf-8")
    route = '</metadata><rte><rtept lat="1" lon="1"/></rte>'
    (german / "both.gpx").write_text(walk.replace("</metadata>", route), encoding="utf-8")
    done = leg_audit("grade", "plan.toml", "both.gpx", "--jobs", "1", "--words", "de.toml")
    assert done.status == 0, done.err
    assert "both.gpx: als Aufzeichnung genommen; die Route darin blieb beiseite." in done.err
    assert "Durchgesehen: 1 von 1, both.gpx, " in done.err
    assert "Bewertet: 1 von 1, " in done.err


def test_a_debrief_refuses_words_before_it_reads_a_recording(leg_audit, german):
    """Bug: plan, track, log and card were read first, and refused in their place."""
    (german / "bad.toml").write_text('language = "xx"\n')
    (german / "broken.gpx").write_text("<gpx><trk>")
    done = leg_audit("debrief", "plan.toml", "broken.gpx", "--words", "bad.toml")
    assert done.status == 3
    assert "bad.toml, language" in done.err
    assert "broken.gpx" not in done.err
