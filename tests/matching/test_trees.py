"""Decision trees, followed by hand."""

from __future__ import annotations

import numpy as np
import pytest

from audit.matching.trees import Trees

ONE = [[0, 1.5, 1, 2], [0.5], [1, -2.0, 3, 4], [-1.0], [0.25]]
"""Reading 0 no more than 1.5: half a nat; else by reading 1."""
OTHER = [[3.0]]


def by_hand(tree, row):
    node = tree[0]
    while len(node) > 1:
        reading, most, below, above = node
        node = tree[below if row[reading] <= most else above]
    return node[0]


@pytest.mark.parametrize(
    ("row", "nats"),
    [((1.0, 0.0), 0.5), ((1.5, 9.0), 0.5), ((1.6, -2.0), -1.0), ((1.6, -1.9), 0.25)],
)
def test_a_row_goes_from_question_to_question(row, nats):
    assert Trees.of([ONE])(np.array([row])) == pytest.approx([nats])


def test_trees_of_any_size_add_up():
    assert Trees.of([ONE, OTHER, ONE])(np.array([[0.0, 0.0]])) == pytest.approx([4.0])


def test_nothing_is_endless_and_the_endless_is_more_than_anything():
    rows = np.array([[np.inf, -np.inf], [-np.inf, np.inf]])
    assert Trees.of([ONE])(rows) == pytest.approx([-1.0, 0.5])


def test_many_rows_are_followed_as_each_by_itself():
    chance = np.random.default_rng(5)
    rows = chance.normal(0.0, 3.0, (200, 2))
    trees = [ONE, OTHER, [[1, 0.3, 2, 1], [-0.7], [0, 0.0, 3, 4], [0.1], [0.2]]]
    told = Trees.of(trees)(rows)
    assert told == pytest.approx([sum(by_hand(tree, row) for tree in trees) for row in rows])
    assert len(set(np.round(told, 6))) > 4


def test_no_row_is_told_nothing():
    assert Trees.of([ONE])(np.zeros((0, 2))).shape == (0,)
