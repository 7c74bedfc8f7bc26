"""The commands and their help. Everything heavy waits until a command runs."""

from __future__ import annotations

import os
import sys
import warnings
from typing import Annotated

import typer

import audit
from audit.cli.card_command import CARD_EXAMPLE, card
from audit.cli.check_command import CHECK_EXAMPLE, check
from audit.cli.copy_command import COPY_EXAMPLE, copy
from audit.cli.debrief_command import DEBRIEF_EXAMPLE, debrief
from audit.cli.demo_command import DEMO_EXAMPLE, demo
from audit.cli.endings import guarded
from audit.cli.forecast_command import FORECAST_EXAMPLE, forecast
from audit.cli.grade_command import GRADE_EXAMPLE, grade
from audit.cli.guide_command import GUIDE_EXAMPLE, guide
from audit.cli.lanes_command import LANES_EXAMPLE, lanes
from audit.cli.pace_command import PACE_EXAMPLE, pace
from audit.cli.rehearse_command import REHEARSE_EXAMPLE, rehearse
from audit.cli.trend_command import FORGET_EXAMPLE, TREND_EXAMPLE, forget, trend

_ABOUT = "Sets a recorded walk against its planned legs: what was walked, and why it differed."
_EXAMPLE = """\b
Begin with
    leg-audit demo
and then, with your own plan and recording,
    leg-audit debrief plan.toml walk.gpx

\b
Exit status: 0 done, 1 done and there are findings (check, lanes), 2 wrong use,
3 input refused, 4 fault of the program.
"""

app = typer.Typer(
    name="leg-audit",
    help=_ABOUT,
    epilog=_EXAMPLE,
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 88},
)
app.command(help=demo.__doc__, epilog=DEMO_EXAMPLE)(guarded(demo))
app.command(help=check.__doc__, epilog=CHECK_EXAMPLE)(guarded(check))
app.command(help=card.__doc__, epilog=CARD_EXAMPLE)(guarded(card))
app.command(help=copy.__doc__, epilog=COPY_EXAMPLE)(guarded(copy))
app.command(
    help=debrief.__doc__,
    epilog=DEBRIEF_EXAMPLE,
    # What stands behind the recording is looked at there: "--only json csv" means both.
    context_settings={"allow_extra_args": True},
)(guarded(debrief))
app.command(help=forecast.__doc__, epilog=FORECAST_EXAMPLE)(guarded(forecast))
app.command(help=pace.__doc__, epilog=PACE_EXAMPLE)(guarded(pace))
app.command(help=grade.__doc__, epilog=GRADE_EXAMPLE)(guarded(grade))
app.command(help=rehearse.__doc__, epilog=REHEARSE_EXAMPLE)(guarded(rehearse))
app.command(help=lanes.__doc__, epilog=LANES_EXAMPLE)(guarded(lanes))
app.command(help=trend.__doc__, epilog=TREND_EXAMPLE)(guarded(trend))
app.command(help=forget.__doc__, epilog=FORGET_EXAMPLE)(guarded(forget))
app.command(help=guide.__doc__, epilog=GUIDE_EXAMPLE)(guarded(guide))


def _say_version(asked: bool) -> None:  # noqa: FBT001 (typer calls it by position)
    if asked:
        typer.echo(f"leg-audit {audit.__version__}")
        raise typer.Exit


@app.callback()
def _leg_audit(
    *,
    version: Annotated[
        bool,
        typer.Option("--version", callback=_say_version, is_eager=True, help="Say the version."),
    ] = False,
) -> None:
    """Take the options that stand before a command."""


def main() -> None:
    """Run the command line and end the process with its exit status."""
    for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
        # The matrices here are small: threads over them cost more than they bring.
        os.environ.setdefault(threads, "1")
    if not sys.warnoptions:
        warnings.simplefilter("ignore")  # they speak to programmers, in their words
    for stream in (sys.stdout, sys.stderr):
        if stream is not None and hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a terminal without the degree sign
    app(prog_name="leg-audit")
