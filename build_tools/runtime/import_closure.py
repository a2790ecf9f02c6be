"""Which modules a program can reach: every import statement counts, also one inside a function.

Looking at what is loaded after a start would miss the imports that are made late, such as the one
that `calendar` makes of `locale`, and the first person to need them would meet an error.
"""

from __future__ import annotations

import ast
from collections.abc import Collection, Iterator, Mapping
from pathlib import PurePosixPath


def module_name(path: str) -> str:
    """Turn a file's path into its module's name: "json/__init__.py" is "json"."""
    parts = PurePosixPath(path).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def imports_of(module: str, source: bytes, *, is_package: bool) -> set[str]:
    """List every name that a module's import statements may load.

    Args:
        module: its full name, which relative imports count from.
        source: its text.
        is_package: whether it is the `__init__` of a package.

    Returns:
        Full names; `from a import b` gives both `a` and `a.b`, since either may be a module.
    """
    return {
        name
        for statement in _executed(ast.parse(source))
        for name in _names(statement, module if is_package else module.rpartition(".")[0])
    }


def closure(
    modules: Mapping[str, tuple[bytes, bool]],
    roots: Collection[str],
    left_out: Collection[str] = (),
) -> set[str]:
    """Follow imports from some roots through a library.

    Args:
        modules: each module's source by its full name, and whether it is a package.
        roots: where to start; a name ending in ".*" stands for a package and all in it.
        left_out: packages or modules that are never followed.

    Returns:
        The names of all modules reached, each with the packages that it lies in.

    Raises:
        KeyError: a root is not in the library.
    """
    waiting = [name for root in roots for name in _expanded(root, modules)]
    reached: set[str] = set()
    while waiting:
        name = waiting.pop()
        if name in reached or name not in modules or _is_within(name, left_out):
            continue
        reached.add(name)
        source, is_package = modules[name]
        waiting += imports_of(name, source, is_package=is_package)
        waiting += [parent] if (parent := name.rpartition(".")[0]) else []
    return reached


def _expanded(root: str, modules: Mapping[str, tuple[bytes, bool]]) -> list[str]:
    package = root.removesuffix(".*")
    if package not in modules:
        raise KeyError(root)
    inside = [name for name in modules if name.startswith(f"{package}.")]
    return [package, *(inside if root.endswith(".*") else [])]


def _is_within(name: str, packages: Collection[str]) -> bool:
    parts = name.split(".")
    return any(".".join(parts[: length + 1]) in packages for length in range(len(parts)))


def _executed(node: ast.AST) -> Iterator[ast.Import | ast.ImportFrom]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.Import | ast.ImportFrom):
            yield child
        elif isinstance(child, ast.If) and _never_runs(child.test):
            for statement in child.orelse:
                yield from _executed(ast.Module([statement], []))
        else:
            yield from _executed(child)


def _never_runs(test: ast.expr) -> bool:
    # Blocks for type checkers, and for a library module started as a program.
    words = {x.id for x in ast.walk(test) if isinstance(x, ast.Name)}
    words |= {x.attr for x in ast.walk(test) if isinstance(x, ast.Attribute)}
    if isinstance(test, ast.Name | ast.Attribute):
        return "TYPE_CHECKING" in words
    return isinstance(test, ast.Compare) and words == {"__name__"} and "__main__" in ast.dump(test)


def _names(statement: ast.Import | ast.ImportFrom, package: str) -> Iterator[str]:
    if isinstance(statement, ast.Import):
        yield from (alias.name for alias in statement.names)
        return
    base = statement.module or ""
    if statement.level:
        above = package.split(".")[: len(package.split(".")) - statement.level + 1]
        base = ".".join([*above, *filter(None, [base])])
    yield base
    yield from (f"{base}.{alias.name}" for alias in statement.names)
