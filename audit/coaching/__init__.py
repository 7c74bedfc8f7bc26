"""What to say to the walker: where each error entered, what would have been, what to practise."""
