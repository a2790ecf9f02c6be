"""Python and the checkers for the browser: the pinned runtime, and what the build makes of it."""
