"""Stands in for the library's module: the runtime's import hook takes these two from it.

The library's own loads the readers of data files too, with folders, chance and compression.
"""

from __future__ import annotations

from abc import ABCMeta

from ._abc import Loader

__all__ = ["Loader", "MetaPathFinder"]


class MetaPathFinder(metaclass=ABCMeta):  # noqa: B024  # as in the library
    """What looks for modules."""

    def invalidate_caches(self) -> None:  # noqa: B027  # as in the library
        """Forget what was found before."""
