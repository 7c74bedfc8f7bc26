"""Make the drawing library that the page carries anew.

    PYTHONPATH=.:tests python tests/make_page_script.py

vl-convert puts it together from what it carries itself, without a network; the file
changes only with the version of vl-convert. Its licences stand at its head.
"""

from __future__ import annotations

import gzip
from pathlib import Path

import vl_convert

FOLDER = Path(__file__).resolve().parents[1] / "audit" / "reports" / "script"
TARGET = FOLDER / "vega_bundle.js.gz"


def bundle() -> str:
    """Give the script: it defines window.vegaEmbed and nothing else that can be seen."""
    notice = (FOLDER / "notice.txt").read_text(encoding="utf-8")
    made = vl_convert.javascript_bundle("window.vegaEmbed = vegaEmbed;")
    return f"/*!\n{notice}*/\n(()=>{{{made}}})();\n"


if __name__ == "__main__":
    TARGET.write_bytes(gzip.compress(bundle().encode(), 9, mtime=0))
