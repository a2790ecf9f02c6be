"""The data files: where they are, how strictly they are read, and the units they may name."""
