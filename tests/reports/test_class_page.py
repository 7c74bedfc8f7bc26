"""class.html and the appeal sheets say what the class is, row by row, and nothing else."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from classes import make_class
from classes.true_results import true_result
from lxml import html

from audit.grading.verdicts import WalkVerdict
from audit.reports.appeal_sheets import appeal_sheets
from audit.reports.class_matrix import lane_tables
from audit.reports.class_page import render_class_html
from audit.reports.class_tables import lane_rows, time_rows
from audit.reports.class_terminal import render_class_terminal
from audit.reports.class_verdict import causes_counted, class_verdict, hardest
from audit.reports.class_words import outcome, why
from audit.reports.figure_appeal import appeal_key, appeal_specification
from audit.words import Words, sentence, spoken

SEED = 100_301


@pytest.fixture(scope="module")
def result():
    return true_result(make_class(SEED, walkers=16, legs=4))


@pytest.fixture(scope="module")
def page(result):
    return html.fromstring(render_class_html(result))


@pytest.fixture(scope="module")
def sheets(result):
    return appeal_sheets(result)


def text_of(element):
    return " ".join(element.text_content().split())


def test_every_walker_has_a_row_and_every_point_a_cell(result, page):
    rows = page.cssselect(".matrix tbody tr")
    assert len(rows) == len(result.walkers)
    by_number = {int(row.cssselect("th .meaning")[0].text): row for row in rows}
    for number, walker in enumerate(result.walkers, 1):
        row = by_number[number]
        assert walker.name in text_of(row.cssselect("th")[0])
        words = [text_of(cell.cssselect(".what")[0]) for cell in row.cssselect("td")]
        assert words == [leg.point.grade.replace("-", " ") for leg in walker.legs]


def test_nobody_is_ranked(result, page):
    """Each lane keeps the order of the roster."""
    for lane, table in zip(result.lanes, page.cssselect(".matrix"), strict=True):
        numbers = [int(one.text) for one in table.cssselect("tbody th .meaning")]
        assert numbers == [
            number for number, one in enumerate(result.walkers, 1) if one.lane == lane.name
        ]


def test_every_cell_of_a_debriefed_walk_opens_its_leg(result, page):
    links = [one.get("href") for one in page.cssselect("a.cell")]
    expected = {
        f"debriefs/{walker.ident}/debrief.html#leg{number}"
        for walker in result.walkers
        if walker.state == "graded"
        for number in range(1, len(walker.legs) + 1)
    }
    assert set(links) == expected
    assert len(links) == len(expected)


def test_grades_are_told_by_shape_and_word(page):
    shapes = {}
    for cell in page.cssselect(".matrix td .what"):
        word = text_of(cell)
        drawn = re.sub(rb"\s+", b" ", html.tostring(cell.cssselect("svg")[0])).split(b"</svg>")[0]
        shapes.setdefault(word, set()).add(re.sub(rb'(fill|stroke)="[^"]*"', b"", drawn))
    assert len(shapes) >= 3
    assert all(len(drawn) == 1 for drawn in shapes.values())
    assert len(set.union(*shapes.values())) == len(shapes)  # without their colours


def test_findings_and_questions_are_told_in_full(result, page):
    told = [text_of(one) for one in page.cssselect(".finding, .question")]
    assert sorted(told) == sorted(" ".join(one.message.split()) for one in result.findings)
    asked = [text_of(one) for one in page.cssselect(".question")]
    assert len(asked) == sum(one.question for one in result.findings)


def test_point_left_out_says_so_in_its_column(result, page):
    out = [leg for leg in result.legs if leg.finding == "point-misplaced"]
    assert len(out) == 1
    heads = [text_of(one) for one in page.cssselect(".matrix th.out")]
    assert heads == [f"{out[0].point}leg {out[0].name}, left out"]


def test_counts_of_legs_are_those_of_the_walkers(result, page):
    rows = page.xpath("//section[@aria-labelledby='legs']//tbody/tr")
    for row, leg in zip(rows, result.legs, strict=True):
        counts = text_of(row.cssselect(".counts")[0])
        assert counts == f"{leg.found} · {leg.doubtful} · {leg.missed} · {leg.without_evidence}"


def test_every_leg_that_was_walked_has_its_figure(result, page):
    assert len(page.cssselect(".tracks svg")) == sum(len(lane.legs) for lane in result.lanes)


def test_fingerprint_cautions_and_signature_are_there(result, page):
    text = text_of(page)
    assert result.fingerprint in text
    assert "A human signs" in text
    assert "search at once for anyone not back" in text
    assert "Simulated class" in text


def test_what_is_to_be_known_of_a_recording_is_told(result):
    first = result.walkers[0]
    first = replace(first, track=replace(first.track, notes=("The sky was poor.",)))
    page = html.fromstring(render_class_html(replace(result, walkers=(first, *result.walkers[1:]))))
    (section,) = page.xpath("//section[@aria-labelledby='recordings']")
    assert f"1 {first.name}: The sky was poor." in text_of(section)


def test_a_name_with_the_word_in_it_makes_no_class_simulated(result):
    """Bug: any note with the word made the class simulated, and was itself left out."""
    note = sentence("recording-before", leg="Simulated casualty")
    walkers = [
        replace(one, track=replace(one.track, notes=(note,))) if one.track else one
        for one in result.walkers
    ]
    text = text_of(html.fromstring(render_class_html(replace(result, walkers=tuple(walkers)))))
    assert "Simulated class" not in text
    assert note in text


def test_a_walk_with_points_enough_that_stays_doubtful_says_why(result):
    """Bug: "too close to call: 7 of 4 needed", and the reason in the JSON alone."""
    first = result.walkers[0]
    verdict = replace(
        first.verdict, grade="doubtful", found=7, needed=4, reasons=("No times were kept.",)
    )
    for grade, said in (("doubtful", True), ("pass", False)):
        told = replace(first, verdict=replace(verdict, grade=grade))
        page = render_class_html(replace(result, walkers=(told, *result.walkers[1:])))
        assert ("No times were kept." in page) is said


def test_page_may_ask_no_network_and_runs_nothing(result):
    page = render_class_html(result)
    policy = html.fromstring(page).xpath("//meta[@http-equiv]/@content")[0]
    assert "default-src 'none'" in policy
    assert "connect-src 'none'" in policy
    assert "<script" not in page
    assert not re.search(r'(?:src|href)="(?:https?:)?//', page)


def test_names_cannot_break_out_of_the_page(result):
    first = replace(result.walkers[0], name="<script>alert(1)</script>")
    page = render_class_html(replace(result, walkers=(first, *result.walkers[1:])))
    assert "<script" not in page
    assert "&lt;script&gt;" in page


def test_verdict_counts_walks_and_names_the_point_missed_most(result):
    said = " ".join(class_verdict(result))
    met = sum(one.verdict.grade == "pass" for one in result.walkers)
    assert said.startswith(f"{met} of {len(result.walkers)} walks on 2 lanes met the standard")
    assert "there is no evidence, which is not a fail" in said
    lost = {(one.lane, one.name): one.missed / one.walkers for one in result.legs
            if one.finding != "point-misplaced"}  # fmt: skip
    most = {(leg.lane, leg.name) for leg in hardest(result)}
    assert most == {leg for leg, share in lost.items() if share == max(lost.values())}


def with_legs(result, **counts):
    """The class with the counts of its first two legs, and none missed or doubtful elsewhere."""
    legs = [
        replace(one, walkers=8, found=8, missed=0, doubtful=0, without_evidence=0, finding=None)
        for one in result.legs
    ]
    for number, changed in counts.items():
        legs[int(number[1:])] = replace(legs[int(number[1:])], **changed)
    return replace(result, legs=tuple(legs))


def test_a_doubt_is_no_miss_where_legs_are_named_that_were_missed_most(result):
    """Bug: doubts were ranked with misses."""
    doubted = with_legs(result, n0={"found": 2, "doubtful": 6}, n1={"found": 7, "missed": 1})
    assert [leg.name for leg in hardest(doubted)] == [doubted.legs[1].name]
    only = with_legs(result, n0={"found": 2, "doubtful": 6})
    assert "No point was missed for sure; 6 are doubtful." in class_verdict(only)


def test_legs_missed_alike_are_all_named(result):
    """Bug: the first of them alone was said to be missed most."""
    alike = with_legs(result, n0={"found": 6, "missed": 2}, n1={"found": 6, "missed": 2})
    lane = alike.legs[0].lane
    said = (
        f"Missed most often, all alike: legs 1 and 2 of {lane}; on each of them 25 % of the walkers"
    )
    assert any(one.startswith(said) for one in class_verdict(alike))


def test_nothing_is_too_close_to_call_where_evidence_is_missing(result):
    """Bug: who has all points by codes and no times was "too close to call"."""
    untimed = WalkVerdict(
        grade="doubtful", reasons=("Unknown.",), found=5, missed=0, doubtful=0,
        without_evidence=0, needed=5, late_s=None, score=None,
    )  # fmt: skip
    assert outcome(untimed) == "untold"
    assert outcome(replace(untimed, found=4, doubtful=1)) == "doubtful"
    assert outcome(replace(untimed, late_s=20.0)) == "doubtful"
    one = replace(result.walkers[0], verdict=untimed)
    said = class_verdict(replace(result, walkers=(one,)))[0]
    assert "for 1 it cannot be told: evidence is missing" in said
    assert "too close" not in said


def test_causes_are_counted_by_leg_and_walker(result):
    for cause, legs, walkers in causes_counted(result):
        seen = [
            walker.name for walker in result.walkers for leg in walker.legs
            if leg.cause == cause
        ]  # fmt: skip
        assert (legs, walkers) == (len(seen), len(set(seen)))


def test_same_class_same_bytes(result, sheets):
    assert render_class_html(result) == render_class_html(result)
    assert appeal_sheets(result) == sheets


def test_each_doubtful_or_missed_point_has_one_sheet_and_a_link_to_it(result, page, sheets):
    due = {
        f"appeals/{walker.ident}-leg-{number}.html"
        for walker in result.walkers
        for number, leg in enumerate(walker.legs, 1)
        if leg.point.grade in {"doubtful", "missed"}
    }
    assert {f"appeals/{name}" for name in sheets} == due
    assert {one.get("href") for one in page.cssselect(".appeal a")} == due


def test_sheet_holds_the_evidence_for_and_against(result, sheets):
    for walker in result.walkers:
        for number, leg in enumerate(walker.legs, 1):
            sheet = sheets.get(f"{walker.ident}-leg-{number}.html")
            if sheet is None:
                continue
            text = text_of(html.fromstring(sheet))
            for words in (*leg.point.evidence_for, *leg.point.evidence_against):
                assert " ".join(words.split()) in text.replace("\xa0", " ")
            assert "Decision" in text
            assert f"{leg.point.radius_m + leg.point.error_m:.0f} m (whole error added)" in (
                text.replace("\xa0", " ")
            )


def test_keys_of_the_class_list_what_the_page_shows(result):
    """Bug: the keys told of doubtful points and of hatching where the page had none."""

    def keys(of):
        page = html.fromstring(render_class_html(of))
        return [text_of(one) for one in page.cssselect(".inline-key")]

    def all_found(leg):
        return replace(leg, point=replace(leg.point, grade="found", left_out=False))

    clean = tuple(replace(one, legs=tuple(map(all_found, one.legs))) for one in result.walkers)
    points = keys(replace(result, walkers=clean))[0]
    assert points.split() == ["found"]
    grades = {leg.point.grade for one in result.walkers for leg in one.legs}
    for grade in ("found", "doubtful", "missed"):
        assert (grade in keys(result)[0]) == (grade in grades)


def test_no_word_stands_in_the_picture_of_an_appeal(result):
    """Bug: "with the whole error 44 m" was written over claim and nearest approach."""
    walker = next(one for one in result.walkers if one.trace is not None)
    lane = result.lane(walker.lane)
    made = appeal_specification(lane, 0, walker)
    assert "text" not in {layer["mark"]["type"] for layer in made["layer"]}
    leg = walker.legs[0].point
    key = dict(appeal_key(lane, 0, walker))
    assert f"{leg.radius_m:.0f} m" in key["ring"]
    assert f"{leg.radius_m + leg.error_m:.0f} m" in key["whole"]


def test_key_of_an_appeal_lists_what_its_picture_shows(result):
    """Bug: claim and nearest approach were told of where they lay outside the picture."""
    walker = next(one for one in result.walkers if one.legs[0].miss is not None)
    lane = result.lane(walker.lane)
    assert "claim" in dict(appeal_key(lane, 0, walker))
    far = replace(walker.legs[0], miss=replace(walker.legs[0].miss, east_m=5000.0))
    gone = replace(walker, legs=(far, *walker.legs[1:]))
    assert "claim" not in dict(appeal_key(lane, 0, gone))
    assert "nearest" not in dict(appeal_key(lane, 0, replace(walker, trace=None)))


def test_sheet_says_what_the_class_shows_of_the_point(result, sheets):
    fault = next(one for one in result.findings if one.what == "point-misplaced")
    about = [
        text_of(html.fromstring(sheets[f"{walker.ident}-leg-{number}.html"]))
        for walker in result.walkers
        for number, leg in enumerate(walker.legs, 1)
        if (walker.lane, leg.name) == (fault.lane, fault.leg)
        and leg.point.grade in {"doubtful", "missed"}
    ]
    for text in about:
        assert " ".join(fault.message.split()) in text.replace("\xa0", " ")


def test_a_sheet_does_not_count_its_own_walker_among_the_others(result, sheets):
    """Bug: "The others at this point" counted the one who appeals."""
    for walker in result.walkers:
        for number, leg in enumerate(walker.legs, 1):
            if leg.point.grade not in {"doubtful", "missed"}:
                continue
            others = [
                one.legs[number - 1].point.grade
                for one in result.walkers
                if one.lane == walker.lane and one is not walker
            ]
            text = text_of(html.fromstring(sheets[f"{walker.ident}-leg-{number}.html"]))
            said = f"Of {len(others)} other walks of the lane {others.count('found')} found"
            assert said in text.replace("\xa0", " ")


def test_lanes_of_few_walkers_share_a_sheet_of_paper(result):
    """Bug: each lane had a sheet of its own, most of them nearly empty."""
    page = render_class_html(result)
    assert ".lane-table + .lane-table" not in page
    tables = html.fromstring(page).cssselect(".lane-table")
    for table in tables:
        short = len(table.cssselect("tbody tr")) <= 10
        assert ("whole" in table.get("class").split()) == short


def test_a_class_with_nothing_to_show_is_a_whole_page(result):
    """No track handed in by anybody."""
    nobody = tuple(
        replace(one, state="no-track", trace=None, track=None, pages=(), moving_s=None,
                legs=tuple(replace(leg, point=replace(leg.point, grade="no-evidence"), miss=None,
                                   cause=None, trace_from=None, trace_to=None)
                           for leg in one.legs),
                verdict=replace(one.verdict, grade="no-evidence"))
        for one in result.walkers
    )  # fmt: skip
    empty = replace(result, walkers=nobody, findings=(), legs=())
    page = render_class_html(empty)
    assert "Nothing that only a class can show stands out." in page
    assert "No mistake is named on any leg." in page
    assert appeal_sheets(empty) == {}


def test_the_middle_time_of_two_walkers_is_half_way_between_theirs(result):
    """Bug: of an even number of times the later of the middle two was told."""
    name = result.lanes[0].name
    known = [one for one in result.walkers if one.lane == name and one.state == "graded"]
    times = {known[0].ident: 3600.0, known[1].ident: 7200.0}
    two = tuple(
        replace(one, time=replace(one.time, elapsed_s=times.get(one.ident)))
        for one in result.walkers
    )
    rows = dict(dict(lane_rows(replace(result, walkers=two)))[name])
    assert rows["Middle time"] == "1:30"


@pytest.mark.parametrize(
    ("language", "said"),
    [("en", "standard met: 5 found, 4 needed"), ("de", "Vorgabe erfüllt: 5 gefunden, 4 nötig")],
)
def test_points_found_and_needed_are_told_apart(result, language, said):
    """Bug: "standard met: 5 of 4 needed"."""
    first = result.walkers[0]
    verdict = replace(first.verdict, grade="pass", found=5, needed=4)
    told = replace(result, walkers=(replace(first, verdict=verdict), *result.walkers[1:]))
    with spoken(Words(language=language)):
        assert said in render_class_html(told)
        assert said in render_class_terminal(told)


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "the debrief counts 4, on their own legs"),
        ("de", "die Auswertung zählt 4, auf dem eigenen Abschnitt"),
    ],
)
def test_where_class_and_debrief_count_otherwise_both_are_told(result, language, said):
    """Bug: the class found 3 points, the walker's debrief 4 or 2, and nothing said why."""
    first = next(one for one in result.walkers if one.verdict.found == len(one.legs) == 4)
    verdict = replace(first.verdict, found=3)
    alike = replace(result, walkers=(first,))
    apart = replace(result, walkers=(replace(first, verdict=verdict),))
    with spoken(Words(language=language)):
        for render in (render_class_html, render_class_terminal):
            assert said in render(apart)
            assert said not in render(alike)


def test_walks_are_told_on_the_terminal_as_on_the_page(result):
    """Bug: "doubtful" on the terminal, "cannot be told" on the page."""
    first = result.walkers[0]
    verdict = WalkVerdict(
        grade="doubtful", reasons=(), found=3, missed=0, doubtful=0, without_evidence=2,
        needed=4, late_s=None, score=None,
    )  # fmt: skip
    told = replace(result, walkers=(replace(first, verdict=verdict), *result.walkers[1:]))
    assert "cannot be told: 3 found, 4 needed" in render_class_terminal(told)


def test_a_point_left_out_is_named_on_the_leg_that_leads_on_from_it(result):
    """Bug: "found, skipped, the point left out" stood under Point 7, and meant Point 6."""
    leg = replace(
        result.walkers[0].legs[0], cause="point-skipped", cause_probability=0.8, left_out="Point 6"
    )
    assert why(leg) == "Point 6 left out (80 %)"
    assert why(replace(leg, left_out="")) == "the point left out (80 %)"


def test_german_calls_an_azimuth_of_the_grid_so(result):
    """Bug: "Marschzahl", which is what a compass is set to, stood above azimuths of the grid."""
    with spoken(Words(language="de")):
        page = render_class_html(result)
    assert "Gitterrichtung" in page
    assert "Marschzahl<" not in page


def test_an_end_without_a_name_is_called_in_the_words_of_the_reader(result):
    """Bug: "end of leg 1" headed a column and stood in a row of the German page."""
    end = sentence("plan-end-name", leg="1")
    first, *rest = result.lanes
    nameless = replace(first, legs=(replace(first.legs[0], end=end), *first.legs[1:]))
    with spoken(Words(language="de")):
        page = render_class_html(replace(result, lanes=(nameless, *rest)))
    assert "Ende Abschnitt 1" in page
    assert "end of leg 1" not in page


def test_the_point_missed_most_accounts_for_every_walker(result):
    """Bug: "3 of 6 found it, 2 missed it", and nothing of the sixth."""
    short = with_legs(
        result, n0={"walkers": 6, "found": 3, "missed": 2, "without_evidence": 1}, n1={}
    )
    assert any(
        "3 of 6 found it, 2 missed it, for 1 there is no evidence" in said
        for said in class_verdict(short)
    )


@pytest.mark.parametrize(
    ("status", "grade", "said"),
    [
        ("not-started", "no-evidence", "after the recording ended"),
        ("unfinished", "no-evidence", "after the recording ended"),
        ("not-started", "missed", "not started"),
        ("skipped", "no-evidence", "before the recording began"),
    ],
)
def test_what_a_recording_does_not_reach_is_told_as_that(result, status, grade, said):
    """Bug: "no evidence, not started" of a point after the recording had broken off."""
    first = result.walkers[0]
    *others, last = first.legs
    leg = replace(last, status=status, miss=None, point=replace(last.point, grade=grade))
    told = replace(result, walkers=(replace(first, legs=(*others, leg)), *result.walkers[1:]))
    (row,) = [
        row for table in lane_tables(told) for row in table.rows if row.number == 1
    ]  # fmt: skip
    assert row.cells[-1].miss == said


def test_where_the_time_went_adds_up(result):
    def minutes(text):
        hours, rest = text.split(":")
        return 60 * int(hours) + int(rest)

    for row in time_rows(result):
        parts = [minutes(part) for part in (row.moving, row.searching, row.halted)]
        assert sum(parts) == minutes(row.together)
