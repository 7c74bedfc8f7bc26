"""Growing one tree of many, each on what the ones before it still have wrong."""

from __future__ import annotations

import json
from dataclasses import dataclass

import numpy as np
from sklearn.tree import DecisionTreeRegressor

COLUMNS = 0.4
"""Each question sees this share of the looks: what only one of many trees sees is no habit of
the walks that were made. Chosen, as are all sizes of trees."""

_MOST_NATS = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Growth:
    """How large trees grow, and how much each counts.

    A leaf answers as if ``held_back`` more weight stood in it that says nothing.
    """

    leaves: int
    in_leaf: int
    rate: float
    held_back: float


def grow_tree(
    looks: np.ndarray, due: np.ndarray, bend: np.ndarray, number: int, growth: Growth
) -> list[list[float]]:
    """Grow a tree as it is shipped, whose leaves are Newton steps.

    Of rows of looks, shape (n, k), ``due`` is how much each is told too low, and ``bend`` how
    fast that falls; ``number`` decides by chance which looks are asked.
    """
    tree = DecisionTreeRegressor(
        max_leaf_nodes=growth.leaves,
        min_samples_leaf=growth.in_leaf,
        max_features=COLUMNS,
        random_state=number,
    )
    tree.fit(looks, due / bend, sample_weight=bend)
    return nodes_of(tree.tree_, growth)


def nodes_of(tree, growth: Growth) -> list[list[float]]:
    """Give a grown tree as it is shipped: nodes in a row, each leaf with its nats."""
    nodes: list[list[float]] = []
    for place in range(tree.node_count):
        below, above = int(tree.children_left[place]), int(tree.children_right[place])
        if below < 0:
            weight = float(tree.weighted_n_node_samples[place])
            nats = tree.value[place].item() * weight / (weight + growth.held_back)
            nats = growth.rate * float(np.clip(nats, -_MOST_NATS, _MOST_NATS))
            nodes.append([round(nats, 4)])
        else:
            # Looks are compared as read: a threshold between two of them may be rounded.
            most = float(f"{tree.threshold[place]:.5g}")
            nodes.append([int(tree.feature[place]), most, below, above])
    return nodes


def text_of(learnt: dict) -> str:
    """Give a file of trees, a tree a line."""
    parts = []
    for name, value in learnt.items():
        if name in ("from", "looks"):
            parts.append(f' "{name}": {json.dumps(value)}')
        else:
            trees = ",\n".join(f"  {json.dumps(tree, separators=(',', ':'))}" for tree in value)
            parts.append(f' "{name}": [\n{trees}\n ]')
    return "{\n" + ",\n".join(parts) + "\n}\n"
