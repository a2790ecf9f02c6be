"""How long explain takes in the browser's Python: five readings at first, and with one changed."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path
from statistics import median
from typing import Any

from build_tools.benches.budgets import Measurement
from build_tools.machine.node import find_node
from build_tools.machine.problems import Problem
from build_tools.runtime.assembly import ensure_runtime
from build_tools.runtime.npm_package import PYODIDE

ASK = Path(__file__).with_suffix(".mjs")
CHANGES = 30
READINGS: list[dict[str, Any]] = [
    {"test": "no-trip", "multiple": 0.5, "value": "> 1999 ms"},
    {"test": "trip-time", "multiple": 1, "phase": "0", "value": "28 ms"},
    {"test": "trip-time", "multiple": 1, "phase": "180", "value": "> 300 ms"},
    {"test": "trip-time", "multiple": 5, "phase": "0", "value": "12 ms"},
    {"test": "ramp", "value": "27 mA"},
]


def measure() -> list[Measurement]:
    """Ask under node, as a reader does who opens a case and then corrects a figure.

    Returns:
        The time of the first reply, and the median of those after a change [ms].

    Raises:
        Problem: the runtime does not start, or gives no result.
    """
    requests = [["explain", _request(28 + change)] for change in range(CHANGES + 1)]
    done = subprocess.run(
        [*find_node().node, ASK, ensure_runtime(), PYODIDE],
        input=json.dumps(requests),
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise Problem("The runtime does not explain under node.", done.stderr)
    first, *others = json.loads(done.stdout)
    return [
        Measurement("explain-in-the-browser-first", first),
        Measurement("explain-in-the-browser-changed", median(others)),
    ]


def _request(time: int) -> dict[str, Any]:
    readings = [{"waveform": "ac", **reading} for reading in READINGS]
    readings[1]["value"] = f"{time} ms"
    device = {"type": "A", "rated_residual_current": "30 mA"}
    return {"code": "gb", "on": "2026-11-24", "device": device, "readings": readings}
