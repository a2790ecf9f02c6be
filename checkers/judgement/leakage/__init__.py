"""Standing leakage on a device, and how to split what is too much."""
