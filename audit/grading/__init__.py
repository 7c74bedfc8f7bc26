"""A standard as data, and what it makes of a point and of a walk."""
