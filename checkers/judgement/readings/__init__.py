"""One reading at a time: what stops it, what the device must do at its current, its verdict."""
