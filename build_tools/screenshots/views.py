"""What pictures are taken of: the list in views.toml, read strictly."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

from build_tools.machine.problems import Problem
from build_tools.pages.macros.checkers import fragment
from checkers.catalogue import checker_for

FOLDER = Path(__file__).parent
FILE = FOLDER / "views.toml"
ACTIONS = frozenset({"press", "open", "fill", "file", "see", "go"})


class View(NamedTuple):
    """One page in one state: its address within the site, its outcome if known, and the way."""

    name: str
    address: str
    outcome: str
    steps: tuple[dict[str, str], ...]


class Views(NamedTuple):
    """Every view, and what each is seen at: widths [px] and colour schemes."""

    widths: tuple[int, ...]
    narrowest: int
    schemes: tuple[str, ...]
    views: tuple[View, ...]


def read_views(path: Path = FILE) -> Views:
    """Read the list.

    Raises:
        Problem: a view has an unknown key or step, or names an example that there is not.
    """
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    views = tuple(_view(name, row) for name, row in table["view"].items())
    return Views(tuple(table["widths"]), table["narrowest"], tuple(table["schemes"]), views)


def _view(name: str, row: Mapping[str, Any]) -> View:
    steps = tuple(row.get("steps", ()))
    unknown = row.keys() - {"place", "example", "which", "steps"}
    unknown |= {action for step in steps for action in step.keys() - ACTIONS - {"with"}}
    if unknown or any(len(step.keys() & ACTIONS) != 1 for step in steps):
        raise Problem(f"{FILE.name} cannot be followed at {name}.", "look at its first lines.")
    outcome = row.get("example", "")
    case = _case(name, row) if outcome else ""
    return View(name, row["place"] + case, outcome, steps)


def _case(name: str, row: Mapping[str, Any]) -> str:
    slug = row["place"].strip("/").rpartition("/")[2]
    fitting = [one.request for one in checker_for(slug).examples if one.outcome == row["example"]]
    which = row.get("which", 0)
    if which >= len(fitting):
        raise Problem(f"{slug} has no such example as {name} asks for.", f"correct {FILE.name}.")
    return f"#{fragment(fitting[which])}"
