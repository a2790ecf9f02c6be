"""A test plan: which tests, in which order, at which currents and limits, in which words."""
