"""Every cause has a page and every page a cause; pages are plain, whole and narrow enough."""

from __future__ import annotations

import re

import pytest
from docs.readme_parts import ROOT

from audit.diagnosis import causes
from audit.guide.cause_names import CAUSE_NAMES
from audit.guide.contents import NoSuchTopicError, contents, guide_text
from audit.guide.pages_on_file import CAUSE_SECTIONS, cause_pages, exercise, topic_pages
from audit.reports.cautions import CAUTIONS
from audit.words.spoken_words import PLAIN_ENGLISH, message_names

CATALOGUE = ROOT.parent / "shared" / "mistakes.md"
ALL_PAGES = [*topic_pages().values(), *cause_pages().values()]


def diagnosed() -> set[str]:
    """Give the names of every cause that stands in a tuple of the diagnosis."""
    return {
        cause.name
        for tuple_of in vars(causes).values()
        if isinstance(tuple_of, tuple)
        for cause in tuple_of
        if hasattr(cause, "name")
    }


def test_every_cause_has_a_page_and_every_page_names_a_cause():
    assert set(cause_pages()) == set(CAUSE_NAMES)
    assert len(CAUSE_NAMES) == len(set(CAUSE_NAMES))


def test_every_cause_that_is_diagnosed_or_worded_has_a_page():
    assert len(diagnosed()) >= 4
    assert diagnosed() <= set(cause_pages())
    named = {name for name, topic in message_names("en").items() if topic == "cause"}
    assert {name.removeprefix("cause-") for name in named} <= set(cause_pages())


def test_the_names_are_those_of_the_catalogue():
    if not CATALOGUE.is_file():
        pytest.skip("the catalogue of causes is not beside this folder")
    rows = re.findall(r"^\| (`[^|]*`) \|", CATALOGUE.read_text(encoding="utf-8"), re.MULTILINE)
    names = {name for row in rows for name in re.findall(r"`([a-z-]+)`", row)}
    assert names == set(CAUSE_NAMES)


@pytest.mark.parametrize("name", CAUSE_NAMES)
def test_a_page_tells_what_is_promised(name):
    page = cause_pages()[name]
    assert page.text.startswith(f"# {name}: ")
    assert tuple(page.sections) == CAUSE_SECTIONS
    assert all(len(words) > 20 for words in page.sections.values())
    assert exercise(name) == page.sections["Five-minute exercise"]


def test_causes_named_on_a_page_exist():
    # A word with a hyphen that is nearly a cause's name is one misspelt.
    known = set(CAUSE_NAMES)
    stems = {name.split("-")[0] for name in known}
    for page in cause_pages().values():
        words = set(re.findall(r"(?<![\w-])[a-z]+(?:-[a-z]+)+(?![\w-])", page.text))
        odd = {word for word in words - known if word.split("-")[0] in stems}
        assert odd == set(), page.name


@pytest.mark.parametrize("page", ALL_PAGES, ids=lambda page: page.name)
def test_pages_fit_a_terminal_and_have_a_title(page):
    lines = page.text.splitlines()
    assert lines[0].startswith("# ")
    assert page.title
    assert max(map(len, lines)) <= 80  # signs a line, as the plainest terminal has them
    assert all(line.isprintable() for line in lines)


def test_the_cautions_are_those_of_every_report():
    text = " ".join(topic_pages()["cautions"].text.split())
    for caution in CAUTIONS:
        assert caution.rstrip(".") in text


def test_the_list_and_every_page_point_to_the_cautions_with_their_gist():
    """Bug: only the page of the cautions itself had them."""
    names = [*topic_pages(), *cause_pages()]
    told = {"": contents()} | {name: guide_text(name) for name in names if name != "cautions"}
    for name, text in told.items():
        end = text.splitlines()[-4:]
        assert "training aid" in end[0], name
        assert end[-1].endswith("leg-audit guide cautions"), name
        assert max(map(len, end)) <= 80  # signs a line
    assert "In full" not in guide_text("cautions")


def test_the_list_of_topics_is_the_pages():
    listed = re.findall(r"^  (\S+)  ", contents(), re.MULTILINE)
    assert listed == list(topic_pages())
    assert {"angles", "causes", "cautions", "debrief", "log", "plan", "track"} <= set(listed)


def test_the_list_of_causes_is_complete():
    text = guide_text("causes")
    assert [name for name in CAUSE_NAMES if f"\n  {name} " not in text] == []


@pytest.mark.parametrize("asked", ["GM angle omitted", "gm_angle_omitted", "gm-angle-omitted"])
def test_a_cause_is_found_however_it_is_written(asked):
    assert guide_text(asked).startswith("gm-angle-omitted: the grid-magnetic angle left out\n====")


def test_a_name_that_is_none_is_answered_with_what_comes_near():
    with pytest.raises(NoSuchTopicError, match="gm-angle-omitted"):
        guide_text("gm-angle-ommited")
    with pytest.raises(NoSuchTopicError, match="lists the topics"):
        guide_text("xyzzy")


def test_exercises_are_told_as_the_guide_has_them():
    for name in cause_pages():
        told = PLAIN_ENGLISH.say(f"exercise-{name}")
        assert told.split() == cause_pages()[name].sections["Five-minute exercise"].split()
