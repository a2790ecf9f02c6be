"""The package's TOML files as one Python module, for the browser, where reading TOML takes long.

The build reads them with the parser that everyone else uses, so the two forms cannot differ.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping

FOLDER = "checkers/data/"
MODULE = f"{FOLDER}parsed.py"
SUFFIX = ".toml"


def with_parsed_data(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Put a module in the place of the data files.

    Args:
        files: a wheel's files by name.

    Returns:
        The same without the TOML files of the data folder, and with the module that the
        package looks for first.

    Raises:
        tomllib.TOMLDecodeError: a file is not TOML.
    """
    data = {name for name in files if name.startswith(FOLDER) and name.endswith(SUFFIX)}
    parsed = {
        name.removeprefix(FOLDER): tomllib.loads(files[name].decode()) for name in sorted(data)
    }
    rest = {name: content for name, content in files.items() if name not in data}
    return {**rest, MODULE: module_text(parsed).encode()}


def module_text(parsed: Mapping[str, object]) -> str:
    """Return the module's source: numbers, texts, truths and days as Python writes them."""
    lines = [f"    {name!r}: {values!r},\n" for name, values in parsed.items()]
    return "".join(["import datetime\n\nFILES = {\n", *lines, "}\n"])
