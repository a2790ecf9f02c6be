"""Pictures of currents over time, or of their sums, and of what a core makes of them."""
