"""The cautions that stand on every page and every printed record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

EVERYWHERE = "everywhere"


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: a short form for replies and records, a long one for the safety page.

    `where` are the places that always carry it, `hazards` what equipment brings it along.
    """

    key: str
    short: str
    long: str
    where: frozenset[str]
    hazards: frozenset[str]


def load_cautions(text: Mapping[str, object], file: str) -> tuple[Caution, ...]:
    """Return every caution of a parsed file, in its order.

    Raises DataError where an entry is not whole.
    """
    return tuple(_caution(key, Record(file, key, value)) for key, value in text.items())


def _caution(key: str, record: Record) -> Caution:
    """Return one caution."""
    caution = Caution(
        key,
        record.text("short"),
        record.text("long"),
        frozenset(record.texts("where")),
        frozenset(record.texts("hazards")),
    )
    record.finish()
    if not caution.where | caution.hazards:
        raise record.error("names neither 'where' nor 'hazards', so it would never be shown")
    return caution


CAUTIONS = load_cautions(
    read_toml(data_folder() / "cautions.toml", "cautions.toml"), "cautions.toml"
)
HAZARDS = frozenset(hazard for caution in CAUTIONS for hazard in caution.hazards)


def cautions_against(hazards: Iterable[str]) -> tuple[str, ...]:
    """Return the short cautions against what equipment brings with it, in the file's order."""
    met = frozenset(hazards)
    return tuple(caution.short for caution in CAUTIONS if caution.hazards & met)


@cache
def cautions_for(place: str) -> tuple[str, ...]:
    """Return the short cautions for a checker's slug or a page's name, its own ones first."""
    own = [caution.short for caution in CAUTIONS if place in caution.where]
    general = [caution.short for caution in CAUTIONS if EVERYWHERE in caution.where]
    return (*own, *general)
