"""How often the intervals of the measurements hold the truth on made walks."""
