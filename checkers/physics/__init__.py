"""How fault currents, sensing cores and devices behave."""
