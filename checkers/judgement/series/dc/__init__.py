"""Smooth DC through an arrangement: its sources, its flow, and which devices bear it."""
