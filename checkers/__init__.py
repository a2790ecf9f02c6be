"""Checkers for people who choose, inspect and test residual current devices."""

from __future__ import annotations

from checkers.bridge import answer, get_ready, run

__all__ = ["answer", "get_ready", "run"]
