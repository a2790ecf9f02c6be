"""A device and its circuit: what is known, what was looked at, what instruments showed."""
