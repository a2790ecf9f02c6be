"""The glossary of quantities and units, read from data/quantities.toml."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import Any

from checkers.domain.errors import DataError
from checkers.domain.tables.data_files import data_folder, read_toml

FILE = "quantities.toml"


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit people write, and the factor to the unit the code computes in."""

    symbol: str
    kind: str
    factor: Decimal
    spellings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity's one name, symbol, unit, meaning and believable range [unit of its kind]."""

    key: str
    name: str
    symbol: str
    unit: str
    meaning: str
    kind: str
    least: Decimal
    most: Decimal
    least_text: str
    most_text: str

    @property
    def range_text(self) -> str:
        """The believable range in words."""
        return f"{self.least_text} to {self.most_text}"


def read_glossary() -> tuple[dict[str, Unit], dict[str, Quantity]]:
    """Read units and quantities, strictly; raises DataError on any unknown key or unit."""
    raw = read_toml(data_folder() / FILE, FILE)
    _refuse_unknown_keys("", raw, {"unit", "quantity"})
    units = {symbol: _unit(symbol, entry) for symbol, entry in _entries(raw, "unit")}
    quantities = {key: _quantity(key, entry, units) for key, entry in _entries(raw, "quantity")}
    return units, quantities


def _entries(raw: dict[str, Any], key: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield the tables of a table; every value is text, or a list of texts."""
    if not isinstance(raw[key], dict):
        raise DataError(FILE, key, "is no table of tables")
    for name, entry in raw[key].items():
        if not isinstance(entry, dict):
            raise DataError(FILE, name, "is no table")
        for value in entry.values():
            texts = value if isinstance(value, list) else [value]
            if not all(isinstance(one, str) and one for one in texts):
                raise DataError(FILE, name, f"{value!r} is neither text nor a list of texts")
        yield name, entry


def _unit(symbol: str, entry: dict[str, Any]) -> Unit:
    _refuse_unknown_keys(symbol, entry, {"kind", "factor", "spellings"})
    factor = _figure(symbol, entry["factor"])
    return Unit(symbol, entry["kind"], factor, tuple(entry["spellings"]))


def _figure(row: str, text: str) -> Decimal:
    try:
        return Decimal(text)
    except InvalidOperation:
        raise DataError(FILE, row, f"{text!r} is no plain figure") from None


def _quantity(key: str, entry: dict[str, Any], units: dict[str, Unit]) -> Quantity:
    _refuse_unknown_keys(key, entry, {"name", "symbol", "unit", "meaning", "least", "most"})
    if entry["unit"] not in units:
        raise DataError(FILE, key, f"unknown unit {entry['unit']!r}")
    kind = units[entry["unit"]].kind
    least, most = (_bound(key, entry[end], kind, units) for end in ("least", "most"))
    if least >= most:
        raise DataError(FILE, key, "least is not below most")
    return Quantity(
        key=key,
        name=entry["name"],
        symbol=entry["symbol"],
        unit=entry["unit"],
        meaning=entry["meaning"],
        kind=kind,
        least=least,
        most=most,
        least_text=entry["least"],
        most_text=entry["most"],
    )


def _bound(key: str, text: str, kind: str, units: dict[str, Unit]) -> Decimal:
    number, _, symbol = text.partition(" ")
    if symbol not in units or units[symbol].kind != kind:
        raise DataError(FILE, key, f"{text!r} is not a {kind}")
    return _figure(key, number) * units[symbol].factor


def _refuse_unknown_keys(row: str, entry: dict[str, Any], known: set[str]) -> None:
    unknown = sorted(set(entry) - known)
    missing = sorted(known - set(entry))
    if unknown or missing:
        raise DataError(FILE, row, f"unknown keys {unknown}, missing keys {missing}")


UNITS, QUANTITIES = read_glossary()

SPELLINGS = {
    spelling: unit for unit in UNITS.values() for spelling in (*unit.spellings, unit.symbol.lower())
}
