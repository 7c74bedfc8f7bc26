"""A school's records from the command line: opened before the work, told of after it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

from audit import words
from audit.cli.endings import WrongUseError
from audit.cli.messages import say, say_note, say_page, speak_as, tell
from audit.errors import refuse, refuse_file
from audit.readers.file_bytes import file_bytes
from audit.reports.trend_page import render_trend_page
from audit.reports.trend_report import render_trend, render_trend_json
from audit.reports.write import write_texts
from audit.school_records.attempt import Attempt
from audit.school_records.legs_that_count import once_each, results_of
from audit.school_records.pseudonym import is_pseudonym
from audit.school_records.work_out_trend import work_out_trend
from audit.settings import ReadingSettings

if TYPE_CHECKING:
    from audit.school_records.open_records import Records

_OPTION = "--records"


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordsWanted:
    """Where a result is to be kept, and how long; ``walker`` is whose the one walk is."""

    address: str
    walker: str = ""
    secret: Path | None = None
    keep_until: dt.date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenedRecords:
    """Records ready to be written."""

    records: Records
    wanted: RecordsWanted

    def pseudonym(self, name: str) -> str:
        """Give the pseudonym of a walker."""
        return self.records.pseudonym(name)

    def keep(self, attempts: Sequence[Attempt]) -> None:
        """Keep attempts and say how many were new."""
        from audit.school_records.keep_attempts import keep  # noqa: PLC0415 (help stays quick)

        new = keep(self.records, attempts, self.wanted.keep_until)
        again = len(attempts) - new
        until = str(self.wanted.keep_until) if self.wanted.keep_until else "none"
        kept = {"attempts": _attempts(new), "until": until, "again": str(again)}
        say(words.say("trend-kept", **kept))


def open_records(wanted: RecordsWanted) -> OpenedRecords:
    """Open records to write; what is overdue there is deleted, and that is said.

    Raises
    ------
    InputRefusedError
        Where they cannot be used.
    WrongUseError
        Where the last day to keep has passed.
    """
    today = dt.datetime.now(tz=dt.UTC).date()
    if wanted.keep_until is not None and wanted.keep_until < today:
        message = f"--keep-until: {wanted.keep_until} has passed. Give a day to come."
        raise WrongUseError(message)
    _need_libraries(wanted.address)
    from audit.school_records.keep_attempts import delete_overdue  # noqa: PLC0415
    from audit.school_records.open_records import open_to_write  # noqa: PLC0415

    records = open_to_write(wanted.address, _secret(wanted.secret))
    if overdue := delete_overdue(records, today):
        say_note(words.say("trend-overdue", attempts=_attempts(overdue)))
    return OpenedRecords(records=records, wanted=wanted)


def trend_files(
    walker: str,
    address: str,
    secret: Path | None,
    *,
    as_json: bool,
    folder: Path | None,
    words_from: Path | None = None,
) -> None:
    """Tell the trend of a walker.

    Raises
    ------
    InputRefusedError
        Where the records cannot be read, or hold nothing of the walker.
    """
    speak_as(words_from)
    _need_libraries(address)
    from audit.school_records.keep_attempts import attempts_of  # noqa: PLC0415
    from audit.school_records.open_records import open_to_read  # noqa: PLC0415

    records = open_to_read(address, _secret(secret))
    known = walker if is_pseudonym(walker) else records.pseudonym(walker)
    attempts = attempts_of(records, known, dt.datetime.now(tz=dt.UTC).date())
    if not attempts:
        rule = "is a walker of whom the records hold nothing"
        remedy = "Write the name as it was when the attempts were kept, or give the pseudonym."
        raise refuse(_OPTION, "", walker, rule, remedy)
    trend = work_out_trend(known, attempts)
    document = render_trend_json(trend)
    tell(document if as_json else render_trend(trend))
    if folder is not None:
        texts = {"trend.json": document, "trend.html": render_trend_page(trend)}
        written = write_texts(folder, texts)
        say_page(written[-1])


@dataclass(frozen=True, slots=True, kw_only=True)
class Forgotten:
    """What is to be deleted besides what is overdue; None: not asked for."""

    walker: str | None = None
    attempt: int | None = None
    before: dt.date | None = None


def forget_files(
    address: str, secret: Path | None, asked: Forgotten, *, words_from: Path | None = None
) -> None:
    """Delete from the records what is overdue, and what else is asked for; say how much.

    Raises
    ------
    InputRefusedError
        Where the records cannot be used, or are not there: new ones would hold nothing to
        delete, and whoever mistyped their name would believe it gone.
    WrongUseError
        Where an attempt is asked for that is nobody's, or that the walker does not have.
    """
    speak_as(words_from)
    _need_libraries(address)
    from audit.school_records.keep_attempts import delete_before, delete_walker  # noqa: PLC0415
    from audit.school_records.open_records import refuse_missing  # noqa: PLC0415

    walker, before = asked.walker, asked.before
    if asked.attempt is not None and (walker is None or before is not None):
        message = "--attempt is one of a walker's: give --walker with it, and no --before."
        raise WrongUseError(message)
    refuse_missing(address)
    opened = open_records(RecordsWanted(address=address, secret=secret))
    known = None
    if walker is not None:
        known = walker if is_pseudonym(walker) else opened.pseudonym(walker)
    if known is not None and asked.attempt is not None:
        _forget_attempt(opened.records, known, asked.attempt)
        return
    if known is not None and before is None:
        gone = _attempts(delete_walker(opened.records, known))
        tell(words.say("trend-forgotten", walker=known, attempts=gone) + "\n")
    if before is not None:
        gone = _attempts(delete_before(opened.records, before, known))
        if known is None:
            tell(words.say("trend-forgotten-before", day=str(before), attempts=gone) + "\n")
        else:
            told = {"walker": known, "day": str(before), "attempts": gone}
            tell(words.say("trend-forgotten-of-before", **told) + "\n")
    if walker is None and before is None:
        tell(words.say("trend-forgotten-overdue") + "\n")


def _forget_attempt(records: Records, walker: str, number: int) -> None:
    """Delete all results of one walk, by its number in the trend of its walker."""
    from audit.school_records.keep_attempts import (  # noqa: PLC0415
        delete_numbered,
        numbered_attempts_of,
    )

    kept = numbered_attempts_of(records, walker, dt.datetime.now(tz=dt.UTC).date())
    attempts = [attempt for _, attempt in kept]
    walks = once_each(attempts)
    if number > len(walks):
        message = f"--attempt {number}: of this walker the records hold {len(walks)}; see trend."
        raise WrongUseError(message)
    walk = walks[number - 1]
    gone = delete_numbered(records, [kept[place][0] for place in results_of(walk, attempts)])
    told = words.say(
        "trend-forgotten-attempt",
        walker=walker,
        number=str(number),
        day=str(walk.walked_on) if walk.walked_on else "none",
        course=walk.course,
        results=gone,
    )
    tell(told + "\n")


def _secret(file: Path | None) -> str | None:
    if file is None:
        return None
    data = file_bytes(file, "a secret", ReadingSettings())
    secret = data.decode("utf-8", errors="replace").strip()
    if not secret:
        rule = "is empty"
        raise refuse_file(file.name, rule, "Put a sentence that nobody guesses into it.")
    return secret


def _need_libraries(address: str) -> None:
    """Say so where the libraries of the records are not installed."""
    if not all(find_spec(name) for name in ("alembic", "scipy", "sqlalchemy")):
        rule = "needs libraries that are not installed here"
        remedy = 'Install them: pip install "leg-audit[records]".'
        raise refuse(_OPTION, "", address.rpartition("@")[2], rule, remedy)


def _attempts(number: int) -> str:
    return words.say("trend-attempts", count=number)
