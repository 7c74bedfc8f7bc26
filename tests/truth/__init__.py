"""Values published outside the project, and the reader of their table."""
