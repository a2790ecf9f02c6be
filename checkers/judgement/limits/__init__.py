"""Which limit applies at a test current, and how a figure compares with it."""
