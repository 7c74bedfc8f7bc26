"""What was walked: heading, distances, cross-track, halts and the ledger of each leg."""
