"""`leg-audit guide`: the manual, offline, in the terminal."""

from __future__ import annotations

from audit.cli.options import GuideTopic, Traceback

GUIDE_EXAMPLE = """\b
Example:
    leg-audit guide
    leg-audit guide causes
    leg-audit guide gm-angle-omitted
"""


def guide(
    topic: GuideTopic = None,
    *,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Show a page of the manual, or the list of its pages.

    Every cause that a debrief may name has a page: what it is, what it predicts, how it
    is told from its look-alikes, what to practise, and an exercise of five minutes.
    """
    from audit.cli.endings import WrongUseError  # noqa: PLC0415 (help stays quick)
    from audit.cli.messages import tell  # noqa: PLC0415
    from audit.guide.contents import NoSuchTopicError, contents, guide_text  # noqa: PLC0415

    try:
        tell(contents() if topic is None else guide_text(topic))
    except NoSuchTopicError as unknown:
        raise WrongUseError(str(unknown)) from None
