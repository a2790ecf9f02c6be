"""What needs nothing installed runs on the oldest Python that the README promises."""

from __future__ import annotations

import re
import subprocess
import sys

from build_tools.files import paths

START = "build_tools/__main__.py"  # and what it imports before the environment is there


def test_the_package_and_the_first_command_use_nothing_newer() -> None:
    """The types of the library tell what each version of it has."""
    project = (paths.ROOT / "pyproject.toml").read_text(encoding="utf-8")
    oldest = re.search(r'^requires-python = ">=(.+)"$', project, re.MULTILINE)
    assert oldest
    cache = paths.CACHE / f"mypy-{oldest[1]}"
    asked = ["--python-version", oldest[1], "--cache-dir", str(cache), "checkers", START]

    found = subprocess.run(
        [sys.executable, "-m", "mypy", *asked],
        cwd=paths.ROOT,
        capture_output=True,
        text=True,
        check=False,
    )

    assert found.returncode == 0, found.stdout
