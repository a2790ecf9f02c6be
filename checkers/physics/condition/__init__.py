"""One possible condition of a device, its circuit and its handling, drawn under a cause."""
