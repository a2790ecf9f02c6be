"""`build`: the whole site, ready for any web host."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from build_tools.machine.progress import say
from build_tools.site.build import ensure_site


def run(arguments: Sequence[str]) -> int:
    """Build the site unless it is current, and say where it is."""
    argparse.ArgumentParser(prog="python3 -m build_tools build").parse_args(arguments)
    say(f"The site is in {ensure_site()}")
    return 0
