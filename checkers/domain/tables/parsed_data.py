"""The data files as the build has read them, for the browser, where reading TOML takes long."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any


class ParsedPath:
    """A folder among the parsed files, or one of them; walked as a path is."""

    def __init__(self, files: Mapping[str, dict[str, Any]], path: str = "") -> None:
        """Stand at a path among some files; the files' values by path, with slashes."""
        self._files = files
        self._path = path

    @property
    def name(self) -> str:
        """The last part of the path."""
        return self._path.rpartition("/")[2]

    @property
    def values(self) -> dict[str, Any]:
        """The file's contents; raises KeyError where this is a folder or nothing."""
        return self._files[self._path]

    def __truediv__(self, name: str) -> ParsedPath:
        return ParsedPath(self._files, f"{self._path}/{name}".lstrip("/"))

    def is_dir(self) -> bool:
        """Tell whether this is a folder."""
        return any(path.startswith(f"{self._path}/") for path in self._files)

    def iterdir(self) -> Iterator[ParsedPath]:
        """Yield what lies in this folder."""
        start = f"{self._path}/".lstrip("/")
        inside = (path.removeprefix(start) for path in self._files if path.startswith(start))
        for name in dict.fromkeys(rest.partition("/")[0] for rest in inside):
            yield self / name
