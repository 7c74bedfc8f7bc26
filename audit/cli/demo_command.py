"""`leg-audit demo`: the main job on a course that ships with the package."""

from __future__ import annotations

from pathlib import Path

from audit.cli.options import DemoFolder, Traceback

DEMO_EXAMPLE = """\b
Example:
    leg-audit demo --out first-look
"""


def demo(
    *,
    out: DemoFolder = Path("leg-audit-demo"),
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Debrief a simulated walk of a course that comes with the program.

    Puts plan, recording and log of the walk into a folder and debriefs them as the
    command debrief would.
    """
    from audit.cli.demo_course import set_out_demo  # noqa: PLC0415 (help stays quick)

    set_out_demo(out)
