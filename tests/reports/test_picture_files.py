"""The pictures alone: whole SVG and PNG files, named by what they show."""

from __future__ import annotations

import io

import pytest
from defusedxml.ElementTree import fromstring
from PIL import Image
from reports.sample_debrief import sample_debrief

from audit.reports.picture_files import picture_files


def test_pictures_are_whole_files():
    made = picture_files(sample_debrief())
    # Legs 1 to 3 were walked, leg 4 was not.
    legs = [f"leg-{n}-{kind}" for n in (1, 2, 3) for kind in ("strip", "azimuth", "ledger")]
    assert {name.rpartition(".")[0] for name in made} == {"map", "walk", "misses", *legs}
    for name, content in made.items():
        if name.endswith(".svg"):
            root = fromstring(content)
            width, height = float(root.get("width")), float(root.get("height"))
        else:
            with Image.open(io.BytesIO(content)) as image:
                shown = image.convert("RGB")
            assert shown.size[0] >= 2.9 * 200  # three dots to a pixel
            assert len(shown.getcolors(1 << 24)) > 8
            assert shown.size[0] / shown.size[1] == pytest.approx(width / height, rel=0.01)
