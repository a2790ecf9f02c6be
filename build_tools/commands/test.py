"""`test`: build the site, find a browser, run every test."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Sequence

from build_tools.files import paths
from build_tools.gate.pytest_command import pytest_command
from build_tools.machine import chromium
from build_tools.site.build import ensure_site


def run(arguments: Sequence[str]) -> int:
    """Run pytest, with its own options if any are given, and the slow tests after `--all`.

    The last line is pytest's own, which tells how many tests passed.
    """
    variables = dict(os.environ)
    if chromium.WITHOUT not in arguments:
        variables[chromium.VARIABLE] = str(chromium.find_chromium())
    ensure_site()
    command = pytest_command(arguments)
    return subprocess.run(command, cwd=paths.ROOT, env=variables, check=False).returncode
