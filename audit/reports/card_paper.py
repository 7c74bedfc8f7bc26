"""The card to carry as a PDF, made without a browser."""

from __future__ import annotations

from dataclasses import asdict

from audit.leg_card.carried_card import CarriedCard
from audit.reports.card_page import card_setting
from audit.reports.card_words import card_words
from audit.reports.paper_report import FONTS, typeset
from audit.reports.paper_sizes import CardPaper
from audit.reports.version import program_version
from audit.words import in_force, say


def render_card_pdf(carried: CarriedCard, paper: CardPaper) -> bytes:
    """Give the card as a PDF.

    Raises
    ------
    OutputRefusedError
        The typesetting library is not installed.
    """
    data = {
        "words": asdict(card_words(carried)),
        "set": asdict(card_setting(paper)),
        "fonts": FONTS,
        "language": in_force().language,
        "made_by": say("page-made-by", version=program_version()),
    }
    return typeset("card.typ", data, {})
