"""Python's standard library for the browser: only what can be reached, compiled."""

from __future__ import annotations

import tempfile
import tomllib
from collections.abc import Mapping
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from build_tools.files import paths
from build_tools.files.archives import archive_bytes, read_archive
from build_tools.runtime.bytecode import compile_archive
from build_tools.runtime.generated_source import MODULE, generated_source_module
from build_tools.runtime.import_closure import closure, imports_of, module_name

CHOICES = paths.TOOLS / "runtime" / "library.toml"
SHIMS = paths.TOOLS / "runtime" / "shims"

Modules = dict[str, tuple[bytes, bool]]


class Choices(NamedTuple):
    """What the trimming is told: where reaching starts, and which modules it passes by."""

    roots: tuple[str, ...]
    frozen: tuple[str, ...]
    left_out: dict[str, str]


def read_choices(path: Path = CHOICES) -> Choices:
    """Read the choices, each module left out with its reason."""
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    return Choices(tuple(table["roots"]), tuple(table["frozen"]), dict(table["left_out"]))


def modules_of(files: Mapping[str, bytes]) -> Modules:
    """Give each Python file of an archive or a folder under its module's name."""
    return {
        module_name(name): (source, name.endswith("__init__.py"))
        for name, source in files.items()
        if name.endswith(".py")
    }


def package_modules(package: Path) -> Modules:
    """Read a package's modules from its folder."""
    parent = package.parent
    return modules_of(
        {x.relative_to(parent).as_posix(): x.read_bytes() for x in package.rglob("*.py")}
    )


def trimmed(library: Mapping[str, bytes], own: Modules, choices: Choices) -> dict[str, bytes]:
    """Keep what the runtime and our own package can reach of the library.

    Args:
        library: the library's files by name.
        own: our modules, which reaching starts from too.
        choices: further roots, and what is passed by.

    Returns:
        The library's files that stay.

    Raises:
        ValueError: our own package imports what is left out, or a choice names no module.
    """
    modules = modules_of(library)
    _check(modules, own, choices)
    reached = closure({**modules, **own}, choices.roots, {*choices.frozen, *choices.left_out})
    return {name: content for name, content in library.items() if _stays(name, reached)}


def _stays(name: str, reached: set[str]) -> bool:
    path = PurePosixPath(name)
    # A file that is no module stays with the package it lies in.
    module = path if path.suffix == ".py" else path.parent / "__init__.py"
    return module_name(str(module)) in reached


def _check(modules: Modules, own: Modules, choices: Choices) -> None:
    if unknown := sorted({*choices.frozen, *choices.left_out} - set(modules)):
        raise ValueError(f"library.toml leaves out what the library does not have: {unknown}")
    reached = closure(own, [root for root in choices.roots if root.removesuffix(".*") in own])
    for name in sorted(reached):
        source, is_package = own[name]
        wanted = imports_of(name, source, is_package=is_package)
        if missing := sorted(wanted & set(choices.left_out)):
            raise ValueError(f"{name} imports {missing}, which library.toml leaves out")


def shims(folder: Path = SHIMS) -> dict[str, bytes]:
    """Read what takes the place of the library's own modules, by their files' names."""
    return {x.relative_to(folder).as_posix(): x.read_bytes() for x in folder.rglob("*.py")}


def library_for_browser(archive: Path, package: Path) -> bytes:
    """Trim and compile the runtime's standard library, and leave its documentation out.

    What stands in for a part of it is in its place, and the texts of our data classes are in it.

    Args:
        archive: the library as the runtime ships it.
        package: the folder of our own package.

    Returns:
        The archive that the site serves.
    """
    library = {**read_archive(archive), **shims(), MODULE: generated_source_module()}
    kept = trimmed(library, package_modules(package), read_choices())
    with tempfile.TemporaryDirectory() as folder:
        sources = Path(folder) / archive.name
        sources.write_bytes(archive_bytes(kept))
        return archive_bytes(compile_archive(sources, docstrings=False)[1])
