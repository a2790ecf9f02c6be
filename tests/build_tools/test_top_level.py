"""The top level is fixed, and holds nothing that was built or fetched."""

from __future__ import annotations

import subprocess

import pytest

from build_tools.files import paths

ALLOWED = frozenset(
    {
        "DEVELOPERS.md", "LICENSE", "README.md", "build_tools", "checkers", "docs", "mkdocs.yml",
        "pyproject.toml", "tests",
    }
)  # fmt: skip


pytestmark = pytest.mark.skipif(
    not (paths.ROOT / ".git").exists(), reason="a copy without its history keeps no list of files"
)


def git(*arguments: str) -> list[str]:
    """Give the lines of a git command."""
    answer = subprocess.run(
        ["git", *arguments], cwd=paths.ROOT, capture_output=True, text=True, check=True
    )
    return answer.stdout.splitlines()


def test_the_top_level_holds_what_is_allowed_and_dotfiles() -> None:
    """A new folder is a decision."""
    top = {name.partition("/")[0] for name in git("ls-files")}

    assert {x for x in top if not x.startswith(".")} <= ALLOWED


def test_what_is_built_or_fetched_is_not_kept() -> None:
    """It is made anew from what is."""
    assert git("check-ignore", ".build/site/index.html")
    assert git("ls-files", ".build") == []
