"""The few figures that decide how close is close, read from data/judging.toml."""

from __future__ import annotations

from dataclasses import dataclass, fields

from checkers.domain.errors import DataError
from checkers.domain.sources.documents import EVIDENCE_WORDS
from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "judging.toml"
PLAIN = frozenset({"confidence", "longest_of_delay", "slow_from"})


@dataclass(frozen=True, slots=True)
class Judging:
    """A confidence [0 to 1], four times [ms], a multiple of a delay, a share of a current."""

    confidence: float
    slower_at_more_current: float
    counter_full: float
    no_trip_lasts: float
    quickest_opening: float
    longest_of_delay: float
    slow_from: float


def load_judging() -> Judging:
    """Read the figures; raises DataError where one is missing or of another kind."""
    file = read_toml(data_folder() / FILE, FILE)
    values = {key: _value(key, entry) for key, entry in file.items()}
    known = {one.name for one in fields(Judging)}
    for key in sorted(known.symmetric_difference(values)):
        raise DataError(FILE, key, "is not known here" if key in values else "is missing")
    return Judging(**values)


def _value(key: str, entry: object) -> float:
    record = Record(FILE, key, entry)
    value = record.number("value") if key in PLAIN else record.amount("value", "time")
    record.choice("evidence", EVIDENCE_WORDS)
    record.text("why")
    record.finish()
    if value is None:
        raise record.error("has no value")
    return value


JUDGING = load_judging()
