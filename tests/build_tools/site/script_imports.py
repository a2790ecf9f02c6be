"""What the browser's scripts import of each other, and what of that the floors forbid."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from build_tools.site.script_floors import EVERY

IMPORT = re.compile(r'^import \{ (?P<names>[\w$, ]+) \} from "(?P<way>\.[^"]+)";$', re.MULTILINE)
LATE = re.compile(r'\bimport\("(?P<way>\.[^"]+)"\)')
EXPORT = re.compile(
    r"^export (?:async )?(?:function\*?|const|let|class) (?P<name>[\w$]+)", re.MULTILINE
)
RUNTIME = re.compile(r"\bimport\(`\$\{FOLDER\}")  # the folder of the runtime, not one of ours
STATEMENT = re.compile(
    r"^\s*(?:import|export)\b.*|\bimport\s*\(.*|\bimportScripts\b.*", re.MULTILINE
)

Scripts = Mapping[str, str]
Floors = Mapping[str, list[list[str]]]


@dataclass(frozen=True)
class Import:
    """One script imports another, some of its names or, where it comes late, what it will."""

    by: str
    of: str
    names: frozenset[str]


def imports(scripts: Scripts) -> Iterator[Import]:
    """Yield each import of each script, those that are fetched late too."""
    for place, text in scripts.items():
        for found in IMPORT.finditer(text):
            yield Import(place, _at(place, found["way"]), frozenset(found["names"].split(", ")))
        for found in LATE.finditer(text):
            yield Import(place, _at(place, found["way"]), frozenset(re.findall(r"[\w$]+", text)))


def unread(scripts: Scripts) -> list[tuple[str, str]]:
    """Return the imports and exports in a form that the rules here would not see."""
    return [
        (place, line)
        for place, text in scripts.items()
        for line in STATEMENT.findall(text)
        if not any(form.search(line) for form in (IMPORT, LATE, EXPORT, RUNTIME))
    ]


def unnamed(folders: list[str], floors: Floors) -> list[str]:
    """Return the folders that are not named by exactly one floor, or named and not there."""
    named = [folder for rows in floors.values() for row in rows for folder in row]
    return sorted(one for one in {*folders, *named} if named.count(one) != 1 or one not in folders)


def forbidden(scripts: Scripts, floors: Floors) -> list[tuple[str, str]]:
    """Return the imports that go up, across a floor, or to another thread."""
    levels = {
        folder: (thread, level)
        for thread, rows in floors.items()
        for level, row in enumerate(rows)
        for folder in row
    }

    def allowed(by: str, of: str) -> bool:
        (thread, level), (other, below) = levels[by], levels[of]
        return by == of or (below > level if thread == other else other == EVERY)

    pairs = [(one.by, one.of) for one in imports(scripts)]
    return [(by, of) for by, of in pairs if not allowed(_folder(by), _folder(of))]


def graph(scripts: Scripts) -> dict[str, set[str]]:
    """Return what each script imports, at once or late."""
    found: dict[str, set[str]] = {place: set() for place in scripts}
    for one in imports(scripts):
        found[one.by].add(one.of)
    return found


def reached(scripts: Scripts, start: str) -> set[str]:
    """Return a script with all that it imports, and what these import."""
    wanted, found = graph(scripts), [start]
    for place in found:
        found += sorted(wanted[place].difference(found))
    return set(found)


def unused(scripts: Scripts, asked: Scripts) -> list[tuple[str, str]]:
    """Return the exports that nobody imports.

    Inputs: the scripts; the texts of whoever else asks for one, by the script that each asks for.
    """
    used = {(one.of, name) for one in imports(scripts) for name in one.names}
    used |= {(of, name) for of, text in asked.items() for name in re.findall(r"[\w$]+", text)}
    exports = [(place, x) for place, text in scripts.items() for x in EXPORT.findall(text)]
    return [one for one in exports if one not in used]


def _folder(place: str) -> str:
    return place.rpartition("/")[0]


def _at(place: str, way: str) -> str:
    return posixpath.normpath(posixpath.join(_folder(place), way))
