"""Which inputs decide how a reading of each kind of test is judged, from deciding_inputs.toml."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from checkers.domain.device.readings import Test
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "deciding_inputs.toml"
INPUTS = ("test", "waveform", "level", "rating", "type")


class Decides(StrEnum):
    """When an input decides: for every reading, or where a limit that could apply needs it."""

    ALWAYS = "always"
    BY_LIMIT = "by-limit"


Deciding = Mapping[str, Decides]


def load_deciding_inputs(text: Mapping[str, object], file: str) -> dict[str, Deciding]:
    """Return the inputs that decide, by kind of test and in the order they are asked for.

    Raises DataError where a kind of test or an input is not known, or a kind is missing.
    """
    whole = Record(file, "", dict(text))
    found = {test.value: _inputs(Record(file, test, whole.value(test))) for test in Test}
    whole.finish()
    return found


def _inputs(record: Record) -> Deciding:
    words = frozenset(Decides)
    found = {name: Decides(record.choice(name, words)) for name in record.values if name in INPUTS}
    record.finish()
    return MappingProxyType(found)


DECIDING: Mapping[str, Deciding] = MappingProxyType(
    load_deciding_inputs(read_toml(data_folder() / FILE, FILE), FILE)
)
