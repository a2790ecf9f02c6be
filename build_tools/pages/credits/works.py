"""Every work that the built site holds, with the text of its licence: `<!-- show credits -->`."""

from __future__ import annotations

import tomllib
from fnmatch import fnmatchcase
from functools import cache
from importlib.metadata import distribution
from pathlib import Path
from typing import NamedTuple

from build_tools.files import paths
from build_tools.pages.rendering import html

FOLDER = Path(__file__).parent
CREDITS = FOLDER / "works.toml"


class Work(NamedTuple):
    """One work: what it does in the site, its licence, and the files of the site that hold it."""

    name: str
    role: str
    licence: str
    text: str  # of the licence, as the work itself gives it
    source: str
    files: tuple[str, ...]
    version: str = ""
    changed: str = ""
    taken_from: str = ""  # the text, where it is kept in the project
    module: str = ""  # its name among the modules of the theme's scripts
    icons: str = ""  # its folder among the theme's signs

    def holds(self, file: str) -> bool:
        """Tell whether a file of the site, by its place, holds any of the work."""
        return any(fnmatchcase(file, pattern) for pattern in self.files)


@cache
def works() -> tuple[Work, ...]:
    """Return all works, ours first.

    Raises LookupError where the text of a licence is not where the list says, TypeError where the
    list says what no work has.
    """
    table = tomllib.loads(CREDITS.read_text(encoding="utf-8"))
    return tuple(_work(dict(one)) for one in table["work"])


def _work(told: dict[str, str]) -> Work:
    text = licence_text(told.pop("text"))
    files = tuple(told.pop("files"))
    return Work(text=text, files=files, taken_from=told.pop("from", ""), **told)


def licence_text(place: str) -> str:
    """Read a licence: `licences/…` is kept here, `package:file` is the installed package's own.

    Raises LookupError where there is none, or more than one.
    """
    package, _, name = place.rpartition(":")
    if package in {"", "project"}:
        path = (paths.ROOT if package else FOLDER) / name
        found = [path] if path.is_file() else []
    else:
        files = distribution(package).files or []
        found = [Path(str(file.locate())) for file in files if str(file).endswith(f"/{name}")]
    if len(found) != 1:
        raise LookupError(f"{place} names {len(found)} texts of a licence")
    return found[0].read_text(encoding="utf-8").strip("\n")


def credits_macro(_: str, root: str) -> str:
    """Show every work with what it does here, where its source is, and its licence in full."""
    del root
    return html("macros/credits.html", works=works())
