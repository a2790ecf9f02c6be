"""The browser's form of the data files says what the files say."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from build_tools.files import paths
from build_tools.runtime.data_module import FOLDER, MODULE, with_parsed_data
from checkers.domain.codes.loading import load_codes
from checkers.domain.limits.loading import load_tables
from checkers.domain.tables.parsed_data import ParsedPath

DATA = paths.ROOT / FOLDER
FILES = {x.relative_to(paths.ROOT).as_posix(): x for x in sorted(DATA.rglob("*.toml"))}


def _run(module: bytes) -> dict[str, Any]:
    values: dict[str, Any] = {}
    exec(module.decode(), values)  # noqa: S102  # it is what was just made from our own files
    return dict(values["FILES"])


def _parsed() -> dict[str, Any]:
    return _run(with_parsed_data({name: x.read_bytes() for name, x in FILES.items()})[MODULE])


def test_the_module_holds_every_data_file_value_by_value() -> None:
    """Each as the standard library reads it, days and all; the files themselves are left out."""
    expected = {
        name.removeprefix(FOLDER): tomllib.loads(path.read_text(encoding="utf-8"))
        for name, path in FILES.items()
    }

    assert len(expected) > 50
    assert _parsed() == expected


def test_only_the_data_files_go() -> None:
    """All else of a wheel stays as it is."""
    made = with_parsed_data({f"{FOLDER}a/b.toml": b"day = 2020-01-02", "other/c.toml": b"x = 1"})

    assert set(made) == {MODULE, "other/c.toml"}
    assert str(_run(made[MODULE])["a/b.toml"]["day"]) == "2020-01-02"


def test_the_tables_and_codes_are_the_same_from_either_form() -> None:
    """The loaders walk the parsed files as they walk a folder."""
    root = ParsedPath(_parsed())
    tables = load_tables(Path(DATA / "limits"))

    assert load_tables(root / "limits").keys() == tables.keys()
    assert repr(load_tables(root / "limits")) == repr(tables)
    assert repr(load_codes(root / "codes", tables)) == repr(load_codes(DATA / "codes", tables))
