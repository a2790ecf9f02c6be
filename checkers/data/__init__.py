"""Numbers and words as data files, with no logic."""
