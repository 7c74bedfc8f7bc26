"""The card to carry as a page for paper: black on white, one file, nothing fetched."""

from __future__ import annotations

from dataclasses import dataclass

from audit.leg_card.carried_card import CarriedCard
from audit.reports.card_words import card_words
from audit.reports.html_report import page_templates
from audit.reports.paper_sizes import CardPaper, card_sheet
from audit.reports.version import program_version
from audit.words import in_force


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSetting:
    """How a card is set on its paper.

    Attributes
    ----------
    width_mm, height_mm : float
    margin_mm, binding_mm : float
        White at each edge, and at the left where the sheet is held or punched.
    text_pt, figure_pt : float
        Sizes of type: none smaller than can be read by a dim red light.
    columns : int
        Of figures beside each other.
    """

    width_mm: float
    height_mm: float
    margin_mm: float
    binding_mm: float
    text_pt: float
    figure_pt: float
    columns: int


# (margin, binding, text, figures, columns), chosen by looking at each size on paper.
_SIZES: dict[CardPaper, tuple[float, float, float, float, int]] = {
    "a6": (6.0, 9.0, 8.5, 13.0, 4),
    "a5": (8.0, 13.0, 9.0, 15.0, 4),
    "a4": (12.0, 18.0, 10.0, 17.0, 4),
    "letter": (12.0, 18.0, 10.0, 17.0, 4),
}


def card_setting(paper: CardPaper) -> CardSetting:
    """Give how a card is set on a kind of paper."""
    sheet = card_sheet(paper)
    margin_mm, binding_mm, text_pt, figure_pt, columns = _SIZES[paper]
    return CardSetting(
        width_mm=sheet.width_mm,
        height_mm=sheet.height_mm,
        margin_mm=margin_mm,
        binding_mm=binding_mm,
        text_pt=text_pt,
        figure_pt=figure_pt,
        columns=columns,
    )


def render_card_page(carried: CarriedCard, paper: CardPaper) -> str:
    """Give the page."""
    return (
        page_templates()
        .get_template("card.html.j2")
        .render(
            words=card_words(carried),
            set=card_setting(paper),
            language=in_force().language,
            version=program_version(),
        )
    )
