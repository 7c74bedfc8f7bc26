"""`leg-audit pace`: the walker's pace count from walked strips."""

from __future__ import annotations

from audit.cli.options import (
    AsJson,
    CountedPaces,
    EachStrip,
    Pace,
    StripLengthGiven,
    Traceback,
    TrackFiles,
    WordsFile,
)

PACE_EXAMPLE = """\b
Example:
    leg-audit pace strip.gpx --paces 392
    leg-audit pace out.gpx back.gpx --paces 392 --paces 396
    leg-audit pace strip.gpx --paces 65 --strip 100
    leg-audit pace hike-with-cadence.gpx
"""


def pace(  # noqa: PLR0913 (one parameter an option)
    tracks: TrackFiles,
    *,
    paces: CountedPaces = None,
    each: EachStrip = False,
    strip: StripLengthGiven = None,
    pace: Pace = None,
    json: AsJson = False,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Give the walker's pace count from walked strips, or from a recording's cadence.

    Give --paces once for each recording, in their order; once for all of them together;
    or once with --each for the same count on each. Without it the cadence of the
    recordings is gone by. The error counts the receiver's, which is much on a short
    strip: walk 600 m, or give a measured length with --strip.
    """
    from audit.cli.pace_files import pace_files  # noqa: PLC0415 (help stays quick)

    pace_files(
        tracks,
        paces=paces or [],
        each=each,
        strip_m=strip,
        pace=pace,
        as_json=json,
        words=words,
    )
