"""Limit rows in words: plain cells for pages, the command line and printed records."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import inf

from checkers.domain.device.device import Form
from checkers.domain.device.readings import Waveform
from checkers.domain.limits.conditions import Conditions, Interval
from checkers.domain.limits.rows import Formula, LimitEnd, Row, Table
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.quantities.ranges import between
from checkers.domain.sources.documents import Evidence

HEADINGS = {
    "device": "Device",
    "test": "Test",
    "limit": "Limit",
    "days": "Days",
    "document": "Document",
    "edition": "Edition",
    "clause": "Clause",
    "evidence": "How it is known",
    "note": "Note",
}
WAVEFORMS = {
    "two-pulse": "DC rectified from two phases",
    "three-pulse": "DC rectified from three phases, star",
    "six-pulse": "DC rectified from three phases, bridge",
    "ac-150-hz": "AC 150 Hz",
    "ac-400-hz": "AC 400 Hz",
    "ac-1000-hz": "AC 1 kHz",
    "ac-above-1000-hz": "AC above 1 kHz",
    "composite": "Several frequencies together",
} | {one.value: one.label for one in Waveform}
WORDS = {
    "five-times": "40 ms declared at 5 × IΔn",
    "quarter-ampere": "40 ms declared at 0.25 A",
    "monitoring": "monitoring kind",
    "protective": "protective kind",
    "not-type-I": "not type I",
    "type-I": "type I",
    "type-II": "type II",
    "class-5": "class 5",
    "class-20": "class 20",
    "none": "without delay",
    "set": "set delay",
    "tn": "TN",
    "tt": "TT",
    "ac": "AC",
    "dc": "DC",
    "final": "final circuit",
    "distribution": "distribution circuit",
    "over": "too high",
    "under": "too low",
}
RANGE_WORDS = {
    "rated_residual_current": ("IΔn", "mA"),
    "rated_current": ("In", "mA"),
    "set_delay": ("set delay", "ms"),
    "voltage": ("voltage to earth", "V"),
}
DEVICE_CHOICES = ("form", "type", "delay", "option")
CIRCUIT_CHOICES = ("system", "supply", "circuit", "quantity", "direction")


@dataclass(frozen=True, slots=True)
class Sheet:
    """A table in words: its headings, and the cells of each row in the same order."""

    headings: tuple[str, ...]
    cells: tuple[tuple[str, ...], ...]


def describe(row: Row) -> dict[str, str]:
    """Return a row as words, by the keys of HEADINGS."""
    cited = row.citation
    return {
        "device": _joined(_device(row.when)),
        "test": _joined(_test(row.when)),
        "limit": limit_in_words(row),
        "days": days_in_words(row),
        "document": cited.document,
        "edition": cited.edition,
        "clause": cited.clause,
        "evidence": Evidence(row.evidence).meaning,
        "note": row.note,
    }


def sheet(table: Table) -> Sheet:
    """Return a table as headings and cells, without the columns that stay empty."""
    rows = [describe(row) for row in table.rows]
    kept = [key for key in HEADINGS if any(row[key] for row in rows)]
    cells = tuple(tuple(row[key] for key in kept) for row in rows)
    return Sheet(tuple(HEADINGS[key] for key in kept), cells)


def amount_in_words(value: float, unit: str) -> str:
    """Return a figure in the unit people use for its size: 300 ms, 10 s, 30 mA, 5 A, 10 %."""
    if unit == "share":
        return format_quantity(100 * value, "%")
    if unit == "ratio":
        return f"{value:g}"
    return format_quantity(value, unit)


def limit_in_words(row: Row) -> str:
    """Return what a row limits, as one short text."""
    if row.never:
        return "must not operate"
    if row.undeclared:
        return "no figure declared"
    if row.formula:
        return "; ".join(f"≤ {_formula(piece)}" for piece in row.formula)
    least, most = (_bound(end, row.unit) if end else "" for end in (row.least, row.most))
    return between(least, most)


def days_in_words(row: Row) -> str:
    """Return the days a row holds on, or nothing where it always does."""
    start = f"from {row.from_day}" if row.from_day else ""
    end = f"until {row.until_day}" if row.until_day else ""
    return f"{start} {end}".strip()


def _bound(bound: LimitEnd, unit: str) -> str:
    """Return one end of a limit: a figure, a share of the rating or of the delay, or a sum."""
    parts = [f"{bound.of_rated:g} × IΔn"] if bound.of_rated is not None else []
    parts += [amount_in_words(bound.fixed, unit)] if bound.fixed is not None else []
    if bound.of_delay is not None:
        share = "" if bound.of_delay == 1 else f"{bound.of_delay:g} × "
        parts.append(f"{share}the set delay")
    return " + ".join(parts)


def _formula(piece: Formula) -> str:
    """Return one piece of a time formula."""
    power = f"({amount_in_words(piece.numerator, 'mA')} / I) ^ {piece.exponent:g} s"
    return f"{power} for I {interval_in_words(piece.over, 'mA')}"


def interval_in_words(interval: Interval, unit: str) -> str:
    """Return a range: above 30 mA, up to 30 mA, 30 mA, above 10 mA and up to 30 mA."""
    if interval.low == interval.high:
        return amount_in_words(interval.low, unit)
    parts = []
    if interval.low > 0:
        low = "from" if interval.low_inside else "above"
        parts.append(f"{low} {amount_in_words(interval.low, unit)}")
    if interval.high < inf:
        high = "up to" if interval.high_inside else "below"
        parts.append(f"{high} {amount_in_words(interval.high, unit)}")
    return " and ".join(parts)


def _device(when: Conditions) -> Iterable[str]:
    """Yield the conditions on the device."""
    for name in DEVICE_CHOICES:
        words = when.only(name)
        if words is not None:
            yield _choice(name, words)
    for name, interval in when.ranges.items():
        label, unit = RANGE_WORDS[name]
        yield f"{label} {interval_in_words(interval, unit)}"


def _choice(name: str, words: frozenset[str]) -> str:
    """Return one choice of the device in words."""
    if name == "form":
        return " or ".join(form.label.split(" (")[0] for form in Form if form.value in words)
    if name == "type":
        return f"type {', '.join(sorted(words))}"
    if name == "delay":
        return " or ".join(WORDS.get(word, word) for word in sorted(words, reverse=True))
    return " or ".join(WORDS[word] for word in sorted(words))


def _test(when: Conditions) -> Iterable[str]:
    """Yield the conditions on the test and the circuit."""
    for word in sorted(when.only("waveform") or ()):
        yield WAVEFORMS[word]
    if when.multiple is not None:
        yield f"{when.multiple:g} × IΔn{_or_higher(when)}"
    if when.current is not None:
        yield f"{amount_in_words(when.current, 'mA')}{_or_higher(when)}"
    if when.dc_residual is not None:
        yield f"with smooth DC up to {amount_in_words(when.dc_residual, 'mA')}"
    if when.dc_residual_of_rated is not None:
        yield f"with smooth DC up to {when.dc_residual_of_rated:g} × IΔn"
    for name in CIRCUIT_CHOICES:
        for word in sorted(when.only(name) or ()):
            yield WORDS.get(word, word.replace("-", " "))


def _or_higher(when: Conditions) -> str:
    """Return up to which test current a row says that it holds."""
    if when.highest is None:
        return ""
    return " or more" if when.highest == inf else f" to {amount_in_words(when.highest, 'mA')}"


def _joined(parts: Iterable[str]) -> str:
    """Return the parts as one text."""
    return ", ".join(parts)
