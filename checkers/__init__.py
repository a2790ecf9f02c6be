"""Checkers for people who choose, inspect and test residual current devices."""

from __future__ import annotations

from checkers.bridge import answer, run

__all__ = ["answer", "run"]
