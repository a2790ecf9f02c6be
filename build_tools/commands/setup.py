"""`setup`: the environment is there once this runs; the runtime and a browser are left to fetch."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from build_tools.machine.chromium import find_chromium
from build_tools.machine.problems import Problem
from build_tools.machine.progress import say
from build_tools.runtime.npm_package import ensure_packages


def run(arguments: Sequence[str]) -> int:
    """Fetch the runtime and a browser for the tests, unless they are there."""
    argparse.ArgumentParser(prog="python3 -m build_tools setup").parse_args(arguments)
    ensure_packages()
    try:
        find_chromium()
    except Problem as problem:
        say(str(problem))  # all but the tests goes without one
    say("Set up. Next: python3 -m build_tools serve")
    return 0
