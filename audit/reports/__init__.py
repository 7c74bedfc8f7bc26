"""The finished debrief in words, pictures and files; nothing is computed here."""
