"""Changes to what the theme writes: each place once, by `changes`."""
