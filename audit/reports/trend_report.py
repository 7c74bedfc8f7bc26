"""The trend of a walker: text for people, a document for programs."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Sequence
from dataclasses import asdict, fields

from audit.reports.printable import printable
from audit.reports.shown_paces import counting, hundred
from audit.reports.trend_words import (
    AttemptRow,
    attempt_rows,
    cause_rows,
    figure_rows,
    left_out_words,
    meaning,
)
from audit.school_records.trend import Trend, TrendOfLight
from audit.words import say

TREND_FORMAT = 1
"""Number of the shape of the document of a trend."""
_WIDTH = 88


def render_trend(trend: Trend) -> str:
    """Give plain text that ends with a line feed."""
    with counting(trend.pace_unit):
        return _text(trend)


def _text(trend: Trend) -> str:
    attempts = say("trend-attempts", count=trend.attempts)
    lines = [say("trend-walker", walker=trend.walker, attempts=attempts)]
    lines += [say("terminal-note", note=note) for note in trend.notes]
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
    attempts = say("trend-attempts", count=len(light.attempts))
    legs = say("trend-legs", count=light.legs)
    called = say(f"trend-{light.light}")
    lines = [say("trend-light", light=called, attempts=attempts, legs=legs)]
    rows = [(row.name, row.value, f"({row.interval})", row.change)
            for row in figure_rows(trend, light)]  # fmt: skip
    lines += _columns(rows)
    names = [one.name for one in fields(AttemptRow)]
    heads = tuple(say(f"trend-column-{name}", length=hundred()) for name in names)
    rows_of = [tuple(getattr(row, name) for name in names) for row in attempt_rows(light)]
    lines += ["", *_columns([heads, *rows_of])]
    causes = [
        (cause, say("trend-expected", legs=expected), share)
        for cause, expected, share in cause_rows(light)
    ]
    lines += ["", f"  {say('trend-causes-begin')}", *_columns(causes)]
    left_out = left_out_words(light)
    return [*lines, *([f"  {left_out}"] if left_out else [])]


def _columns(rows: Sequence[tuple[str, ...]]) -> list[str]:
    if not rows:
        return []
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    return [
        "  " + "  ".join(word.ljust(width) for word, width in zip(row, widths, strict=True))
        for row in rows
    ]
