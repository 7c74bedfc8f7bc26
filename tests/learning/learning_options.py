"""What is asked and told alike of whatever is learnt from made walks."""

from __future__ import annotations

import argparse

from learning.families import FIRST_SEEDS, OTHERS_FIRST_SEEDS, Use


def parser_of(module: str, about: str | None) -> argparse.ArgumentParser:
    """Give a parser with what is asked of everything that learns."""
    parser = argparse.ArgumentParser(prog=f"python -m {module}", description=about)
    parser.add_argument("--walks", type=int, default=400, help="walks to learn from")
    parser.add_argument("--apart", type=int, default=200, help="walks kept apart")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--write", action="store_true", help="write what is shipped")
    return parser


def learnt_from(walks: int, others: int = 0, *, use: Use = "curves") -> str:
    """Say in a shipped file which walks it was learnt from."""
    own = (
        f"{walks} made walks of the development seeds from {FIRST_SEEDS[use]:,} on; "
        f"those from {FIRST_SEEDS['apart']:,} on were kept apart"
    )
    if not others:
        return own
    return (
        f"{own}; and {others} walks of other makers, of their seeds from "
        f"{OTHERS_FIRST_SEEDS[use]:,} on; those from {OTHERS_FIRST_SEEDS['apart']:,} on were kept "
        "apart"
    )
