"""The files of a class beside the debriefs: page, document and spreadsheets."""

from __future__ import annotations

import json

from audit.classroom.class_result import ClassResult
from audit.reports.class_page import render_class_html
from audit.reports.class_spreadsheet import render_class_csv, render_class_xlsx


def class_texts(result: ClassResult) -> dict[str, str | bytes]:
    """Give the content of each file by its name."""
    return {
        "class.json": render_class_json(result),
        "class.csv": render_class_csv(result),
        "class.xlsx": render_class_xlsx(result),
        "class.html": render_class_html(result),
    }


def render_class_json(result: ClassResult) -> str:
    """Give class.json."""
    return json.dumps(result.to_dict(), indent=1, ensure_ascii=False, allow_nan=False) + "\n"
