"""Smooth DC through a device: what its type bears, and a set-up that shows it."""
