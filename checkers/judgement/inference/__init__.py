"""From readings to causes: how likely each one is, what speaks for it, what to test next."""
