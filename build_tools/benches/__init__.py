"""Measurements, each against its budget: a module is a bench, `measure()` or `table(rounds)`."""
