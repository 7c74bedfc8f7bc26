"""Before the walk: how far from each point an ordinary walk of the leg ends."""
