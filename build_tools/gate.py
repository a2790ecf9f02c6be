"""The steps of the one gate: what must hold before anything is submitted."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import NamedTuple

from build_tools import chromium, places, stamps
from build_tools.identity import SOURCES
from build_tools.programs import run_logged
from build_tools.pytest_command import pytest_command
from build_tools.site_build import ensure_site

TESTS_STAMP = places.CACHE / "tests.passed"
TESTED = (*SOURCES, *(places.ROOT / x for x in ("tests", "pyproject.toml", "README.md", "LICENSE")))


class Step(NamedTuple):
    """A step's name, what it asks, and the command that answers it; the site has no command."""

    name: str
    asks: str
    command: tuple[str | Path, ...] = ()


def _module(*arguments: str) -> tuple[str | Path, ...]:
    return (sys.executable, "-m", *arguments)


FLOORS = (places.inside_venv(places.VENV, "lint-imports"), "--no-logo", "--cache-dir")

STEPS = (
    Step("format", "is all Python laid out by ruff?", _module("ruff", "format", "--check", ".")),
    Step("lint", "does ruff find nothing?", _module("ruff", "check", ".")),
    Step("types", "does mypy --strict find nothing?", _module("mypy")),
    Step("floors", "do imports go down only?", (*FLOORS, places.CACHE / "imports")),
    Step("site", "does the site build with no warning?"),
    Step("tests", "does every test pass?", tuple(pytest_command(["--quiet"]))),
)


def tests_passed_before() -> bool:
    """Tell whether these very files passed all tests already."""
    return stamps.is_stamped(TESTS_STAMP, _tested())


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
    stamps.remove_stamp(TESTS_STAMP)
    variables = {chromium.VARIABLE: str(chromium.find_chromium())}
    output = run_logged("check-tests", step.command, variables=variables)
    stamps.write_stamp(TESTS_STAMP, before)
    return output


def _tested() -> str:
    return stamps.fingerprint_of_files(places.ROOT, *TESTED, places.REQUIREMENTS)
