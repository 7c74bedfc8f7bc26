"""A square of four legs walked by hand, and any drawn walk matched against its points."""

from __future__ import annotations

from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.match_walk import match_walk

SQUARE = ((0, 0), (400, 0), (400, 300), (0, 300), (0, 0))


def matched(walk: HandWalk, *points, every_s=1, seed=1, noise_m=3.0, **values):
    """Match a drawn walk, as a receiver records it, against points in metres from the origin."""
    clean = walk.clean(every_s, receiver(seed, noise_m))
    return match_walk(clean, card_of(*points, **values), SETTINGS.matching)


def square_walk(halt_s: int = 45) -> HandWalk:
    """All four legs as planned, with a rest at every point; marked from "a" to "e"."""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(halt_s).mark("b2")
    walk.walk(0, 300).mark("c").halt(halt_s).mark("c2").walk(270, 400).mark("d").halt(halt_s)
    return walk.mark("d2").walk(180, 300).mark("e").halt(60)
