"""Quantities, devices, readings, limits and verdicts: what the trade talks about."""
