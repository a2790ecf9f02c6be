"""The package in CPython: how long it takes to import, what it needs, how much it judges."""

from __future__ import annotations

import subprocess
import sys
import time
from statistics import median

import checkers
from build_tools.benches.budgets import Measurement
from build_tools.files import paths
from checkers.catalogue import CHECKERS

STARTS = 5
SECONDS = 2.0
IMPORT = "import time; a = time.perf_counter(); import checkers; print(time.perf_counter() - a)"
# Kilobytes on Linux, bytes on a Mac; other systems do not tell.
MEMORY = """
import resource, sys
import checkers
from checkers.catalogue import CHECKERS
for checker in CHECKERS:
    for example in checker.examples:
        checkers.run(checker.slug, example.request)
most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
print(most / (1e6 if sys.platform == "darwin" else 1e3))
"""


def measure() -> list[Measurement]:
    """Start Python anew for import and memory, and ask one checker for some seconds.

    Returns:
        The import time [ms], the most memory with every example judged [MB], verdicts a second.
    """
    imports = [float(_python(IMPORT)) * 1e3 for _ in range(STARTS)]
    measurements = [
        Measurement("import-time", median(imports)),
        Measurement("verdicts", _verdicts_a_second()),
    ]
    if sys.platform != "win32":
        measurements.append(Measurement("memory", float(_python(MEMORY))))
    return measurements


def _python(program: str) -> str:
    command = [sys.executable, "-c", program]
    answer = subprocess.run(command, cwd=paths.ROOT, capture_output=True, text=True, check=True)
    return answer.stdout


def _verdicts_a_second() -> float:
    checker = CHECKERS[0]
    requests = [example.request for example in checker.examples]
    count, start = 0, time.perf_counter()
    while time.perf_counter() - start < SECONDS:
        checkers.run(checker.slug, requests[count % len(requests)])
        count += 1
    return count / (time.perf_counter() - start)
