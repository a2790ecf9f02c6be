"""What each form of device is able to do, from forms.toml."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import StrEnum
from types import MappingProxyType

from checkers.domain.tables.data_files import data_folder, read_toml
from checkers.domain.tables.records import Record

FILE = "forms.toml"


class Ability(StrEnum):
    """One thing that some forms of device do or have, and others do not."""

    OPENS = "opens"  # interrupts its circuit, where a monitor only warns
    PROTECTS = "protects"  # stands alone as the device that disconnects
    DETECTS_DC = "detects-dc"  # opens on smooth DC of 6 mA, beside a device that protects
    HAS_TYPE = "has-type"  # bears one of several types, which its form alone does not tell
    RATING_PRINTED = "rating-printed"  # is tested at multiples of a rating, not at fixed currents
    STANDING_DC = "standing-dc"  # can be blinded by DC of the loads, which is measured for it
    EXPLAINED = "explained"  # trips at half to one times its rating, so that causes are weighed
    HOUSEHOLD = "household"  # is held to a standard that knows no adjustable delay
    BREAKER = "breaker"  # is held to IEC 60947-2, whose maker chooses the shortest time's current
    NO_CURVE = "no-curve"  # a letter beside its rated current names its type, not a curve
    MOVED = "moved"  # is inspected as portable equipment


def load_abilities(
    text: Mapping[str, object], file: str, forms: Iterable[str]
) -> Mapping[str, frozenset[str]]:
    """Return the abilities of each form.

    Inputs: the file's contents; its name, for complaints; the forms there are.
    Raises DataError where a form or an ability is not known, or a form is missing.
    """
    whole, words = Record(file, "", dict(text)), frozenset(Ability)
    found = {form: _of_one(Record(file, form, whole.value(form)), words) for form in forms}
    whole.finish()
    return MappingProxyType(found)


def _of_one(record: Record, words: frozenset[str]) -> frozenset[str]:
    abilities = record.choices("abilities", words)
    record.finish()
    if abilities is None:
        raise record.error("names no abilities")
    return abilities


def read_abilities(forms: Iterable[str]) -> Mapping[str, frozenset[str]]:
    """Return the abilities of each form as the data file has them."""
    return load_abilities(read_toml(data_folder() / FILE, FILE), FILE, forms)
