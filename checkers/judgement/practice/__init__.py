"""Practice: a device drawn with a hidden condition, what its tests show, and marks."""
