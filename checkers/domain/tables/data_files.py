"""Where the data files are, and the contents of one: TOML, or what the build made of it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import TYPE_CHECKING, Any, Protocol, cast

from checkers.domain.errors import DataError
from checkers.domain.tables.parsed_data import ParsedPath

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable


class DataPath(Protocol):
    """A data file, or a folder of them."""

    @property
    def name(self) -> str:
        """The last part of the path."""

    def is_dir(self) -> bool:
        """Tell whether this is a folder."""

    def iterdir(self) -> Iterator[DataPath]:
        """Yield what lies in this folder."""

    def __truediv__(self, name: str) -> DataPath: ...


@cache
def data_folder() -> DataPath:
    """Return the folder of the package that holds the data files."""
    try:
        from checkers.data.parsed import FILES  # in the browser's copy of the package alone
    except ModuleNotFoundError:
        from importlib.resources import files

        return files("checkers.data")
    return ParsedPath(FILES)


def read_toml(path: DataPath, name: str) -> dict[str, Any]:
    """Return the contents of the file at `path`; `name` is what an error calls it.

    Raises DataError for a file that cannot be read, is not TOML in UTF-8, or holds nothing.
    """
    if isinstance(path, ParsedPath):
        return path.values
    values = _parsed(path, name)
    if not values:
        raise DataError(name, "", "holds nothing")
    return values


def _parsed(path: DataPath, name: str) -> dict[str, Any]:
    import tomllib

    try:
        return tomllib.loads(cast("Traversable", path).read_text(encoding="utf-8"))
    except UnicodeDecodeError as problem:
        raise DataError(name, "", f"is not UTF-8 at byte {problem.start}") from problem
    except OSError as problem:
        raise DataError(name, "", f"cannot be read: {problem.strerror}") from problem
    except tomllib.TOMLDecodeError as problem:
        raise DataError(name, "", f"is not valid TOML: {problem}") from problem
