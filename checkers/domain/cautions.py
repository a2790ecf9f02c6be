"""The cautions that stand on every page and every printed record."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from checkers.domain.data_files import data_folder, read_toml
from checkers.domain.records import Record

EVERYWHERE = "everywhere"


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: a short form for replies and records, a long one for the safety page."""

    key: str
    short: str
    long: str
    where: frozenset[str]


def load_cautions(text: Mapping[str, object], file: str) -> tuple[Caution, ...]:
    """Return every caution of a parsed file, in its order.

    Raises DataError where an entry is not whole.
    """
    return tuple(_caution(key, Record(file, key, value)) for key, value in text.items())


def _caution(key: str, record: Record) -> Caution:
    """Return one caution."""
    caution = Caution(
        key, record.text("short"), record.text("long"), frozenset(record.texts("where"))
    )
    record.finish()
    if not caution.where:
        raise record.error("'where' is empty, so it would never be shown")
    return caution


CAUTIONS = load_cautions(
    read_toml(data_folder() / "cautions.toml", "cautions.toml"), "cautions.toml"
)


@cache
def cautions_for(place: str) -> tuple[str, ...]:
    """Return the short cautions for a checker's slug or a page's name, its own ones first."""
    own = [caution.short for caution in CAUTIONS if place in caution.where]
    general = [caution.short for caution in CAUTIONS if EVERYWHERE in caution.where]
    return (*own, *general)
