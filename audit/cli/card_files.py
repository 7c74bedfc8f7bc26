"""From the file of a plan to the card to carry, on the terminal or in a file."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from audit import words
from audit.cli.counted_paces import note_step
from audit.cli.endings import WrongUseError
from audit.cli.leg_profiles import leg_profiles
from audit.cli.messages import say, say_note, say_written, speak_as, tell
from audit.cli.own_input import keep_apart
from audit.leg_card.bezel import is_whole_bezel
from audit.leg_card.carried_card import CarriedCard, carried_card
from audit.leg_card.check_plan import check_plan
from audit.leg_card.profiles import Profile
from audit.plan import Plan
from audit.readers.course_settings import CourseOptions
from audit.readers.plan_file import read_plan
from audit.reports.card_page import render_card_page
from audit.reports.card_paper import render_card_pdf
from audit.reports.card_text import render_card_text
from audit.reports.paper_sizes import CARD_PAPERS, CardPaper
from audit.reports.shown_paces import counting
from audit.reports.wording import leg_names
from audit.reports.write import write_texts
from audit.words import in_force


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWishes:
    """What the card is to be: its file and paper, and what the walker has at hand."""

    out: Path | None = None
    paper: str = "a6"
    ground: Path | None = None
    click_deg: float | None = None
    pace: str | None = None
    words: Path | None = None


_WRITERS: dict[str, Callable[[CarriedCard, CardPaper], str | bytes]] = {
    ".txt": lambda carried, _: render_card_text(carried),
    ".html": render_card_page,
    ".pdf": render_card_pdf,
}


def card_file(plan: Path, wishes: CardWishes, *, options: CourseOptions) -> None:
    """Make the card of a plan and put it where it is wanted.

    Raises
    ------
    AuditError
        Where an input is refused or the card cannot be written.
    """
    speak_as(wishes.words)
    _check(wishes)
    if wishes.out is not None:
        keep_apart(plan, wishes.out)
    carried = _carried(read_plan(plan, **options), wishes)
    paper = next(one for one in CARD_PAPERS if one == wishes.paper)
    # What the check says of the plan's counts calls them by their kind, as the legs do.
    with counting(carried.card.pace):
        if wishes.out is None:
            tell(render_card_text(carried))
        else:
            made = _WRITERS[wishes.out.suffix.lower()](carried, paper)
            write_texts(wishes.out.parent, {wishes.out.name: made})
            say_written(wishes.out)
        _say(carried)


def _check(wishes: CardWishes) -> None:
    if wishes.out is not None and wishes.out.suffix.lower() not in _WRITERS:
        message = (
            f"--out: {wishes.out.name} does not say what to make. Name it .html (for paper), .pdf "
            "or .txt."
        )
        raise WrongUseError(message)
    if wishes.click_deg is not None and not is_whole_bezel(wishes.click_deg):
        message = (
            f"--bezel-click: clicks of {wishes.click_deg:g} degrees do not go round a bezel "
            "evenly. Give what one click turns it by, such as 3 for 120 clicks."
        )
        raise WrongUseError(message)


def _carried(plan: Plan, wishes: CardWishes) -> CarriedCard:
    grounds: dict[str, Profile | None] = {}
    pace = wishes.pace or in_force().units.paces_counted
    if wishes.ground is not None:
        grounds = leg_profiles(check_plan(plan).card, wishes.ground)
    return carried_card(
        plan,
        grounds=grounds,
        heights_from=wishes.ground.name if wishes.ground else "",
        click_deg=wishes.click_deg,
        pace="single" if pace == "single" else "double" if pace else None,
    )


def _say(carried: CarriedCard) -> None:
    """Say what was assumed, and that a card of a plan with findings is not to be carried yet."""
    if carried.findings:
        say(words.say("card-not-yet", count=len(carried.findings)))
    if carried.heights_from:
        missing = [leg.card.name for leg in carried.legs if leg.ground is None]
        if missing:
            legs = leg_names(missing)
            say_note(words.say("terminal-no-heights", file=carried.heights_from, legs=legs))
    for note in carried.card.notes:
        say_note(note)
    note_step(carried.card.paces_per_100m, carried.pace)
