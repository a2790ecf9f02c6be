"""What comes from npm is fixed by a lock, file by file."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from build_tools.benches.page_audits import npm_package as lighthouse
from build_tools.machine.npm_packages import locked_files
from build_tools.machine.packed_browser import package as packed_browser
from build_tools.runtime import npm_package

SOURCES = pytest.mark.parametrize(
    "source", [npm_package.SOURCE, lighthouse.SOURCE, packed_browser.SOURCE]
)


def read(source: Path) -> list[dict[str, Any]]:
    """Return what is asked for, and what is locked."""
    return [json.loads(file.read_text()) for file in locked_files(source)]


@SOURCES
def test_every_locked_package_has_its_sha512(source: Path) -> None:
    """Each file that npm fetches is compared with it."""
    _, locked = read(source)
    entries = [entry for name, entry in locked["packages"].items() if name]

    assert entries
    assert all(entry["integrity"].startswith("sha512-") for entry in entries)


@SOURCES
def test_the_lock_names_no_host(source: Path) -> None:
    """Each machine asks the registry that it is set up for."""
    assert "://" not in locked_files(source)[1].read_text()


@SOURCES
def test_what_is_asked_for_is_one_version_and_is_locked(source: Path) -> None:
    """Nothing newer comes unasked."""
    asked, locked = read(source)
    packages = {**asked.get("dependencies", {}), **asked["devDependencies"]}

    for name, version in packages.items():
        assert re.fullmatch(r"\d+\.\d+\.\d+", version)
        assert locked["packages"][f"node_modules/{name}"]["version"] == version
