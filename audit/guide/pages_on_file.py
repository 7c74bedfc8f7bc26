"""The pages as they lie in the package: found by name, split into their parts."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable

CAUSE_SECTIONS = (
    "What it is",
    "What it predicts",
    "Its look-alikes",
    "What to practise",
    "Five-minute exercise",
)
"""What the page of every cause tells, in this order."""

_HEADING = re.compile(r"^## (.+)$", re.MULTILINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class GuidePage:
    """One page.

    Attributes
    ----------
    name : str
        What it is asked for by: the name of its file.
    title : str
        Its first line, without the mark of a heading.
    text : str
        The whole page in plain Markdown, ending with one line feed.
    """

    name: str
    title: str
    text: str

    @property
    def sections(self) -> dict[str, str]:
        """Give the text under each heading of the second rank, lines joined to paragraphs."""
        _, *parts = _HEADING.split(self.text)
        return {
            name.strip(): _joined(body) for name, body in zip(parts[::2], parts[1::2], strict=True)
        }


@cache
def topic_pages() -> dict[str, GuidePage]:
    """Give the pages of the guide by name, in alphabetical order; a new file is a new topic."""
    return _pages(_folder())


@cache
def cause_pages() -> dict[str, GuidePage]:
    """Give the pages of the causes by name, in alphabetical order."""
    return _pages(_folder().joinpath("causes"))


def exercise(cause: str) -> str:
    """Give the five-minute exercise that proves or clears a cause; "" where no page has one."""
    page = cause_pages().get(cause)
    return "" if page is None else page.sections.get("Five-minute exercise", "")


def _folder() -> Traversable:
    return files("audit.guide").joinpath("pages")


def _pages(folder: Traversable) -> dict[str, GuidePage]:
    found = {}
    for entry in folder.iterdir():
        if entry.is_file() and entry.name.endswith(".md"):
            name, text = entry.name.removesuffix(".md"), entry.read_text(encoding="utf-8")
            title = text.partition("\n")[0].removeprefix("# ").strip()
            found[name] = GuidePage(name=name, title=title, text=text.rstrip() + "\n")
    return dict(sorted(found.items()))


def _joined(body: str) -> str:
    return "\n".join(" ".join(part.split()) for part in body.strip().split("\n\n"))
