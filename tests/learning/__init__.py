"""How the curves of the matching's signs are learnt: by making the right way likely.

The ways of walking a course that the matching adds up are a chain, and what a sign adds to
the cost of a step is linear in the values of its curve at the knots. The curves are those
under which the right way has most of the probability, over many made walks of development
seeds, held back by a penalty on size and on bends of each curve.

``python -m learning --walks 500`` makes the walks, learns, and writes the curves; see
``learning.families``. Reporting and guard seeds are never looked at.
"""
