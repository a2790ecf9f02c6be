"""The sensing core of a device: what smooth DC through it does to the current that trips."""
