"""`bench`: measure, and hold each figure against its budget."""

from __future__ import annotations

import argparse
import importlib
from collections.abc import Sequence

from build_tools import places
from build_tools.figures import Budget, Figure, read_budgets
from build_tools.progress import say


def names() -> list[str]:
    """List the benches: the modules of build_tools/benches."""
    return sorted(x.stem for x in (places.TOOLS / "benches").glob("*.py") if x.stem != "__init__")


def run(arguments: Sequence[str]) -> int:
    """Run the named benches, or all, and print a line a figure."""
    parser = argparse.ArgumentParser(prog="python3 -m build_tools bench")
    parser.add_argument("names", nargs="*", metavar="NAME", help=f"any of: {', '.join(names())}")
    chosen = parser.parse_args(arguments).names or names()
    if unknown := set(chosen) - set(names()):
        parser.error(f"there is no bench {', '.join(sorted(unknown))}")
    budgets = read_budgets()
    kept = True
    for name in chosen:
        for figure in importlib.import_module(f"build_tools.benches.{name}").measure():
            kept &= _report(figure, budgets[figure.name])
    return 0 if kept else 1


def _report(figure: Figure, budget: Budget) -> bool:
    keeps = budget.keeps(figure.value)
    mark = "ok  " if keeps else "OVER"
    name = f"{figure.name} {figure.about}".strip()
    say(f"{mark}  {name:<44} {figure.value:9.4g} {budget.unit:<4} ({budget})")
    return keeps
