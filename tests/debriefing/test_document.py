"""The document of debrief.json against its contract."""

from __future__ import annotations

import json
from dataclasses import fields, is_dataclass, replace
from itertools import pairwise

import jsonschema
import numpy as np
import pytest
from coaching.demo_walk import demo
from reports.sample_debrief import sample_debrief
from schema.make_schema import SHIPPED, schema_text

from audit.debriefing.privacy import private_debrief
from audit.reports.json_report import render_json

# The names that users and outside checks rely on, typed out from the published contract.
CONTRACT = {
    "": {"format", "course", "track", "plan_findings", "spans", "legs"},
    "course": {
        "name", "date", "grid", "grid_magnetic_angle_deg", "grid_magnetic_angle_from",
        "declination_deg", "grid_convergence_deg",
    },
    "track": {"fixes", "start", "end", "median_interval_s", "noise_m", "gaps", "cleaning"},
    "leg": {
        "name", "from", "to", "status", "start", "end", "planned", "walked", "azimuth_error_deg",
        "distance_error_m", "distance_ratio", "cross_track", "own_cross_track", "miss", "found",
        "ledger", "causes",
    },
    "place": {"time", "lon", "lat"},
    "planned": {"grid_azimuth_deg", "magnetic_azimuth_deg", "distance_m", "paces"},
    "walked": {
        "grid_azimuth_deg", "grid_azimuth_95_deg", "straight_m", "path_m", "paces", "duration_s",
        "halted_s",
    },
    "cross_track": {"end_m", "max_abs_m", "rms_m"},
    "miss": {"distance_m", "azimuth_deg", "along_m", "across_m"},
    "ledger": {"inherited", "plan", "heading", "distance", "detour", "total"},
    "cause": {
        "cause", "probability", "evidence", "predicted", "seen", "unit", "made", "runner_up",
        "settles",
    },
    "span": {"start", "end", "leg", "kind"},
    "finding": {"leg", "what", "given", "computed", "message"},
}  # fmt: skip

MEASUREMENTS = (
    "start", "end", "walked", "azimuth_error_deg", "distance_error_m", "distance_ratio",
    "cross_track", "own_cross_track", "miss", "found", "nearest_approach", "ledger",
)  # fmt: skip


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


@pytest.fixture(scope="module")
def document(debrief):
    return debrief.to_dict()


@pytest.fixture(scope="module")
def validator():
    """JSON Schema, draft 2020-12, by the jsonschema library."""
    schema = json.loads(SHIPPED.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def test_contract_names(document):
    leg = document["legs"][0]
    met = {
        "": document, "course": document["course"], "track": document["track"], "leg": leg,
        "place": leg["start"], "planned": leg["planned"], "walked": leg["walked"],
        "cross_track": leg["cross_track"], "miss": leg["miss"], "ledger": leg["ledger"],
        "cause": leg["causes"][0], "span": document["spans"][0],
        "finding": document["plan_findings"][0],
    }  # fmt: skip
    for place, names in CONTRACT.items():
        assert names <= set(met[place]), place
    assert CONTRACT["place"] == set(leg["end"])
    assert CONTRACT["cross_track"] == set(leg["own_cross_track"])
    assert document["format"] == 1


def test_shipped_schema_is_not_stale():
    assert json.loads(SHIPPED.read_text(encoding="utf-8")) == json.loads(schema_text())


def test_schema_says_what_it_is():
    schema = json.loads(SHIPPED.read_text(encoding="utf-8"))
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["title"] == "debrief.json"
    assert schema["description"]
    assert "$id" not in schema


@pytest.mark.parametrize("timed", [True, False])
def test_document_is_valid(validator, timed):
    document = sample_debrief(timed=timed).to_dict()
    validator.validate(document)
    validator.validate(json.loads(json.dumps(document)))


@pytest.mark.parametrize(
    ("spoil", "place"),
    [
        (lambda d: d["legs"][0].pop("miss"), "miss"),
        (lambda d: d["legs"][0].update(status="lost"), "lost"),
        (lambda d: d["spans"][0].update(kind="rest"), "rest"),
        (lambda d: d["legs"][0]["ledger"].update(total=[1.0]), "total"),
        (lambda d: d["course"].update(grid_magnetic_angle_from="guess"), "guess"),
        # Bug: a cause was any text to the schema.
        (lambda d: d["legs"][0]["causes"][0].update(cause="bad-luck"), "bad-luck"),
    ],
)
def test_schema_refuses_a_spoilt_document(validator, spoil, place):
    document = sample_debrief().to_dict()
    spoil(document)
    problems = list(validator.iter_errors(document))
    assert problems, place


def test_leg_not_walked_has_null_measurements(document):
    leg = document["legs"][3]
    assert leg["status"] == "skipped"
    assert [leg[name] for name in MEASUREMENTS] == [None] * len(MEASUREMENTS)
    assert leg["causes"] == []
    assert leg["planned"]["distance_m"] > 0


def test_every_number_is_the_record_s_own(debrief, document):
    for leg, entry in zip(debrief.legs, document["legs"], strict=True):
        measures = leg.audit.measures
        if measures is None:
            continue
        assert entry["azimuth_error_deg"] == measures.azimuth_error_deg
        assert entry["walked"]["straight_m"] == measures.straight_m
        assert entry["miss"]["across_m"] == measures.miss_across_m
        assert entry["ledger"]["heading"] == list(measures.ledger.heading)
        assert entry["walked"]["grid_azimuth_95_deg"] == [
            measures.heading.low_deg,
            measures.heading.high_deg,
        ]
        assert entry["causes"][0]["cause"] == leg.causes[0].cause


def test_ledger_adds_up_to_the_miss_vector(document):
    for leg in document["legs"][:3]:
        parts = [leg["ledger"][name] for name in CONTRACT["ledger"] - {"total"}]
        for axis in (0, 1):
            total_m = sum(part[axis] for part in parts)
            assert total_m == pytest.approx(leg["ledger"]["total"][axis], abs=1e-6)  # metres


def test_spans_cover_the_recording_in_order(document):
    spans = document["spans"]
    assert spans[0]["start"] == document["track"]["start"]
    assert spans[-1]["end"] == document["track"]["end"]
    for before, after in pairwise(spans):
        assert before["end"] == after["start"]
        assert before["last_fix"] == after["first_fix"]
    assert {span["leg"] for span in spans} == {"1", "2", "3", None}


def test_times_are_iso_8601_utc(document):
    # ISO 8601 with Z; 08:30 UTC is where the sample begins.
    assert document["track"]["start"] == "2026-10-03T08:30:00Z"
    assert document["legs"][0]["start"]["time"].endswith("Z")


def test_recording_without_times_gives_no_time():
    document = sample_debrief(timed=False).to_dict()
    assert document["track"]["start"] is None
    assert document["track"]["median_interval_s"] is None
    assert {span["start"] for span in document["spans"]} == {None}
    assert {gap["end"] for gap in document["track"]["gaps"]} == {None}
    leg = document["legs"][0]
    assert leg["start"]["time"] is None
    assert leg["walked"]["duration_s"] is None
    assert leg["nearest_approach"]["time"] is None
    assert leg["walked"]["straight_m"] > 0


def test_only_plain_python_types(document):
    def kinds(value):
        yield type(value)
        children = value.values() if isinstance(value, dict) else value
        if isinstance(value, dict | list):
            for child in children:
                yield from kinds(child)

    assert set(kinds(document)) <= {dict, list, str, int, float, bool, type(None)}


def test_json_text_reads_back_as_the_document(debrief, document):
    text = render_json(debrief)
    assert json.loads(text) == document
    assert text.endswith("}\n")
    assert text == render_json(sample_debrief())


@pytest.mark.parametrize("bad", [float("nan"), float("inf")])
def test_number_that_is_not_finite_is_named(debrief, bad):
    leg = debrief.legs[1]
    measures = replace(leg.audit.measures, path_m=bad)
    broken = replace(leg, audit=replace(leg.audit, measures=measures))
    legs = (debrief.legs[0], broken, *debrief.legs[2:])
    with pytest.raises(ValueError, match=r"debrief\.legs\[1\]\.walked\.path_m is (nan|inf)"):
        replace(debrief, legs=legs).to_dict()


def test_course_without_a_date(debrief, validator):
    card = replace(debrief.card, date=None, date_source="", declination_deg=None,
                   declination_sd_deg=None, model_grid_magnetic_angle_deg=None, model="")  # fmt: skip
    document = replace(debrief, card=card).to_dict()
    validator.validate(document)
    assert document["course"]["date"] is None


def test_two_debriefs_can_be_compared():
    """Bug: ValueError, the truth of an array: records with arrays were compared field by field."""
    debrief = sample_debrief()
    assert debrief == replace(debrief)
    assert debrief != sample_debrief()


def written_to(part, place="debrief") -> list[str]:
    """Where in a tree of records an array can be written to."""
    if isinstance(part, np.ndarray):
        return [place] if part.flags.writeable else []
    if isinstance(part, tuple | list):
        return [one for n, of in enumerate(part) for one in written_to(of, f"{place}[{n}]")]
    if not is_dataclass(part):
        return []
    return [one for name in fields(part)
            for one in written_to(getattr(part, name.name), f"{place}.{name.name}")]  # fmt: skip


def test_no_array_of_a_debrief_can_be_written_to():
    """Bug: halts, the times of the curves and the ground of a leg could be, against the rule."""
    _, finished, _ = demo()
    assert written_to(finished) == []
    assert written_to(private_debrief(finished)) == []
