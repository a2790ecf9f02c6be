"""Devices above, below and beside each other: smooth DC through each, and which opens first."""
