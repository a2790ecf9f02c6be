"""The runtime is pinned in one place, and every mention of it agrees."""

from __future__ import annotations

import hashlib
import json
import re
from pathlib import Path

import pytest

from build_tools.files import fingerprints, paths
from build_tools.files.identity import SOURCES
from build_tools.machine.npm_packages import locked_files
from build_tools.machine.problems import Problem
from build_tools.machine.python_finder import WANTED
from build_tools.runtime import npm_package
from build_tools.runtime.npm_package import read_pins, verify

PINS = read_pins()


def test_the_lock_holds_the_pinned_version() -> None:
    """What is asked for, what is locked and what is pinned are one version."""
    asked, locked = (json.loads(file.read_text()) for file in locked_files(npm_package.SOURCE))

    assert asked["dependencies"]["pyodide"] == PINS.version
    assert locked["packages"]["node_modules/pyodide"]["version"] == PINS.version


def test_the_environment_has_the_runtimes_python() -> None:
    """Bytecode of another minor version would be refused."""
    assert PINS.python == WANTED


def test_no_file_states_another_version_of_the_runtime() -> None:
    """A version is found by the word before it."""
    written = fingerprints.files_under(*SOURCES, *paths.ROOT.glob("[!.]*.*"), paths.ROOT / "tests")
    stated = {
        version
        for file in written
        if file.suffix in {".py", ".js", ".mjs", ".md", ".toml", ".json", ".yml", ".html"}
        for version in re.findall(
            r"[Pp]yodide\W{1,5}v?(\d+\.\d+\.\d+)", file.read_text(encoding="utf-8")
        )
    }

    assert stated == {PINS.version}


def test_a_file_that_is_the_pinned_one_is_accepted(tmp_path: Path) -> None:
    """By its SHA-256."""
    (tmp_path / "a.wasm").write_bytes(b"right")

    verify(tmp_path, {"a.wasm": hashlib.sha256(b"right").hexdigest()})


@pytest.mark.parametrize("content", [b"wrong", None])
def test_a_changed_or_missing_file_is_refused_by_name(
    content: bytes | None, tmp_path: Path
) -> None:
    """Nothing of it is used."""
    if content:
        (tmp_path / "a.wasm").write_bytes(content)

    with pytest.raises(Problem, match=r"a\.wasm"):
        verify(tmp_path, {"a.wasm": hashlib.sha256(b"right").hexdigest()})
