"""A current of mixed frequencies, held line by line against what a device is declared to trip at.

The test with a composite current is made of mains and switching frequency in like parts. Where
the mains part is smaller, that limit says nothing: what is sure is only that a device trips once
one line alone reaches the limit that the product standard sets at its frequency.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from checkers.domain.device.device import Device
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows
from checkers.domain.quantities.quantity import format_quantity
from checkers.physics.converter.circuits import BOOK, Circuit
from checkers.physics.converter.fault_study import FaultStudy
from checkers.wording.book import part

CARRIER_LINES = (1, 2, 3)  # multiples of the switching frequency that are listed
TABLED = {"ac-150-hz": 150.0, "ac-400-hz": 400.0, "ac-1000-hz": 1000.0}


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the spectrum [Hz, mA r.m.s.], with the row of the limit at its frequency."""

    frequency: float
    current: float
    row: Row | None = None
    limit: float | None = None

    @property
    def is_enough(self) -> bool:
        """Whether this line alone is sure to trip a sound device."""
        return self.limit is not None and self.current >= self.limit


def as_tested(fault: FaultStudy, switching: float | None) -> bool:
    """Tell whether a composite current is like the one that the standard tests with.

    Inputs: the fault; the switching frequency [Hz], or None for the one simulated. It has as
    much at the mains, and does not switch faster.
    """
    bounds = BOOK.bounds
    slow = switching is None or switching <= bounds.composite_switching
    return slow and fault.figures.mains() >= bounds.composite_mains_share * fault.figures.rms


def lines_of(circuit: Circuit, fault: FaultStudy, switching: float | None) -> Mapping[float, float]:
    """Return r.m.s. [mA] by frequency [Hz] of a fault current.

    Inputs: the circuit; the fault; the switching frequency [Hz], or None for the one simulated.
    Assumption: through a resistive fault the switching part is as large at any frequency.
    """
    figures, ratio = fault.figures, BOOK.parts.carrier_ratio
    if not (circuit.inverter and fault.place == "output"):
        return dict(figures.spectrum)
    mains = fault.trace.frequency
    simulated = ratio * mains
    moved = (switching or simulated) - simulated
    from_here = BOOK.bounds.switching_from * mains
    found = {
        round(frequency + (moved if frequency >= from_here else 0.0), 6): current
        for frequency, current in figures.spectrum.items()
    }
    carrier = switching or simulated
    return found | {round(carrier * one, 6): figures.line(ratio * one) for one in CARRIER_LINES}


def limited_lines(
    lines: Mapping[float, float], mains: float, composite: Row, device: Device, day: date
) -> Sequence[Line]:
    """Return the lines with the limit at each frequency: that of the next tabled one above.

    Inputs: the lines; the mains frequency [Hz]; the row of the composite test, which limits the
    mains part; the device; the day. Below the mains and above the last row no limit is known.
    """
    rated = device.rated_residual_current
    tabled = [(mains, composite), *_tabled_rows(device, day)]
    found = []
    for frequency, current in sorted(lines.items()):
        above = [row for at, row in tabled if mains <= frequency <= at]
        row = above[0] if above else None
        found.append(Line(frequency, current, row, row.at_most(rated) if row else None))
    return found


def _tabled_rows(device: Device, day: date) -> list[tuple[float, Row]]:
    found = []
    for waveform, frequency in TABLED.items():
        rows_there = rows(
            "operating-current",
            on=day,
            made_to=device.product_standard,
            form=device.form,
            type=device.type,
            rated=device.rated_residual_current,
            waveform=waveform,
        )
        found += [(frequency, row) for row in rows_there[:1]]
    return found


def words_of(lines: Sequence[Line], least: float) -> str:
    """Return the lines that matter, each with what it would take.

    Inputs: the lines; from which current [mA] on one matters.
    """
    return "; ".join(_line_words(one) for one in lines if one.current >= least)


def _line_words(line: Line) -> str:
    return part(
        "equipment.line-without-limit" if line.limit is None else "equipment.line-with-limit",
        current=format_quantity(line.current, "mA", 3),
        frequency=format_quantity(line.frequency, "Hz"),
        limit="" if line.limit is None else format_quantity(line.limit, "mA"),
    )
