"""What the guide answers: the list of topics, the list of causes, or one page as text."""

from __future__ import annotations

from difflib import get_close_matches

from audit.errors import AuditError
from audit.guide.cause_names import CAUSE_KINDS
from audit.guide.pages_on_file import GuidePage, cause_pages, topic_pages

CAUSES = "causes"
"""The topic that lists the causes."""
CAUTIONS = "cautions"
"""The topic of the cautions, to which every other page points."""
_GIST = f"""
A training aid, no tracker: count heads, and search at once for anyone not back;
check the angle and its date on the map; follow local rules; positions and
causes are uncertain, and a human signs the grade.
In full: leg-audit guide {CAUTIONS}
"""


class NoSuchTopicError(AuditError):
    """The guide has no page of that name; the message names what comes near."""


def contents() -> str:
    """Give the list of topics, one line each."""
    pages = topic_pages()
    width = max(len(name) for name in pages)
    lines = [f"  {name:<{width}}  {page.title}" for name, page in pages.items()]
    head = ["The guide of leg-audit. For a page: leg-audit guide TOPIC", ""]
    foot = ["", f"Each cause has a page too: leg-audit guide {CAUSES} lists them."]
    return "\n".join([*head, *lines, *foot]) + "\n" + _GIST


def guide_text(topic: str) -> str:
    """Give the page of a topic or of a cause as text for a terminal.

    Raises
    ------
    NoSuchTopicError
        Where there is none.
    """
    name = "-".join(topic.lower().removesuffix(".md").replace("_", " ").split())
    page = topic_pages().get(name) or cause_pages().get(name)
    if page is None:
        raise NoSuchTopicError(_no_page(topic, name))
    text = plain_page(page)
    if page.name == CAUTIONS:
        return text
    return (f"{text}\n{_cause_list()}" if page.name == CAUSES else text) + _GIST


def plain_page(page: GuidePage) -> str:
    """Give a page with its headings as a terminal shows them."""
    lines = []
    for line in page.text.splitlines():
        if line.startswith("## "):
            lines.append(line.removeprefix("## "))
            lines.append("-" * len(lines[-1]))
        elif line.startswith("# "):
            lines.append(line.removeprefix("# "))
            lines.append("=" * len(lines[-1]))
        else:
            lines.append(line)
    return "\n".join(lines) + "\n"


def _cause_list() -> str:
    pages = cause_pages()
    width = max(len(name) for name in pages)
    lines = []
    for kind, names in CAUSE_KINDS.items():
        lines.append(kind)
        lines.extend(f"  {name:<{width}}  {pages[name].title.partition(': ')[2]}" for name in names)
        lines.append("")
    return "\n".join(lines).rstrip() + "\n"


def _no_page(topic: str, name: str) -> str:
    known = [*topic_pages(), *cause_pages()]
    near = get_close_matches(name, known, n=3, cutoff=0.5)
    perhaps = f"Perhaps {' or '.join(near)} is meant. " if near else ""
    return f'The guide has no page "{topic}". {perhaps}leg-audit guide lists the topics.'
