"""The fingerprint changes with whatever could change a grade, and with nothing else."""

from __future__ import annotations

import hashlib
import json
from dataclasses import fields, replace

import audit
from audit.grading.fingerprint import digest, fingerprint
from audit.readers.standard_file import read_standard


def test_every_figure_of_the_standard_changes_it():
    standard = read_standard("day-course")
    own = fingerprint(standard, (), "1")
    changes = {
        "points_to_find": 5, "radius_m": 31.0, "survey_sd_m": 4.0, "time_limit_s": 60.0,
        "late_grace_s": 1.0, "late_penalty_per_min": 1.0, "azimuth_tolerance_deg": 4.0,
        "distance_tolerance": 0.06, "order": "free", "road_rule": "none", "road_distance_m": 30.0,
        "weights": replace(standard.weights, points=61.0), "name": "x", "edition": "x",
        "sources": (), "notes": ("x",),
    }  # fmt: skip
    assert set(changes) == {one.name for one in fields(standard)} - {"source"}
    for name, value in changes.items():
        assert fingerprint(replace(standard, **{name: value}), (), "1") != own, name
    assert fingerprint(standard, (), "2") != own
    assert fingerprint(replace(standard, source="elsewhere.toml"), (), "1") == own


def test_a_metre_in_a_point_changes_it(tmp_path):
    text = (
        '[course]\nname = "x"\ndate = 2026-09-19\ngrid_magnetic_angle_deg = -7\n'
        '[[point]]\nname = "a"\nposition = "16S 748325 4058285"\n'
        '[[point]]\nname = "b"\nposition = "16S 748825 4058285"\n'
    )
    first, second = tmp_path / "one.toml", tmp_path / "two.toml"
    first.write_text(text)
    second.write_text(text.replace("748825", "748826"))
    standard = read_standard("day-course")
    prints = [fingerprint(standard, (audit.read_plan(path),), "1") for path in (first, second)]
    assert prints[0] != prints[1]
    first.rename(tmp_path / "three.toml")
    assert fingerprint(standard, (audit.read_plan(tmp_path / "three.toml"),), "1") == prints[0]


def test_the_order_in_which_plans_are_given_changes_nothing(tmp_path):
    """Bug: the same class had another fingerprint where its plans were named in another order."""
    plans = []
    for name in ("one", "two"):
        text = (
            f'[course]\nname = "{name}"\ndate = 2026-09-19\ngrid_magnetic_angle_deg = -7\n'
            '[[point]]\nname = "a"\nposition = "16S 748325 4058285"\n'
            '[[point]]\nname = "b"\nposition = "16S 748825 4058285"\n'
        )
        (tmp_path / f"{name}.toml").write_text(text)
        plans.append(audit.read_plan(tmp_path / f"{name}.toml"))
    standard = read_standard("day-course")
    there = fingerprint(standard, tuple(plans), "1")
    assert fingerprint(standard, tuple(plans[::-1]), "1") == there
    assert fingerprint(standard, (plans[0],), "1") != there
    assert fingerprint(standard, (plans[0], plans[0]), "1") != there


def test_the_digest_is_sha_256_of_canonical_json():
    told = json.dumps([{"b": 1, "a": [2.5, None]}], sort_keys=True)
    assert digest({"b": 1, "a": (2.5, None)}) == hashlib.sha256(told.encode()).hexdigest()
