"""What a bench measured, and the budget that it must keep."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import NamedTuple

BUDGETS = Path(__file__).with_suffix(".toml")


class Measurement(NamedTuple):
    """One measured value in the unit of its budget, and what it is about if there are several."""

    name: str
    value: float
    about: str = ""


class Budget(NamedTuple):
    """The most, or the least, that a figure may be."""

    unit: str
    at_most: float | None = None
    at_least: float | None = None

    def keeps(self, value: float) -> bool:
        """Tell whether a value is within the budget."""
        below = self.at_most is None or value <= self.at_most
        return below and (self.at_least is None or value >= self.at_least)

    def __str__(self) -> str:
        """Say the limit as a reader would."""
        if self.at_least is not None:
            return f"at least {self.at_least:g} {self.unit}"
        return f"at most {self.at_most:g} {self.unit}"


def read_budgets(path: Path = BUDGETS) -> dict[str, Budget]:
    """Read every budget by the name of its figure.

    Raises:
        TypeError: a row has a key that no budget has, or no unit.
    """
    rows = tomllib.loads(path.read_text(encoding="utf-8"))
    return {name: Budget(**row) for name, row in rows.items()}
