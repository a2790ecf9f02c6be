"""The documents that numbers come from, single figures, and cautions."""
