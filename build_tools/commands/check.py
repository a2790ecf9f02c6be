"""`check`: the one gate, a line a step; what a failed step said follows its line."""

from __future__ import annotations

import argparse
import time
from collections.abc import Sequence

from build_tools.gate.steps import STEPS, Step, run_step, tests_passed_before
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError
from build_tools.machine.progress import say, show_now


def run(arguments: Sequence[str]) -> int:
    """Take every step, also after one that failed, so that one run shows all there is to do."""
    parser = argparse.ArgumentParser(prog="python3 -m build_tools check")
    parser.add_argument(
        "--again", action="store_true", help="run the tests even if nothing changed"
    )
    options = parser.parse_args(arguments)
    failed = [step.name for step in STEPS if not _passes(step, again=options.again)]
    say(f"The gate is shut: {', '.join(failed)}." if failed else "The gate is open.")
    return 1 if failed else 0


def _passes(step: Step, *, again: bool) -> bool:
    if step.name == "tests" and not again and tests_passed_before():
        say(f"ok      {step.name:<7}         unchanged since they passed; --again runs them")
        return True
    start = time.monotonic()
    show_now(f"…       {step.name:<7}           {step.asks}")
    try:
        run_step(step)
    except (ProgramFailedError, Problem) as error:
        say(f"FAILED  {step.name:<7} {time.monotonic() - start:6.1f} s  {step.asks}")
        say(error.output.rstrip() if isinstance(error, ProgramFailedError) else str(error))
        return False
    say(f"ok      {step.name:<7} {time.monotonic() - start:6.1f} s  {step.asks}")
    return True
