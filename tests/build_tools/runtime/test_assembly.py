"""What the site serves as its runtime is whole, compiled for it, and answers as CPython does."""

from __future__ import annotations

import base64
import hashlib
import importlib.util
import json
import subprocess
from pathlib import Path
from typing import Any

import pytest

import checkers
from build_tools.files.archives import read_archive
from build_tools.machine.node import find_node
from build_tools.runtime import assembly, npm_package
from build_tools.runtime.assembly import LIBRARY, MANIFEST, manifest, without_packages
from build_tools.runtime.npm_package import PYODIDE, Pins
from build_tools.runtime.standard_library import read_choices
from build_tools.runtime.wheel import with_record
from checkers.catalogue import CHECKERS

REQUESTS: list[tuple[str, dict[str, Any]]] = [
    (x.slug, {"on": "2026-11-24", **example.request}) for x in CHECKERS for example in x.examples
]
START = Path(__file__).parent / "start_runtime.mjs"


@pytest.fixture(scope="module")
def prepared() -> Path:
    """Give the prepared folder, current; a test fetches nothing."""
    assert npm_package.MARKER.exists(), "first run: python3 -m build_tools setup"
    return assembly.ensure_runtime()


def test_the_manifest_tells_each_files_size_and_hash(prepared: Path) -> None:
    """So that the page can show how far it is."""
    table = json.loads((prepared / MANIFEST).read_bytes())

    assert {x.name for x in prepared.iterdir()} == {MANIFEST, *table["files"]}
    for name, told in table["files"].items():
        content = (prepared / name).read_bytes()
        assert told == {"bytes": len(content), "sha256": hashlib.sha256(content).hexdigest()}
    assert table["wheel"] in table["files"]


def test_the_library_is_bytecode_that_the_runtime_accepts(prepared: Path) -> None:
    """Every module begins with the magic number of this minor version (PEP 3147)."""
    compiled = read_archive(prepared / LIBRARY)

    assert [x for x in compiled if x.endswith(".py")] == []
    assert {x[:4] for name, x in compiled.items() if name.endswith(".pyc")} == {
        importlib.util.MAGIC_NUMBER
    }


def test_the_library_holds_what_is_imported_late(prepared: Path) -> None:
    """A late import in the library itself: `calendar` makes one of `locale`."""
    names = set(read_archive(prepared / LIBRARY))

    assert "pdb.pyc" not in names
    assert ("locale.pyc" in names) == ("calendar.pyc" in names)
    assert len(names) < len(read_archive(PYODIDE / LIBRARY)) / 2


def test_the_wheel_lists_its_own_files_with_their_hashes(prepared: Path) -> None:
    """As the wheel format asks (PEP 427), also after compiling; the data are in it."""
    wheel = read_archive(prepared / json.loads((prepared / MANIFEST).read_bytes())["wheel"])
    (record,) = (name for name in wheel if name.endswith("/RECORD"))
    listed = dict(line.split(",", 1) for line in wheel[record].decode().splitlines())

    assert set(listed) == set(wheel)
    for name in set(wheel) - {record}:
        digest = base64.urlsafe_b64encode(hashlib.sha256(wheel[name]).digest()).rstrip(b"=")
        assert listed[name] == f"sha256={digest.decode()},{len(wheel[name])}"
    assert "checkers/data/parsed.pyc" in wheel


@pytest.fixture(scope="module")
def started(prepared: Path) -> dict[str, Any]:
    """Start the runtime once, and ask it every example of every checker."""
    answer = subprocess.run(
        [*find_node().node, START, prepared, PYODIDE],
        input=json.dumps(REQUESTS),
        capture_output=True,
        text=True,
        check=False,
    )
    assert answer.returncode == 0, answer.stderr
    return dict(json.loads(answer.stdout))


def test_the_runtime_starts_and_answers_as_the_command_line_does(started: dict[str, Any]) -> None:
    """Every checker, through the trimmed library."""
    expected = [checkers.run(slug, request) for slug, request in REQUESTS]

    assert started["replies"] == json.loads(json.dumps(expected))


def test_the_runtime_carries_in_itself_what_the_library_passes_by(started: dict[str, Any]) -> None:
    """Two of them under another name (CPython, importlib/__init__.py)."""
    renamed = {"_frozen_importlib": "importlib._bootstrap"}
    renamed["_frozen_importlib_external"] = "importlib._bootstrap_external"

    carried = {renamed.get(name, name) for name in started["frozen"]}

    assert set(read_choices().frozen) <= carried


def test_no_text_of_a_data_class_is_compiled_in_the_browser(started: dict[str, Any]) -> None:
    """The build knew the text of each, which depends on the library's version."""
    assert "checkers.catalogue.schedule" in started["loaded"]
    assert started["compiled"] == []


def test_nothing_for_networks_and_other_programs_is_loaded(started: dict[str, Any]) -> None:
    """What stands in for the event loop keeps them away."""
    assert "asyncio" in started["loaded"]
    assert {"logging", "selectors", "socket", "subprocess"} & set(started["loaded"]) == set()


def test_no_root_of_the_library_is_a_slip(prepared: Path) -> None:
    """Each root that the runtime loads by name is in the library it serves."""
    names = set(read_archive(prepared / LIBRARY))
    for root in read_choices().roots:
        path = root.removesuffix(".*").replace(".", "/")
        assert root.startswith("checkers") or names & {f"{path}.pyc", f"{path}/__init__.pyc"}


def test_the_runtimes_list_of_packages_is_emptied() -> None:
    """What else it says stays."""
    lock = {"info": {"version": "1"}, "packages": {"numpy": {}}}

    assert json.loads(without_packages(json.dumps(lock).encode())) == {**lock, "packages": {}}


def test_the_manifest_names_the_pinned_versions() -> None:
    """And the wheel by its file."""
    table = json.loads(manifest(Pins("1.2.3", "3.13", {}), "a.whl", {"a.whl": b"x"}))

    assert (table["pyodide"], table["python"], table["wheel"]) == ("1.2.3", "3.13", "a.whl")


def test_a_wheels_record_is_made_anew() -> None:
    """The old one goes, and the record itself has no hash."""
    made = with_record({"a.pyc": b"x", "a-1.dist-info/RECORD": b"a.py,sha256=old,1\n"})

    assert made["a-1.dist-info/RECORD"].decode().splitlines()[1] == "a-1.dist-info/RECORD,,"
    assert b"a.py," not in made["a-1.dist-info/RECORD"]
