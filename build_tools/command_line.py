"""Which commands there are, and what each needs before it runs.

This much runs on the standard library of any Python from 3.11 on, before the environment exists.
"""

from __future__ import annotations

import importlib
from collections.abc import Sequence

from build_tools.machine import environment
from build_tools.machine.problems import Problem
from build_tools.machine.progress import say

# Each command is the module of its name in build_tools/commands, with `run(arguments) -> int`.
COMMANDS = {
    "help": "show this list",
    "setup": "make the build environment, fetch the runtime, and a browser if there is none",
    "serve": "set up, build the site and serve it on this machine [--port N]",
    "build": "set up and build the site into .build/site",
    "test": "set up, build the site and test it [--all: the slow tests too; pytest's own options]",
    "check": "the gate: format, lint, types, floors, strict site build, tests [--again]",
    "screenshots": "take pictures of the key pages at each width, light, dark and in print [names]",
    "bench": "measure sizes and times, each against its budget [names]",
}


def main(arguments: Sequence[str]) -> int:
    """Run one command, in the build environment where it needs it.

    Args:
        arguments: the command and its own arguments.

    Returns:
        The exit status: 0 all is well, 1 a problem or a failed check, 2 no such command.
    """
    name, *rest = arguments or ["help"]
    if name in {"help", "-h", "--help"}:
        return _help()
    if name not in COMMANDS:
        say(f"build_tools: there is no command {name!r}. Remedy: python3 -m build_tools help")
        return 2
    try:
        return _run(name, rest)
    except Problem as problem:
        say(f"build_tools: {problem}")
        return 1
    except KeyboardInterrupt:
        say("\nStopped.")
        return 130


def _run(name: str, rest: Sequence[str]) -> int:
    inside = environment.is_inside()
    if inside and environment.is_ready():
        module = importlib.import_module(f"build_tools.commands.{name}")
        return int(module.run(rest))
    if inside:
        return environment.leave([name, *rest])
    environment.ensure()
    return environment.enter([name, *rest])


def _help() -> int:
    say("python3 -m build_tools COMMAND\n")
    for name, meaning in COMMANDS.items():
        say(f"  {name:<11} {meaning}")
    return 0
