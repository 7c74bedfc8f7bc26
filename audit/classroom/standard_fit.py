"""Whether a standard can be that of the lanes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from audit.standard import Standard
from audit.words import sentence
from audit.words.figures import Listed


def lanes_with_fewer(points: Mapping[str, int], standard: Standard) -> Iterator[str]:
    """Say which lanes have fewer points to find than a standard asks for, by their names."""
    asked = standard.points_to_find
    if asked is None:
        return
    for has in sorted({has for has in points.values() if has < asked}):
        lanes = [name for name, count in points.items() if count == has]
        yield sentence(
            "shows-fewer-points",
            standard=standard.name,
            asked=str(asked),
            lanes=Listed(things=lanes),
            count=len(lanes),
            has=str(has),
        )
