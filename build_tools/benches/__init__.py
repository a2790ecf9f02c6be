"""Measurements, each against its budget: a module is a bench, with `measure() -> list[Figure]`."""
