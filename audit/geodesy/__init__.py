"""Where a place lies on the grid of the course, and how far and which way to another."""
