"""What the program needs may be given on with it: the licence of every library is known."""

from __future__ import annotations

import csv
import re
import tomllib
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
KNOWN = Path(__file__).with_name("licences.csv")
EXTRAS_TO_RUN = {"test"}
"""Extras that nobody needs who only runs the program."""


def needed() -> set[str]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lines = list(project["dependencies"])
    for extra, more in project["optional-dependencies"].items():
        lines += [] if extra in EXTRAS_TO_RUN else more
    names = {re.split(r"[\s<>=!~;\[]", line, maxsplit=1)[0].lower() for line in lines}
    return names - {"leg-audit"}


def listed() -> dict[str, str]:
    with KNOWN.open(encoding="utf-8", newline="") as file:
        return {row["library"]: row["licence"] for row in csv.DictReader(file)}


def test_the_licence_of_every_library_is_listed():
    assert set(listed()) == needed()


@pytest.mark.parametrize("library", sorted(listed()))
def test_the_list_says_what_the_library_says_of_itself(library):
    try:
        told = distribution(library).metadata
    except PackageNotFoundError:
        pytest.skip("an extra that is not installed")
    texts = [told.get("License-Expression") or "", told.get("License") or ""]
    texts += [one for one in told.get_all("Classifier") or [] if one.startswith("License")]
    said = re.sub(r"[^a-z0-9]", "", " ".join(texts).lower())
    # "BSD-3-Clause" may be told as "BSD License", "Apache-2.0" as "Apache Software License".
    family = listed()[library].split("-")[0].lower()
    assert family in said
