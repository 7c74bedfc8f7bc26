"""debrief.html: one whole page, safe, readable, and saying what the other files say."""

from __future__ import annotations

import base64
import gzip
import hashlib
import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from reports.sample_debrief import sample_debrief

from audit.classroom.attempt_of_debrief import attempt_of_debrief
from audit.reports.cautions import CAUTIONS
from audit.reports.html_report import render_html
from audit.words import sentence

VOID = {"meta", "br", "link", "img", "path", "circle", "rect", "line", "hr", "input"}


class Page(HTMLParser):
    """Collects elements with their attributes, the text, and tags left open."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.elements, self.open, self.words = [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        if tag not in VOID:
            assert self.open.pop() == tag

    def handle_data(self, data):
        if not {"style", "script"} & set(self.open):
            self.words.append(data)

    def all(self, *tags):
        return [attrs for tag, attrs in self.elements if tag in tags]

    @property
    def text(self):
        return re.sub(r"\s+", " ", " ".join(self.words))


@pytest.fixture(scope="module")
def html():
    return render_html(sample_debrief())


@pytest.fixture(scope="module")
def page(html):
    return Page(html)


def test_page_is_well_formed(html, page):
    assert html.lstrip().lower().startswith("<!doctype html>")
    assert page.open == []
    assert page.all("html")[0]["lang"] == "en"
    assert len(page.all("h1")) == 1
    ids = [attrs["id"] for _, attrs in page.elements if "id" in attrs]
    assert len(ids) == len(set(ids))
    for _, attrs in page.elements:
        for name in attrs.get("aria-labelledby", "").split():
            assert name in ids
        if "href" in attrs:
            assert attrs["href"].removeprefix("#") in ids


def test_page_asks_nothing_of_a_network(html, page):
    policy = next(one for one in page.all("meta") if "http-equiv" in one)["content"]
    allowed = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert allowed["default-src"] == allowed["connect-src"] == "'none'"
    assert allowed["img-src"] == "data:"
    # Two scripts by their hash, and no other: no "unsafe-inline", no "unsafe-eval".
    assert re.fullmatch(r"('sha256-[\w+/=]{44}' ?){2}", allowed["script-src"])
    assert page.all("link", "iframe", "object", "img") == []
    assert [one for one in page.all("script") if "type" not in one] == [{}]
    # Outside the scripts there is nothing that could be fetched.
    without = re.sub(r"<script.*?</script>", "", html, flags=re.DOTALL)
    without = re.sub(r"sha256-[\w+/=]+", "", without)
    without = re.sub(r'xmlns(?::\w+)?="[^"]*"', "", without)
    assert "http:" not in without
    assert "https:" not in without
    assert "//" not in without.replace("</", "")
    assert not re.search(r"@import|url\((?!#)", without)
    assert not any(name.startswith("on") for _, attrs in page.elements for name in attrs)


def test_library_in_the_page_is_the_one_that_the_policy_lets_run(html):
    packed = re.search(r'id="library">([\w+/=]+)<', html)[1]
    library = gzip.decompress(base64.b64decode(packed))
    own = re.search(r"<script>(.*?)</script>", html, re.DOTALL)[1].encode()
    policy = next(one for one in Page(html).all("meta") if "http-equiv" in one)["content"]
    for script in (own, library):
        digest = base64.b64encode(hashlib.sha256(script).digest()).decode()
        assert f"'sha256-{digest}'" in policy


def test_sections_stand_in_order(html):
    heads = re.findall(r"<h2[^>]*>([^<]*)</h2>", html)
    assert heads == [
        "In short", "Plan and walk", "The legs", "Leg by leg", "Where the misses came from",
        "To keep and to work on", "The recording", "The plan", "The grid-magnetic angle", "Cautions",
    ]  # fmt: skip


def test_tables_name_their_rows_and_columns(page):
    assert page.all("th")
    assert all("scope" in attrs for attrs in page.all("th"))
    assert len(page.all("caption")) == len(page.all("table")) == 2


def test_figures_carry_words(html, page):
    pictures = [attrs for attrs in page.all("svg") if attrs.get("role") == "img"]
    # The map, the walk over time, all misses; strips, arrows, ledger of each leg walked.
    assert len(pictures) == 3 + 3 * 3
    assert all(len(attrs["aria-labelledby"].split()) == 2 for attrs in pictures)
    signs = [attrs for attrs in page.all("svg") if attrs.get("class") == "sign"]
    assert all(attrs["aria-hidden"] == "true" for attrs in signs)
    assert html.count("<desc") == 12


@pytest.mark.parametrize(
    "words",
    [
        "The worst is leg 1: its count ended 113 m north-west of Post 7",
        "3 of 4 legs walked, 3 of 4 points reached on their own legs; leg 4 skipped.",
        "61.1° ±0.7°", "7.2° left", "109 m left", "113 m NW", "26 m short",
        "grid 68.3°, magnetic 75.3°, back 248.3° grid; 892 m, 580 double paces",
        "the grid-magnetic angle left out",
        "To practise: Write the angle on the card",
        "781 recorded, 769 kept", "4.1 m (standard deviation each way; from 3 halts)",
        "Leg 2: the plan gives 675 m, its points lie 655 m apart.",
        "declination − convergence = −5.50° − 1.60° = −7.10°.",
        "Leg 1: 68.30° − (−7.00°) = 75.30°.",
        "Leg 4 : Post 5 to Post 9, skipped",
        "Drawn lines keep within 1 m of the recording",
        "leg-audit",
    ],
)  # fmt: skip
def test_page_says(page, words):
    flat = page.text.replace("\N{NO-BREAK SPACE}", " ")
    assert words.replace("Leg 4 :", "Leg 4:") in flat


@pytest.mark.parametrize("caution", CAUTIONS)
def test_page_shows_every_caution(page, caution):
    assert caution in page.text


def test_names_from_files_are_only_text():
    name = '<script>alert(1)</script>"&'
    html = render_html(sample_debrief(names={"Post 7": name, "Start": "x' onload='y"}))
    page = Page(html)
    assert [one for one in page.all("script") if "type" not in one] == [{}]
    assert "alert(1)</script>" not in html
    assert name in page.text
    assert not any(attr.startswith("on") for _, attrs in page.elements for attr in attrs)


def test_simulated_walk_is_shown_at_the_head():
    note = sentence("recording-simulated")
    html = render_html(sample_debrief(notes=(note,)))
    assert html.index("Simulated walk.") < html.index("In short")
    assert note in html
    assert "Simulated walk." not in render_html(sample_debrief())


def test_a_name_with_the_word_in_it_makes_no_walk_simulated():
    """Bug: a point "Simulated casualty" on no leg had a real walk shown as simulated."""
    debrief = sample_debrief(notes=('The recording passes "Simulated casualty".',))
    on_no_leg = sentence("plan-on-no-leg", point="Simulated casualty")
    debrief = replace(debrief, card=replace(debrief.card, notes=(on_no_leg,)))
    assert "Simulated casualty" in render_html(debrief)
    assert "Simulated walk." not in render_html(debrief)
    assert not attempt_of_debrief(debrief, "ash", "0").simulated
    simulated = sample_debrief(notes=(sentence("recording-simulated"),))
    assert attempt_of_debrief(simulated, "ash", "0").simulated


def test_recording_without_times_shows_no_time(page):
    without = Page(render_html(sample_debrief(timed=False)))
    assert "none; no figure of time is given" in without.text
    assert "UTC to" not in without.text
    assert re.search(r"\d\d:\d\d:\d\d", page.text)
    assert not re.search(r"\d\d:\d\d:\d\d", without.text)


def test_nothing_walked():
    debrief = sample_debrief()
    legs = tuple(
        replace(leg, causes=(), audit=replace(leg.audit, measures=None, status="not-started"))
        for leg in debrief.legs
    )
    page = Page(render_html(replace(debrief, legs=legs)))
    assert "No leg of the plan was found in this recording." in page.text
    assert len([one for one in page.all("svg") if one.get("role") == "img"]) == 2


def test_angle_without_a_model():
    debrief = sample_debrief()
    card = replace(debrief.card, declination_deg=None, model_grid_magnetic_angle_deg=None,
                   date=None, model="")  # fmt: skip
    page = Page(render_html(replace(debrief, card=card)))
    assert "No magnetic model covers the day of the walk, which is not known" in page.text


def test_same_debrief_gives_the_same_bytes(html):
    assert render_html(sample_debrief()) == html


def test_one_figure_reads_the_same_in_all_reports(page):
    from audit.reports.terminal_report import render_terminal

    debrief = sample_debrief()
    document, frame = debrief.to_dict(), debrief.legs_frame()
    for number, shown in ((0, "113 m"), (1, "10 m"), (2, "96 m")):
        miss_m = document["legs"][number]["miss"]["distance_m"]
        assert frame["miss_m"][number] == miss_m
        assert f"{miss_m:.0f} m" == shown
        assert shown in page.text.replace("\N{NO-BREAK SPACE}", " ")
        assert shown in render_terminal(debrief)


def test_unlikely_causes_are_only_counted():
    from audit.diagnosis.finding import Finding

    debrief = sample_debrief()
    shares = {"within-skill": 0.9, "veer": 0.06, "sidehill": 0.03, "handrail": 0.01}
    found = tuple(
        Finding(cause=c, probability=p, evidence=f"About {c}.") for c, p in shares.items()
    )
    legs = (replace(debrief.legs[0], causes=found), *debrief.legs[1:])
    text = Page(render_html(replace(debrief, legs=legs))).text
    assert "About veer." in text
    assert "About sidehill." not in text
    assert "2 less likely causes in debrief.json." in text
