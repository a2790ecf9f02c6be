"""The steps of the one gate: what must hold before anything is submitted."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import NamedTuple

from build_tools.files import build_markers, fingerprints, paths
from build_tools.files.identity import SOURCES
from build_tools.gate.pytest_command import pytest_command
from build_tools.machine import chromium
from build_tools.machine.programs import run_logged
from build_tools.site.build import ensure_site

TESTS_MARKER = paths.CACHE / "tests.passed"
TESTED = (*SOURCES, *(paths.ROOT / x for x in ("tests", "pyproject.toml", "README.md", "LICENSE")))


class Step(NamedTuple):
    """A step's name, what it asks, and the command that answers it; the site has no command."""

    name: str
    asks: str
    command: tuple[str | Path, ...] = ()


def _module(*arguments: str) -> tuple[str | Path, ...]:
    return (sys.executable, "-m", *arguments)


FLOORS = (paths.inside_venv(paths.VENV, "lint-imports"), "--no-logo", "--cache-dir")

STEPS = (
    Step("format", "is all Python laid out by ruff?", _module("ruff", "format", "--check", ".")),
    Step("lint", "does ruff find nothing?", _module("ruff", "check", ".")),
    Step("types", "does mypy --strict find nothing?", _module("mypy")),
    Step("floors", "do imports go down only?", (*FLOORS, paths.CACHE / "imports")),
    Step("site", "does the site build with no warning?"),
    Step("tests", "does every test pass?", tuple(pytest_command(["--quiet"]))),
)


def tests_passed_before() -> bool:
    """Tell whether these very files passed all tests already."""
    return build_markers.is_marked(TESTS_MARKER, _tested())


def run_step(step: Step) -> str:
    """Run one step.

    Args:
        step: one of STEPS.

    Returns:
        The end of what it said.

    Raises:
        ProgramFailedError: the answer is no.
        Problem: the step could not be taken, or the site does not build.
    """
    if not step.command:
        return str(ensure_site())
    if step.name != "tests":
        return run_logged(f"check-{step.name}", step.command)
    before = _tested()
    build_markers.remove_marker(TESTS_MARKER)
    variables = {chromium.VARIABLE: str(chromium.find_chromium())}
    output = run_logged("check-tests", step.command, variables=variables)
    build_markers.write_marker(TESTS_MARKER, before)
    return output


def _tested() -> str:
    return fingerprints.fingerprint_of_files(paths.ROOT, *TESTED, paths.REQUIREMENTS)
