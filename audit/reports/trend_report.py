"""The trend of a walker: text for people, a document for programs."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Sequence
from dataclasses import asdict, fields

from audit.reports.printable import printable
from audit.reports.trend_words import (
    LIGHT_WORDS,
    AttemptRow,
    attempt_rows,
    cause_rows,
    counted,
    figure_rows,
    left_out_words,
    meaning,
)
from audit.school_records.trend import Trend, TrendOfLight

TREND_FORMAT = 1
"""Number of the shape of the document of a trend."""
_WIDTH = 88
_HEADS = AttemptRow(
    number="no.", day="day", course="course", legs="legs", heading="heading",
    scatter="scatter", distance="distance", paces="paces/100 m", causes="mistakes (legs)",
)  # fmt: skip


def render_trend(trend: Trend) -> str:
    """Give plain text that ends with a line feed."""
    lines = [f"{trend.walker}: {counted(trend.attempts, 'attempt')}"]
    lines += [f"note: {note}" for note in trend.notes]
    for light in trend.lights:
        lines += ["", *_of_light(trend, light)]
    for sentence in meaning(trend):
        lines += ["", *textwrap.wrap(sentence, _WIDTH)]
    return "\n".join(printable(line).rstrip() for line in lines) + "\n"


def render_trend_json(trend: Trend) -> str:
    """Give the document of a trend; nothing rounded."""
    document = {"format": TREND_FORMAT, **asdict(trend)}
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False, default=str) + "\n"


def _of_light(trend: Trend, light: TrendOfLight) -> list[str]:
    attempts, legs = counted(len(light.attempts), "attempt"), counted(light.legs, "leg")
    title = f"{LIGHT_WORDS[light.light]}: {attempts}, {legs}"
    lines = [title]
    rows = [(row.name, row.value, f"({row.interval})", row.change)
            for row in figure_rows(trend, light)]  # fmt: skip
    lines += _columns(rows)
    table = [_HEADS, *attempt_rows(light)]
    names = [one.name for one in fields(AttemptRow)]
    lines += ["", *_columns([tuple(getattr(row, name) for name in names) for row in table])]
    causes = [(cause, f"{legs} legs", share) for cause, legs, share in cause_rows(light)]
    lines += ["", "  causes, by their probabilities:", *_columns(causes)]
    told = left_out_words(light)
    return [*lines, *([f"  {told}"] if told else [])]


def _columns(rows: Sequence[tuple[str, ...]]) -> list[str]:
    if not rows:
        return []
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    return [
        "  " + "  ".join(word.ljust(width) for word, width in zip(row, widths, strict=True))
        for row in rows
    ]
