"""What a school keeps of its walkers' attempts, and what they show over time."""
