"""How often the matching is right on made walks, and how often simpler ways are."""
