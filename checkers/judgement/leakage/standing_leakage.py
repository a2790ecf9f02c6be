"""The standing leakage on one device, from a measurement, a list, or insulation resistance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows_in
from checkers.domain.loads.registry import LOADS
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.judgement.case import Case
from checkers.judgement.leakage.parts import NO_LEAKAGE, Leakage, Nature, leakage_of
from checkers.judgement.leakage.phasors import (
    LINE_ANGLES,
    Line,
    Part,
    all_on,
    at_least,
    greatest,
    may_cancel,
)
from checkers.judgement.limits.current_bands import operating_band
from checkers.wording.book import part

Where = tuple[str, str]  # through what a leakage flows, and on which line
OLDER_MARGIN = "trade-practice/standing-leakage"


@dataclass(frozen=True, slots=True)
class ListedItem:
    """Equipment of one kind: how many, the leakage of each [mA], typical and at most, its line.

    `at_most` is None where no upper figure is known; `is_given` tells whether the leakage was
    typed in, and is not that of its kind from the catalogue.
    """

    name: str
    count: int
    nature: str
    line: str
    typical: float
    at_most: float | None
    is_given: bool
    source: Citation | None

    @property
    def most(self) -> float:
        """The leakage of one [mA], as far up as it is known."""
        return self.typical if self.at_most is None else self.at_most

    @property
    def each(self) -> Leakage:
        """The leakage of one, as far up as it is known."""
        return leakage_of(self.most, self.nature)

    def part(self, each: float) -> Part:
        """Return all of them as a part of a sum, with a leakage of each [mA]."""
        return Part(each, self.count, self.nature, self.line)


@dataclass(frozen=True, slots=True)
class Budget:
    """What a device may carry [mA]: by the code, by its standard, and by the trade's margin."""

    limit: float | None
    limit_row: Row | None
    no_trip: float | None
    band: Limit | None
    margin: float | None
    margin_row: Row


@dataclass(frozen=True, slots=True)
class StandingLeakage:
    """What is known of the leakage: measured [mA], listed items, and insulation [ohm].

    Items stand on the line they are said to; on a single-phase device all are on one.
    """

    case: Case
    measured: float | None
    stated_uncertainty: float | None
    clamp_filter: str
    items: tuple[ListedItem, ...]
    insulation_resistance: float | None
    line_voltage: float
    single_phase: bool

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
    def expected(self) -> float:
        """The leakage [mA] in the worst combination, from what the items leak as a rule."""
        return greatest(self._parts([one.part(one.typical) for one in self.items]))

    @property
    def at_most(self) -> float:
        """The leakage [mA] in the worst combination, from the most the items are known to leak."""
        return greatest(self._parts([one.part(one.most) for one in self.items]))

    @property
    def must_be(self) -> float:
        """What the leakage [mA] is sure to reach in some combination, by the figures typed in."""
        return at_least(self._given)

    @property
    def given_at_most(self) -> float:
        """The leakage [mA] in the worst combination of the items whose figures were typed in."""
        return greatest(self._given)

    @property
    def all_on(self) -> float | None:
        """The leakage [mA] with everything on and every line there; None without the lines."""
        return all_on(self._parts([one.part(one.typical) for one in self.items]))

    @property
    def may_cancel(self) -> bool:
        """Whether a clamp may read less with everything on than flows with some of it off."""
        return may_cancel(self._given)

    @property
    def is_on_one_line(self) -> bool:
        """Whether everything is on one line, as it is on a single-phase device."""
        named = {one.line for one in self.items}
        return self.single_phase or (len(named) == 1 and named < set(LINE_ANGLES))

    @property
    def lines_are_open(self) -> bool:
        """Whether the line of some item is not told, on a device that may have several."""
        return not self.single_phase and any(one.line == Line.UNKNOWN for one in self.items)

    @property
    def has_upper_figures(self) -> bool:
        """Whether every item has an upper figure."""
        return all(one.at_most is not None for one in self.items)

    def uncertainty(self, limit: float) -> float:
        """Return the expanded uncertainty [mA] of the measurement near a limit [mA]."""
        if self.stated_uncertainty is not None:
            return self.stated_uncertainty
        return limit * CONSTANTS["leakage_clamp_uncertainty"].value / 100

    @property
    def _given(self) -> list[Part]:
        return self._parts([one.part(one.typical) for one in self.items if one.is_given])

    def _parts(self, parts: Sequence[Part]) -> list[Part]:
        """Return the parts of a sum, what flows through the insulation among them."""
        through = Part(self.through_insulation.resistive, 1, Nature.RESISTIVE, Line.UNKNOWN)
        placed = [*parts, through] if through.each else list(parts)
        if not self.single_phase:
            return placed
        return [replace(one, line=Line.L1.value) for one in placed]


def budget_of(case: Case) -> Budget:
    """Return what the device of a case may carry, as far as rating and code tell."""
    rated = case.device.rated_residual_current
    row = _limit_row(case) if case.device.protects else None
    band, margin = operating_band(case, "ac"), rows_in(OLDER_MARGIN, on=case.day)[0]
    return Budget(
        limit=None if row is None else row.at_most(rated),
        limit_row=row,
        no_trip=None if band is None else band.at_least,
        band=band,
        margin=margin.at_most(rated),
        margin_row=margin,
    )


def listed(load: str, label: str, count: int, leakage: float | None, where: Where) -> ListedItem:
    """Return an item of a list; where no leakage is given, that of its kind is taken."""
    known = LOADS.get(load)
    name = label or (known.name if known else part("leakage.item"))
    figure = known.figure("leakage") if known else None
    if leakage is not None or figure is None:
        return ListedItem(name, count, *where, leakage or 0.0, leakage, is_given=True, source=None)
    typical = figure.at_most if figure.typical is None else figure.typical
    return ListedItem(
        name, count, *where, typical or 0.0, figure.at_most, is_given=False, source=figure.source
    )


def _limit_row(case: Case) -> Row | None:
    table = case.code.tables.get("standing-leakage")
    found = rows_in(table, on=case.day) if table else ()
    return found[0] if found else None
