"""What the benches of explain need: devices drawn at random, and the exact rule."""
