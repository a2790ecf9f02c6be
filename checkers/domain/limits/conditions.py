"""When a limit row applies: conditions on the device, the test and the circuit.

A condition that is absent asks nothing. A question that leaves something out is not
filtered by it: whoever asks with an unknown device type gets the rows of every type.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf, isclose

from checkers.domain.device.device import Form
from checkers.domain.tables.records import Record

CHOICES: Mapping[str, frozenset[str]] = {
    "type": frozenset({"AC", "A", "F", "B", "B+"}),
    "form": frozenset(form.value for form in Form),
    "delay": frozenset({"none", "G", "S", "set"}),
    "waveform": frozenset(
        {
            "ac",
            "half-wave",
            "half-wave-90",
            "half-wave-135",
            "smooth-dc",
            "two-pulse",
            "three-pulse",
            "six-pulse",
            "ac-150-hz",
            "ac-400-hz",
            "ac-1000-hz",
            "ac-above-1000-hz",
            "composite",
        }
    ),
    "option": frozenset(
        {
            "five-times",
            "quarter-ampere",
            "monitoring",
            "protective",
            "type-I",
            "not-type-I",
            "type-II",
            "class-5",
            "class-20",
        }
    ),
    "system": frozenset({"tn", "tt"}),
    "supply": frozenset({"ac", "dc"}),
    "circuit": frozenset({"final", "distribution"}),
    "quantity": frozenset(
        {"trip-time", "operating-current", "test-current", "no-trip-current", "touch-voltage"}
    ),
    "direction": frozenset({"over", "under"}),
}
RANGES: Mapping[str, str] = {
    "rated_residual_current": "current",
    "rated_current": "current",
    "set_delay": "time",
    "voltage": "voltage",
}


@dataclass(frozen=True, slots=True)
class Interval:
    """A range of a quantity in canonical units, each end inside it or not."""

    low: float = 0.0
    high: float = inf
    low_inside: bool = True
    high_inside: bool = False

    def holds(self, value: float) -> bool:
        """Tell whether a value lies in the range."""
        above = value > self.low or (self.low_inside and value == self.low)
        below = value < self.high or (self.high_inside and value == self.high)
        return above and below

    def meets(self, other: Interval) -> bool:
        """Tell whether two ranges share at least one value."""
        low, high = max(self.low, other.low), min(self.high, other.high)
        return low < high or (low == high and self.holds(low) and other.holds(low))

    def touches(self, later: Interval) -> bool:
        """Tell whether no value lies between this range and one that starts later."""
        joined = self.high_inside or later.low_inside
        return later.low < self.high or (later.low == self.high and joined)


@dataclass(frozen=True, slots=True, eq=False)
class Conditions:
    """What must hold for a row to apply; `multiple` and `current` are the test current.

    Where the row says "or higher", `highest` is the greatest test current [mA] it says it for.
    """

    choices: Mapping[str, frozenset[str]]
    ranges: Mapping[str, Interval]
    multiple: float | None = None
    current: float | None = None
    dc_residual: float | None = None
    dc_residual_of_rated: float | None = None
    highest: float | None = None

    @property
    def has_dc(self) -> bool:
        """Tell whether the row is for a residual current with smooth DC superimposed."""
        return dc_of(self) != (None, None)

    def only(self, name: str) -> frozenset[str] | None:
        """Return the words a choice is limited to, or None where it is not limited."""
        return self.choices.get(name)

    def level(self, rated: float | None) -> float | None:
        """Return the test current [mA] for a rated residual current [mA], or None."""
        if self.current is not None:
            return self.current
        if self.multiple is None or rated is None:
            return None
        return round(self.multiple * rated, 9)

    def smooth_dc(self, rated: float | None) -> float | None:
        """Return the greatest smooth DC [mA] that may be superimposed, or None if none."""
        if self.dc_residual_of_rated is None:
            return self.dc_residual
        return None if rated is None else round(self.dc_residual_of_rated * rated, 9)


@dataclass(frozen=True, slots=True)
class Situation:
    """What is known of a device, a test and a circuit; None is not known, or not asked."""

    form: str | None = None
    type: str | None = None
    delay: str | None = None
    set_delay: float | None = None
    rated: float | None = None
    rated_current: float | None = None
    waveform: str | None = None
    multiple: float | None = None
    current: float | None = None
    dc_residual: float = 0.0
    option: str | None = None
    system: str | None = None
    supply: str | None = None
    voltage: float | None = None
    circuit: str | None = None
    quantity: str | None = None
    direction: str | None = None

    @property
    def level(self) -> float | None:
        """The test current [mA] asked about, or None."""
        if self.current is not None or self.multiple is None or self.rated is None:
            return self.current
        return self.multiple * self.rated

    def amount(self, name: str) -> float | None:
        """Return the value of a condition that is a range, by the condition's name."""
        value = self.rated if name == "rated_residual_current" else getattr(self, name)
        return None if value is None else float(value)


def applies(when: Conditions, situation: Situation) -> bool:
    """Tell whether nothing in the question speaks against the conditions."""
    for name, words in when.choices.items():
        asked = getattr(situation, name)
        if asked is not None and asked not in words:
            return False
    for name, interval in when.ranges.items():
        value = situation.amount(name)
        if value is not None and not interval.holds(value):
            return False
    return _dc_applies(when, situation) and _level_applies(when, situation)


def _dc_applies(when: Conditions, situation: Situation) -> bool:
    """Tell whether a row for superimposed smooth DC is, or is not, asked for."""
    if when.has_dc != (situation.dc_residual > 0):
        return False
    tolerated = when.smooth_dc(situation.rated)
    return tolerated is None or situation.dc_residual <= tolerated


def _level_applies(when: Conditions, situation: Situation) -> bool:
    """Tell whether the row's test current is the one asked about."""
    asked, given = situation.level, when.level(situation.rated)
    if asked is not None and given is not None:
        return isclose(asked, given, rel_tol=1e-6)
    if asked is None and situation.multiple is not None and when.multiple is not None:
        return isclose(situation.multiple, when.multiple)
    return True


def together(one: Conditions, other: Conditions) -> bool:
    """Tell whether some device and test could meet both sets of conditions."""
    for name, words in one.choices.items():
        if not words & other.choices.get(name, words):
            return False
    for name, interval in one.ranges.items():
        if not interval.meets(other.ranges.get(name, interval)):
            return False
    return level_of(one) == level_of(other) and one.has_dc == other.has_dc


def level_of(when: Conditions) -> tuple[float | None, float | None]:
    """Return what tells one test current from another, whatever the rating."""
    return when.multiple, when.current


def dc_of(when: Conditions) -> tuple[float | None, float | None]:
    """Return what tells one superimposed smooth DC from another."""
    return when.dc_residual, when.dc_residual_of_rated


def read_interval(record: Record, measures: str) -> Interval:
    """Return a range written with above or from, and below or up_to."""
    ends = {key: record.amount(key, measures) for key in ("above", "from", "below", "up_to")}
    record.finish()
    above, start, below, up_to = ends.values()
    if (above is not None and start is not None) or (below is not None and up_to is not None):
        raise record.error("gives the same end twice")
    low, high = (above if start is None else start), (below if up_to is None else up_to)
    if low is None and high is None:
        raise record.error("needs above, from, below or up_to")
    if low is not None and high is not None and low > high:
        raise record.error("ends before it starts")
    return Interval(
        low=low or 0.0,
        high=inf if high is None else high,
        low_inside=above is None,
        high_inside=up_to is not None,
    )


def read_conditions(record: Record | None) -> Conditions:
    """Return the conditions written in a `when` or `applies` table (None: no conditions)."""
    if record is None:
        return Conditions({}, {})
    choices = {name: record.choices(name, known) for name, known in CHOICES.items()}
    ranges = {
        name: read_interval(inner, measures)
        for name, measures in RANGES.items()
        if (inner := record.record(name)) is not None
    }
    conditions = Conditions(
        choices={name: words for name, words in choices.items() if words},
        ranges=ranges,
        multiple=record.number("multiple"),
        current=record.amount("current", "current"),
        dc_residual=record.amount("dc_residual", "current"),
        dc_residual_of_rated=record.number("dc_residual_of_rated"),
        highest=_highest(record),
    )
    record.finish()
    if conditions.highest is not None and level_of(conditions) == (None, None):
        raise record.error("says how high a test current may be, and names none")
    if None not in level_of(conditions) or None not in dc_of(conditions):
        raise record.error("gives one current in two ways")
    return conditions


def _highest(record: Record) -> float | None:
    """Return the greatest test current [mA] a row speaks of; infinite where it says or more."""
    up_to = record.amount("up_to_current", "current")
    if not record.flag("or_more", default=False):
        return up_to
    if up_to is not None:
        raise record.error("says both or_more and up_to_current")
    return inf


def joined(record: Record, table: Conditions, row: Conditions) -> Conditions:
    """Return a row's conditions with those of its whole table."""
    twice = (table.choices.keys() & row.choices.keys()) | (table.ranges.keys() & row.ranges.keys())
    for name, of in (("the test current", level_of), ("dc_residual", dc_of)):
        if of(table) != (None, None) != of(row):
            twice = {*twice, name}
    if twice:
        raise record.error(f"repeats a condition of the whole table: {', '.join(sorted(twice))}")
    timed = row if level_of(table) == (None, None) else table
    with_dc = table if table.has_dc else row
    return Conditions(
        {**table.choices, **row.choices},
        {**table.ranges, **row.ranges},
        timed.multiple,
        timed.current,
        with_dc.dc_residual,
        with_dc.dc_residual_of_rated,
        timed.highest,
    )
