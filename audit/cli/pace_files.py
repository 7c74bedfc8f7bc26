"""From recordings of walked strips to the pace count."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from audit.cli.endings import WrongUseError
from audit.cli.messages import say_note, speak_as, tell
from audit.errors import InputRefusedError, Problem
from audit.leg_card.pace_kind import step_note
from audit.pacing.pace_count import pace_count
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.reports.pace_report import render_pace, render_pace_json
from audit.settings import PaceSettings, ReadingSettings
from audit.track import Track
from audit.words import in_force, sentence

_PERHAPS = 392
"""Of a strip of 600 m, as in the examples."""


def pace_files(
    paths: Sequence[Path],
    *,
    paces: Sequence[float],
    each: bool,
    strip_m: float | None,
    pace: str | None,
    as_json: bool,
    words: Path | None = None,
) -> None:
    """Tell the pace count of some recordings.

    Raises
    ------
    AuditError
        Where an input is refused, or the counts do not fit the recordings.
    """
    speak_as(words)
    _check(paths, paces, strip_m, each=each)
    pace = pace or in_force().units.paces_counted
    by_track = [*paces] * len(paths) if each else [*paces] if len(paces) == len(paths) else None
    count = pace_count(
        _tracks(paths),
        each=by_track or None,
        together=paces[0] if paces and not by_track else None,
        strip_m=strip_m,
        pace="single" if pace == "single" else "double" if pace else None,
    )
    if count.best is None:
        raise InputRefusedError(
            [
                Problem(
                    file=strip.source or "track",
                    place="",
                    value="",
                    rule="has no cadence to go by, and no paces were counted on it",
                    remedy=f"Say how many were counted: --paces {_PERHAPS}.",
                )
                for strip in count.strips
            ]
        )
    tell(render_pace_json(count) if as_json else render_pace(count))
    step = step_note(count.best.per_100m, count.pace, PaceSettings())
    if step:
        say_note(step)
    for strip in count.strips:
        for note in strip.notes:
            say_note(sentence("figure-colon", before=strip.source, last=note))


def _check(
    paths: Sequence[Path], paces: Sequence[float], strip_m: float | None, *, each: bool
) -> None:
    message, limits = "", ReadingSettings()
    if each and len(paces) != 1:
        message = "--each holds for one --paces. Give --paces once."
    elif len(paces) not in (0, 1, len(paths)):
        message = (
            f"--paces: {len(paces)} counts for {len(paths)} recordings. Give one for each, in "
            "their order, or one for all of them together."
        )
    elif beyond := [one for one in paces if not 0.0 < one <= limits.most_paces]:
        message = (
            f"--paces {beyond[0]:g}: a count lies above 0, up to {limits.most_paces:.0f}. "
            "Give what was counted."
        )
    elif strip_m is not None and not 0.0 < strip_m <= limits.longest_leg_m:
        message = (
            f"--strip {strip_m:g}: a length lies above 0, up to {limits.longest_leg_m:.0f} m. "
            "Give metres."
        )
    elif strip_m is not None and not paces:
        message = "--strip says how long the counted strip is. Give --paces with it."
    if message:
        raise WrongUseError(message)


def _holds_plan(path: Path) -> bool:
    try:
        read_plan(path)
    except InputRefusedError:
        return False
    return True


def _is_a_plan(path: Path) -> Problem:
    return Problem(
        file=path.name,
        place="",
        value="",
        rule="is a plan, and paces are counted on a recording",
        remedy="Give the GPX file of the strip that was walked.",
    )


def _tracks(paths: Sequence[Path]) -> list[Track]:
    """Read all recordings, and tell the problems of all."""
    tracks: list[Track] = []
    problems: list[Problem] = []
    for path in paths:
        try:
            tracks.append(read_track(path))
        except InputRefusedError as refused:
            problems += [_is_a_plan(path)] if _holds_plan(path) else refused.problems
    if problems:
        raise InputRefusedError(problems)
    return tracks
