"""Numbers as people write them, with units: read in one place, and written out again."""
