"""A problem that a person can put right: one line with its cause and its remedy."""

from __future__ import annotations


class Problem(Exception):
    """Raised when a command cannot go on; nothing half-made is left in use."""

    def __init__(self, cause: str, remedy: str) -> None:
        """Keep what went wrong and what to do about it, a sentence each."""
        super().__init__(f"{cause} Remedy: {remedy}")
        self.cause = cause
        self.remedy = remedy
