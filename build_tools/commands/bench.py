"""`bench`: measure, and hold each figure against its budget."""

from __future__ import annotations

import argparse
import importlib
import json
import signal
import sys
from collections.abc import Sequence
from contextlib import nullcontext, redirect_stdout
from pathlib import Path
from typing import Any

from build_tools import benches
from build_tools.benches.budgets import Budget, Measurement, read_budgets
from build_tools.machine.progress import say

NO_BENCHES = ("__init__", "budgets")


def names() -> list[str]:
    """List the benches: the modules of build_tools/benches, as they are typed."""
    found = Path(benches.__file__).parent.glob("*.py")
    return sorted(x.stem.replace("_", "-") for x in found if x.stem not in NO_BENCHES)


def run(arguments: Sequence[str]) -> int:
    """Run the named benches, or all, and print a line a figure or one JSON object."""
    parser = argparse.ArgumentParser(prog="python3 -m build_tools bench")
    parser.add_argument("names", nargs="*", metavar="NAME", help=f"any of: {', '.join(names())}")
    parser.add_argument("--rounds", type=int, help="how often what is timed in turn is repeated")
    parser.add_argument(
        "--json", action="store_true", help="print one JSON object and nothing else"
    )
    options = parser.parse_args(arguments)
    chosen = options.names or names()
    if unknown := set(chosen) - set(names()):
        parser.error(f"there is no bench {', '.join(sorted(unknown))}")
    # So that a bench which is ended also ends the browser that it holds up.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
    with redirect_stdout(sys.stderr) if options.json else nullcontext():
        found = {name: _measure(name, options.rounds) for name in chosen}
    if options.json:
        tables = {name: table for name, (_, table) in found.items()}
        say(json.dumps(tables if len(tables) > 1 else tables[chosen[0]], indent=1))
    with redirect_stdout(sys.stderr) if options.json else nullcontext():
        budgets = read_budgets()
        kept = [
            _report(x, budgets[x.name]) for measurements, _ in found.values() for x in measurements
        ]
    return 0 if all(kept) else 1


def _measure(name: str, rounds: int | None) -> tuple[list[Measurement], dict[str, Any]]:
    module = importlib.import_module(f"build_tools.benches.{name.replace('-', '_')}")
    if hasattr(module, "table"):
        table = module.table(rounds or module.ROUNDS)
        return module.measurements(table), table
    measurements = module.measure()
    return measurements, {f"{x.name} {x.about}".strip(): x.value for x in measurements}


def _report(measurement: Measurement, budget: Budget) -> bool:
    keeps = budget.keeps(measurement.value)
    mark = "ok  " if keeps else "OVER"
    name = f"{measurement.name} {measurement.about}".strip()
    say(f"{mark}  {name:<44} {measurement.value:9.4g} {budget.unit:<4} ({budget})")
    return keeps
