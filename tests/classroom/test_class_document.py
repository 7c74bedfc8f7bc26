"""class.json is what its shipped schema says, with names and without them."""

from __future__ import annotations

import json

import pytest
from classes import make_class
from classes.true_results import true_result
from schema.make_schema import SHIPPED_OF_CLASS, class_schema_text
from schema.strict import strict_validator

from audit.reports.class_files import render_class_json


@pytest.fixture(scope="module")
def validator():
    return strict_validator(SHIPPED_OF_CLASS)


@pytest.fixture
def document():
    """A class of 12 with all that a class can show; starts and claims are the true ones."""
    return json.loads(render_class_json(true_result(make_class(100_301, walkers=12, legs=4))))


def test_the_shipped_schema_is_not_stale():
    assert json.loads(SHIPPED_OF_CLASS.read_text(encoding="utf-8")) == json.loads(
        class_schema_text()
    )


def test_the_schema_says_what_it_is_and_describes_every_entry():
    schema = json.loads(SHIPPED_OF_CLASS.read_text(encoding="utf-8"))
    assert schema["title"] == "class.json"
    assert all(entry["description"] for entry in (schema, *schema["$defs"].values()))


def test_a_class_is_valid(validator, document):
    validator.validate(document)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda d: d["walkers"][0].pop("verdict"),
        lambda d: d["walkers"][0].update(verdict="late"),
        lambda d: d["walkers"][0]["legs"][0].update(point="seen"),
        lambda d: d["walkers"][0]["legs"][0].update(miss=[1.0]),
        lambda d: d["legs"][0].update(mean_miss=[1.0, 2.0, 3.0]),
        lambda d: d["standard"].update(road_rule="any"),
        lambda d: d["standard"]["weights"].update(luck=1.0),
        lambda d: d["course"]["lanes"][0]["points"][0].update(lat="north"),
        lambda d: d.update(format=2),
        lambda d: d.update(names=[]),
    ],
)
def test_the_schema_refuses_a_spoilt_class(validator, document, spoil):
    spoil(document)
    assert list(validator.iter_errors(document))
