"""What is installed is pinned and hashed, and no file says where it must come from."""

from __future__ import annotations

import re
from importlib.metadata import version
from pathlib import Path

import pytest

from build_tools.files import paths

PINNED = sorted(paths.REQUIREMENTS.parent.glob("*.txt"))


def entries(file: Path) -> list[str]:
    """Split a requirements file into its entries, each with its hashes."""
    return [x for x in re.split(r"\n(?=\S)", file.read_text()) if x.strip() and x[0] != "#"]


@pytest.mark.parametrize("file", PINNED, ids=lambda file: file.name)
def test_every_package_has_one_version_and_its_hashes(file: Path) -> None:
    """And nothing else stands in the file: no address, no option."""
    for entry in entries(file):
        assert re.match(r"[a-z0-9-]+==[^ ]+( ; [^\\]+)? \\\n +--hash=sha256:[0-9a-f]{64}", entry)
    assert "://" not in file.read_text()


def test_every_package_asked_for_is_pinned() -> None:
    """Both files were changed together."""
    asked_for = paths.REQUIREMENTS.with_suffix(".in").read_text()
    asked = re.findall(r"^([a-z0-9-]+)", asked_for, re.MULTILINE)
    pinned = {entry.partition("==")[0] for entry in entries(paths.REQUIREMENTS)}

    assert asked
    assert set(asked) <= pinned


def test_the_generator_and_its_theme_are_held() -> None:
    """MkDocs 2 takes neither hooks nor this theme; the theme's own text is changed here by name."""
    asked = paths.REQUIREMENTS.with_suffix(".in").read_text(encoding="utf-8").splitlines()
    installed = {name: version(name) for name in ("mkdocs", "mkdocs-material")}

    assert "mkdocs>=1.6,<2" in asked
    assert f"mkdocs-material=={installed['mkdocs-material']}" in asked
    assert installed["mkdocs"].startswith("1.6.")
