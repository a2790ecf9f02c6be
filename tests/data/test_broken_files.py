"""Broken data files: each stops the build, with words that name the file, the row and the fault.

The first line of each file in the folder `broken` holds words its error must contain.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from checkers.domain.codes.loading import load_codes
from checkers.domain.errors import DataError
from checkers.domain.limits.loading import load_table
from checkers.domain.limits.tables import TABLES
from checkers.domain.sources.cautions import load_cautions
from checkers.domain.sources.documents import load_sources
from checkers.domain.tables.data_files import read_toml
from checkers.judgement.schedule.headings.vocabulary import load_vocabulary
from checkers.judgement.schedule.rows.surveys import load_surveys

BROKEN = Path(__file__).parent / "broken"
MARK = "# refused because: "


def load_one_code(path: Path, folder: Path) -> None:
    """Load a folder that holds this code alone."""
    (folder / path.name).write_text(path.read_text(encoding="utf-8"), encoding="utf-8")
    load_codes(folder, TABLES)


LOADERS: dict[str, Callable[[Path, Path], object]] = {
    "limits": lambda path, _: load_table(path, "iec-61008-1"),
    "codes": load_one_code,
    "sources": lambda path, _: load_sources(read_toml(path, path.name), path.name),
    "cautions": lambda path, _: load_cautions(read_toml(path, path.name), path.name),
    "headings": lambda path, _: load_vocabulary(read_toml(path, path.name), path.name),
    "surveys": lambda path, _: load_surveys(read_toml(path, path.name), path.name),
}


@pytest.mark.parametrize(
    "path", sorted(BROKEN.rglob("*.toml")), ids=lambda path: f"{path.parent.name}/{path.stem}"
)
def test_a_broken_file_is_refused_with_its_name_and_the_fault(path: Path, tmp_path: Path) -> None:
    """The words stand in the file's first line."""
    first, *_ = path.read_text(encoding="utf-8").splitlines()
    assert first.startswith(MARK)

    with pytest.raises(DataError) as refused:
        LOADERS[path.parent.name](path, tmp_path)

    assert first.removeprefix(MARK) in str(refused.value)
    assert path.name in str(refused.value)


def test_every_kind_of_file_has_broken_examples() -> None:
    """Nothing is loaded whose refusals are not tried."""
    assert {folder.name for folder in BROKEN.iterdir()} == LOADERS.keys()
    assert all(len(list((BROKEN / kind).glob("*.toml"))) > 1 for kind in LOADERS)


def test_the_bodies_of_the_broken_tables_are_sound_but_for_their_fault(tmp_path: Path) -> None:
    """The common head with one good row loads: the faults are what stops the others."""
    head = (BROKEN / "limits" / "no_rows.toml").read_text(encoding="utf-8")
    sound = tmp_path / "sound.toml"
    row = '[[row]]\nwhen = { multiple = 1 }\nat_most = "300 ms"\nevidence = "read"\n'
    sound.write_text(head + row, encoding="utf-8")

    assert load_table(sound, "iec-61008-1").rows[0].at_most() == 300.0
