"""Which portion of the recording belongs to which leg."""
