"""`setup`: the environment is there once this runs, so only the runtime is left to fetch."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from build_tools.progress import say
from build_tools.runtime_package import ensure_packages


def run(arguments: Sequence[str]) -> int:
    """Fetch the runtime unless it is there."""
    argparse.ArgumentParser(prog="python3 -m build_tools setup").parse_args(arguments)
    ensure_packages()
    say("Set up. Next: python3 -m build_tools serve")
    return 0
