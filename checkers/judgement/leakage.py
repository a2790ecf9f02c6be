"""The standing leakage on one device, from a measurement, a list, or insulation resistance."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.devices import Form
from checkers.domain.known_figures import KNOWN
from checkers.domain.limit_rows import Row
from checkers.domain.limits import rows_in
from checkers.domain.loads import LOADS
from checkers.domain.sources import Citation
from checkers.judgement.case import Case
from checkers.judgement.current_bands import Band, operating_band
from checkers.judgement.leakage_parts import NO_LEAKAGE, Leakage, Nature, leakage_of

DO_NOT_TRIP_ON_AC = frozenset({Form.MONITOR, Form.RDC_DD})
OLDER_MARGIN = "trade-practice/standing-leakage"


@dataclass(frozen=True, slots=True)
class ListedItem:
    """Equipment of one kind: how many, and the leakage of each [mA], typical and at most.

    `at_most` is None where no upper figure is known.
    """

    name: str
    count: int
    nature: str
    typical: float
    at_most: float | None
    source: Citation | None

    @property
    def each(self) -> Leakage:
        """The leakage of one, as far up as it is known."""
        return leakage_of(self.typical if self.at_most is None else self.at_most, self.nature)


@dataclass(frozen=True, slots=True)
class Budget:
    """What a device may carry [mA]: by the code, by its standard, and by the trade's margin."""

    limit: float | None
    limit_row: Row | None
    no_trip: float | None
    band: Band | None
    margin: float | None
    margin_row: Row


@dataclass(frozen=True, slots=True)
class StandingLeakage:
    """What is known of the leakage: measured [mA], listed items, and insulation [ohm]."""

    case: Case
    measured: float | None
    stated_uncertainty: float | None
    clamp_filter: str
    items: tuple[ListedItem, ...]
    insulation_resistance: float | None
    line_voltage: float

    @property
    def through_insulation(self) -> Leakage:
        """What the insulation resistance lets through: the resistive part only."""
        if self.insulation_resistance is None:
            return NO_LEAKAGE
        current = 1000 * self.line_voltage / self.insulation_resistance
        return leakage_of(current, Nature.RESISTIVE)

    @property
    def worked_out(self) -> bool:
        """Whether there is anything to work the leakage out from, beside a measurement."""
        return bool(self.items) or self.insulation_resistance is not None

    @property
    def expected(self) -> Leakage:
        """The leakage worked out from what the items leak as a rule."""
        return self._with_items([leakage_of(one.typical, one.nature) for one in self.items])

    @property
    def at_most(self) -> Leakage:
        """The leakage worked out from the most that the items are known to leak."""
        return self._with_items([one.each for one in self.items])

    @property
    def has_upper_figures(self) -> bool:
        """Whether every item has an upper figure."""
        return all(one.at_most is not None for one in self.items)

    def uncertainty(self, limit: float) -> float:
        """Return the expanded uncertainty [mA] of the measurement near a limit [mA]."""
        if self.stated_uncertainty is not None:
            return self.stated_uncertainty
        return limit * KNOWN["leakage_clamp_uncertainty"].value / 100

    def _with_items(self, leakages: list[Leakage]) -> Leakage:
        total = self.through_insulation
        for each, item in zip(leakages, self.items, strict=True):
            total += each.times(item.count)
        return total


def budget_of(case: Case) -> Budget:
    """Return what the device of a case may carry, as far as rating and code tell."""
    rated = case.device.rated_residual_current
    row = None if case.device.form in DO_NOT_TRIP_ON_AC else _limit_row(case)
    band, margin = operating_band(case, "ac"), rows_in(OLDER_MARGIN, on=case.day)[0]
    return Budget(
        limit=None if row is None else row.at_most(rated),
        limit_row=row,
        no_trip=None if band is None else band.at_least,
        band=band,
        margin=margin.at_most(rated),
        margin_row=margin,
    )


def listed(load: str, label: str, count: int, leakage: float | None, nature: str) -> ListedItem:
    """Return an item of a list; where no leakage is given, that of its kind is taken."""
    known = LOADS.get(load)
    name = label or (known.name if known else "item")
    figure = known.figure("leakage") if known else None
    if leakage is not None or figure is None:
        return ListedItem(name, count, nature, leakage or 0.0, leakage, None)
    typical = figure.at_most if figure.typical is None else figure.typical
    return ListedItem(name, count, nature, typical or 0.0, figure.at_most, figure.source)


def _limit_row(case: Case) -> Row | None:
    table = case.code.tables.get("standing-leakage")
    found = rows_in(table, on=case.day) if table else ()
    return found[0] if found else None
