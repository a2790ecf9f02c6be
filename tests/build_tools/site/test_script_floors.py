"""A script's folder tells on which thread it runs, and what it may import."""

from __future__ import annotations

import re
from graphlib import CycleError, TopologicalSorter

import pytest

from build_tools.files import paths
from build_tools.site.browser_files import WORKER_SOURCE, sources
from build_tools.site.script_floors import SOURCES, floors, runs_on, thread_of
from tests.build_tools.site.script_imports import (
    forbidden,
    graph,
    imports,
    reached,
    unnamed,
    unread,
    unused,
)

# The hash of what starts in a worker stands in this one, so it is not among what is hashed.
OF_THE_WORKER = "generated/runtime.js"
ASKED_ALONE = re.compile(r"""["']([\w/-]+\.js)["']""")
FEW = {"page": [["top"], ["left", "right"], ["low"]], "worker": [["apart"]], "every": [["all"]]}


@pytest.fixture(scope="module")
def scripts() -> dict[str, str]:
    """Every script by its place, those that the build writes too."""
    return {place: content.decode() for place, content in sources().items()}


def test_every_folder_is_named_by_one_floor(scripts: dict[str, str]) -> None:
    """A new folder has to be given its floor and its thread."""
    written = [path.relative_to(SOURCES).as_posix() for path in SOURCES.rglob("*.*")]
    found = {place.rpartition("/")[0] for place in (*written, *scripts)}

    assert unnamed(sorted(found - {""}), floors()) == []
    assert [
        place for place in written if "/" not in place and place.endswith((".js", ".css"))
    ] == []


def test_imports_go_down_and_stay_on_their_thread(scripts: dict[str, str]) -> None:
    """What may be imported follows from the two folders."""
    assert forbidden(scripts, floors()) == []


def test_no_scripts_import_each_other_in_a_circle(scripts: dict[str, str]) -> None:
    """Late imports count too."""
    TopologicalSorter(graph(scripts)).prepare()


def test_every_import_can_be_read(scripts: dict[str, str]) -> None:
    """One form of import, one of late import, one of export; and what is imported is there."""
    assert unread(scripts) == []
    assert {one.of for one in imports(scripts)} <= set(scripts)


def test_every_export_is_imported(scripts: dict[str, str]) -> None:
    """By another script, or by a test that asks the script alone."""
    tests = [path.read_text(encoding="utf-8") for path in (paths.ROOT / "tests").rglob("*.py")]
    asked = [(place, text) for text in tests for place in ASKED_ALONE.findall(text)]

    assert unused(scripts, {of: "".join(x for y, x in asked if y == of) for of, _ in asked}) == []


def test_what_runs_in_a_worker_is_what_the_worker_imports(scripts: dict[str, str]) -> None:
    """A kept image is bound to each script that has to do with a start, and to no other."""
    hashed = runs_on("worker", {place: b"" for place in scripts if "generated/" not in place})

    assert reached(scripts, WORKER_SOURCE) - {OF_THE_WORKER} == set(hashed)


def test_a_script_of_no_floor_has_no_thread() -> None:
    """The build stops at a script in a folder that no floor names."""
    with pytest.raises(KeyError, match="elsewhere"):
        thread_of("elsewhere/script.js")


@pytest.mark.parametrize(
    ("by", "of", "is_forbidden"),
    [
        ("top", "low", False),
        ("low", "low", False),
        ("apart", "all", False),
        ("low", "top", True),
        ("left", "right", True),
        ("top", "apart", True),
        ("all", "low", True),
    ],
)
def test_which_imports_are_forbidden(by: str, of: str, *, is_forbidden: bool) -> None:
    """Up, across a floor, to another thread; at once or late."""
    for line in (f'import {{ x }} from "../{of}/b.js";\n', f'let y = import("../{of}/b.js");\n'):
        found = forbidden({f"{by}/a.js": line, f"{of}/b.js": ""}, FEW)

        assert found == ([(f"{by}/a.js", f"{of}/b.js")] if is_forbidden else [])


def test_a_folder_without_a_floor_is_found() -> None:
    """Nor may two floors name one, or a floor one that is not there."""
    rooms = ["top", "left", "right", "low", "apart", "all"]

    assert unnamed(rooms, FEW) == []
    assert unnamed([*rooms, "new"], FEW) == ["new"]
    assert unnamed(rooms[1:], FEW) == ["top"]
    assert unnamed(rooms, {**FEW, "other": [["low"]]}) == ["low"]


def test_a_circle_is_found() -> None:
    """Though one of its imports is late."""
    late = {"a/a.js": 'import { x } from "./b.js";\n', "a/b.js": 'const y = import("./a.js");\n'}

    with pytest.raises(CycleError):
        TopologicalSorter(graph(late)).prepare()


def test_an_export_that_nobody_imports_is_found() -> None:
    """A script that comes late is asked for by the words of whoever fetches it."""
    exports = "export const used = 1;\nexport function left() {}\n"
    late = {"a/a.js": 'import("./b.js").then((b) => b.used);\n', "a/b.js": exports}

    assert unused(late, {}) == [("a/b.js", "left")]
    assert unused(late, {"a/b.js": "b.left()"}) == []


@pytest.mark.parametrize(
    "line",
    [
        'import * as all from "./b.js";',
        'import "./b.js";',
        "import(`./${name}.js`);",
        "export { x };",
        'export * from "./b.js";',
        'importScripts("b.js");',
    ],
)
def test_another_form_of_import_is_found(line: str) -> None:
    """The rules above would not see it."""
    assert unread({"a/a.js": f"{line}\n"}) == [("a/a.js", line)]
