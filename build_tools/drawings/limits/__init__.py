"""Pictures of limits: bands and times, and a reading against them."""
