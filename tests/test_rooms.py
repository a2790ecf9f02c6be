"""Every package has a room for each subject, tests lie alike, and the guide to them is true."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "checkers"
TOOLS = ROOT / "build_tools"
LOOSE = {"__init__", "__main__", "command_line"}  # what `python3 -m build_tools` starts with
KINDS = {".py", ".js", ".css"}
MOST_FILES = 15
MIRRORED = ("command_line", "contract", "domain", "judgement", "physics")
GUIDE = ROOT / "DEVELOPERS.md"
QUOTED = re.compile(r"`([^`]+)`")


def places_named(cell: str) -> Iterator[str]:
    """Yield the paths to code and data of one cell; a bare name continues the folder before it."""
    folder = ""
    for name in QUOTED.findall(cell):
        if name.startswith(("checkers/", "docs/", "build_tools/")):
            folder = name[: name.rfind("/") + 1]
            path = name
        else:
            path = f"{folder}{name}"
        if path.startswith(("checkers/", "build_tools/")) and "<" not in path:
            yield path


def test_no_room_is_crowded() -> None:
    """Whoever opens a folder sees at a glance what is in it."""
    tops = (PACKAGE, TOOLS, ROOT / "tests")
    rooms = [room for top in tops for room in (top, *top.rglob("*")) if room.is_dir()]
    sizes = {
        str(room.relative_to(ROOT)): len([x for x in room.iterdir() if x.suffix in KINDS])
        for room in rooms
    }

    assert {room: size for room, size in sizes.items() if size > MOST_FILES} == {}


def test_no_tool_lies_loose() -> None:
    """What is new goes into the room of its subject."""
    assert {path.stem for path in TOOLS.glob("*.py")} == LOOSE


def test_every_test_lies_as_what_it_tests() -> None:
    """A test's folder is a room of its package, under the same path."""
    tops = {**dict.fromkeys(MIRRORED, PACKAGE), TOOLS.name: ROOT}
    tests = [path for name in tops for path in (ROOT / "tests" / name).rglob("test_*.py")]
    folders = {path.parent.relative_to(ROOT / "tests") for path in tests}

    assert [
        str(one)
        for one in sorted(folders)
        if not (tops[one.parts[0]] / one / "__init__.py").exists()
    ] == []
    assert len(tests) > len(MIRRORED)


def test_the_guide_names_places_that_are_there() -> None:
    """No row of the table sends anybody to a file that has moved, or to a pattern of names."""
    rows = [line.split("|") for line in GUIDE.read_text("utf-8").splitlines() if line[:1] == "|"]
    named = [place for row in rows for place in places_named(row[2])]

    assert [place for place in named if not (ROOT / place).exists()] == []
    assert len(named) > len(MIRRORED)
