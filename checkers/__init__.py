"""Checkers for people who choose, inspect and test residual current devices.

What is asked of them is imported when it is first used, so that damaged data can be told of.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from checkers.contract.bridge import answer, run

__all__ = ["answer", "run"]


def __getattr__(name: str) -> object:
    if name not in __all__:
        raise AttributeError(name)
    from checkers.contract import bridge

    globals()[name] = getattr(bridge, name)
    return globals()[name]
