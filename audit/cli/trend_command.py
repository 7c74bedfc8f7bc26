"""`leg-audit trend`: what a walker's attempts show over time; `forget`: what is let go."""

from __future__ import annotations

from audit.cli.options import AsJson, Traceback, WordsFile
from audit.cli.records_options import (
    AttemptToForget,
    Before,
    RecordsSecret,
    RecordsToRead,
    TrendFolder,
    WalkerAsked,
    WalkerToForget,
)

TREND_EXAMPLE = """\b
Example:
    leg-audit trend "Ada Example" --records school.db
    leg-audit trend "Ada Example" --records postgresql://me@host/school --out ada
"""
FORGET_EXAMPLE = """\b
Example:
    leg-audit forget --records school.db
    leg-audit forget --records school.db --walker "Ada Example"
    leg-audit forget --records school.db --walker "Ada Example" --attempt 3
    leg-audit forget --records school.db --before 2026-01-01
"""


def trend(
    walker: WalkerAsked,
    *,
    records: RecordsToRead,
    records_secret: RecordsSecret = None,
    json: AsJson = False,
    out: TrendFolder = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Tell what a walker's attempts show over time, day and night apart.

    Heading bias and scatter, distance, pace count and causes, each with its error. A
    change is claimed only where the numbers carry it. The records come from grade and
    debrief with --records.
    """
    from audit.cli.records_files import trend_files  # noqa: PLC0415 (help stays quick)

    trend_files(walker, records, records_secret, as_json=json, folder=out, words_from=words)


def forget(
    *,
    records: RecordsToRead,
    records_secret: RecordsSecret = None,
    walker: WalkerToForget = None,
    attempt: AttemptToForget = None,
    before: Before = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Delete from the records what is past its last day to keep.

    With --walker also all of one walker, with --before also what was walked before a
    day; with both, what that walker walked before it; with --walker and --attempt that
    one walk. What is deleted cannot be had back.
    """
    from audit.cli.records_files import Forgotten, forget_files  # noqa: PLC0415 (help stays quick)

    asked = Forgotten(walker=walker, attempt=attempt, before=before)
    forget_files(records, records_secret, asked, words_from=words)
