"""How often coaching tells the step at which an error entered: made walks, own cards and logs."""
