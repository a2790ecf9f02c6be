"""Lighthouse on pages of the built site: the package from npm, and one run of it."""
