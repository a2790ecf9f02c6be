"""Which of two devices in series opens first."""
