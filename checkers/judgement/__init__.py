"""Which limit applies, and whether a reading meets it."""
