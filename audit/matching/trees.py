"""Decision trees, added up: what many small questions about a row of readings say together."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib import resources
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray


def shipped_trees(file: str, looks: Sequence[str]) -> Mapping[str, Any]:
    """Read a file of trees that is shipped; ValueError if they were grown on other looks."""
    text = resources.files("audit.matching").joinpath(file).read_text("utf-8")
    shipped: Mapping[str, Any] = json.loads(text)
    if tuple(shipped["looks"]) != tuple(looks):
        message = f"{file} was learnt of other looks: learn it anew"
        raise ValueError(message)
    return shipped


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Trees:
    """Trees as one table; arrays of shape (trees, nodes of the largest one).

    Attributes
    ----------
    reading : int array
        Which reading each node asks for; -1 at a leaf.
    most : float array
        Whoever reads no more than this goes on to ``below``, the others to ``above``.
    nats : float array
        What each leaf says; 0 elsewhere.
    """

    reading: NDArray[np.intp]
    most: FloatArray
    below: NDArray[np.intp]
    above: NDArray[np.intp]
    nats: FloatArray

    @classmethod
    def of(cls, shipped: Sequence[Sequence[Sequence[float]]]) -> Trees:
        """Read trees of which each node is [reading, most, below, above] or the leaf [nats]."""
        size = max(len(tree) for tree in shipped)
        table = np.zeros((len(shipped), size, 5))
        table[:, :, 0] = -1.0
        for number, tree in enumerate(shipped):
            for place, node in enumerate(tree):
                table[number, place] = (
                    [-1.0, 0.0, 0.0, 0.0, *node] if len(node) == 1 else [*node, 0.0]
                )
        reading, below, above = (table[:, :, column].astype(np.intp) for column in (0, 2, 3))
        return cls(
            reading=reading, most=table[:, :, 1], below=below, above=above, nats=table[:, :, 4]
        )

    def __call__(self, readings: FloatArray) -> FloatArray:
        """Add up what all trees say of some rows of readings, shape (n, readings)."""
        row, tree = np.arange(len(readings))[:, None], np.arange(len(self.reading))
        node = np.zeros((len(readings), len(tree)), dtype=np.intp)
        while True:
            asked = self.reading[tree, node]
            at_leaf = asked < 0
            if at_leaf.all():
                return np.asarray(self.nats[tree, node].sum(axis=1))
            is_below = readings[row, asked] <= self.most[tree, node]
            onward = np.where(is_below, self.below[tree, node], self.above[tree, node])
            node = np.where(at_leaf, node, onward)
