"""What a device in its circuit, tested with an instrument, would be read as."""
