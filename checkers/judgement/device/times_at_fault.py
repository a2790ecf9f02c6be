"""Times on AC beside the current of a fault in TT: which of them tells how long it may last."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from checkers.domain.device.readings import Reading, Waveform
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.quantities.measured_value import Said
from checkers.domain.verdicts import Judges, Outcome, worst
from checkers.judgement.case import Case
from checkers.judgement.electrode.disconnection import UNDELAYED, disconnection_row, earth_fault
from checkers.judgement.electrode.electrode import Electrode
from checkers.judgement.electrode.line_voltage import usual_line_voltage
from checkers.judgement.limits.against_limits import compare_with
from checkers.judgement.limits.demands import Must
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.readings.guards import stopped, stopped_at
from checkers.judgement.readings.time_verdict import as_time

LEAST_FAULT = 2.0
"""Times the rating: an electrode that keeps within 50 V gives more than this at 230 V."""
WITHOUT_DELAY = frozenset({UNDELAYED, "G"})


@dataclass(frozen=True, slots=True)
class Timed:
    """A time at a current [mA], and how it stands against the disconnection time."""

    reading: Reading
    current: float
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class Fault:
    """The current of a fault [mA]: the likely one, and with the resistance's uncertainty."""

    weakest: float
    likely: float
    strongest: float


def in_tt(case: Case, circuit: str = "final") -> Electrode:
    """Return the electrode of a case, as one of a TT system."""
    return Electrode(
        case=case,
        resistance=case.circuit.electrode_resistance,
        stated_uncertainty=None,
        system="tt",
        circuit=circuit,
        line_voltage=usual_line_voltage(case.code.key),
        wanted_limit=None,
        in_the_cold=False,
    )


def is_delayed(case: Case) -> bool:
    """Tell whether the device may be one for a distribution circuit: it has a delay."""
    return case.device.delay_class not in WITHOUT_DELAY


def times_on_ac(readings: Sequence[Reading], case: Case, row: Row) -> list[Timed]:
    """Return the times on AC that nothing stops, each against a disconnection time."""
    found = []
    for reading in readings:
        level = level_of(reading, case)
        doubted = stopped(reading, case) or stopped_at(Must.TRIP, reading, case)
        figure = reading.measured.is_number or reading.measured.said is Said.NO_TRIP
        if level and figure and not doubted and reading.waveform == Waveform.AC:
            outcome = outcome_by(reading, case, row)
            found.append(Timed(reading, level.current, outcome))
    return found


def outcome_by(reading: Reading, case: Case, row: Row) -> Outcome:
    """Return how a time stands against a disconnection time, by itself."""
    return compare_with(longest_time(row), as_time(reading.measured), case).outcome


def longest_time(row: Row) -> Limit:
    """Return a disconnection time as the limit that a reading is compared with."""
    limit = row.at_most() or inf
    return Limit("ms", at_most=limit, rows=(row,), judges=Judges.INSTALLATION_CODE)


def depends_on_the_circuit(timed: Timed, case: Case) -> bool:
    """Tell whether a delayed device is too slow for a final circuit, and not for another."""
    rated = case.device.rated_residual_current or 0.0
    longest = disconnection_row(in_tt(case, "distribution"))
    late = timed.outcome is not Outcome.PASS and timed.current >= LEAST_FAULT * rated
    if not (late and is_delayed(case)) or longest is None:
        return False
    return outcome_by(timed.reading, case, longest) is not Outcome.FAIL


def fault_of(case: Case) -> Fault | None:
    """Return the current of a fault, or None where electrode or rating is not known."""
    electrode = in_tt(case)
    resistance = electrode.resistance
    if resistance is None:
        return None
    more = electrode.uncertainty(resistance, Outcome.PASS)
    less = electrode.uncertainty(resistance, Outcome.FAIL)
    over = (resistance + more, resistance, resistance - less)
    found = [earth_fault(electrode, one) for one in over]
    currents = [one.current for one in found if one is not None]
    return Fault(*currents) if currents else None


def worst_of(timed: Sequence[Timed]) -> Timed | None:
    """Return the time with the worst outcome, or None of none."""
    bad = worst(one.outcome for one in timed) if timed else None
    return next((one for one in timed if one.outcome is bad), None)


def at_fault(timed: Sequence[Timed], fault: Fault, rated: float) -> Timed | None:
    """Return the time that tells most of a fault, with what it tells; None where that is nothing.

    What is too slow at no less than the fault's current fails; what is quick enough at no more
    passes. A time near the rating that is not quick enough tells nothing of a greater current.
    """
    late = worst_of([_above(one, fault) for one in timed if one.current >= fault.likely])
    if late is not None and late.outcome in (Outcome.FAIL, Outcome.BORDERLINE):
        return late
    must_trip = [one for one in timed if one.current >= rated]
    near = _nearest(must_trip, fault.likely)
    if near is not None and near.outcome is Outcome.PASS:
        sure = _nearest(must_trip, fault.weakest)
        proven = sure is not None and sure.outcome is Outcome.PASS
        return sure if proven else _with(near, Outcome.BORDERLINE)
    least = LEAST_FAULT * rated
    if near is not None and near.current >= least and near.outcome is Outcome.BORDERLINE:
        return near
    told = [one for one in timed if one.current >= min(least, fault.likely)]
    shown = near or worst_of(told)
    further = bool(told) or fault.likely < least
    return _with(shown, Outcome.CANNOT_SAY) if further and shown is not None else None


def _above(one: Timed, fault: Fault) -> Timed:
    sure = one.current >= fault.strongest or one.outcome is not Outcome.FAIL
    return one if sure else _with(one, Outcome.BORDERLINE)


def _nearest(timed: Sequence[Timed], current: float) -> Timed | None:
    """Return the worst of the times at the greatest current that is no more than one [mA]."""
    below = [one for one in timed if one.current <= current]
    nearest = max((one.current for one in below), default=0.0)
    return worst_of([one for one in below if one.current == nearest])


def _with(one: Timed, outcome: Outcome) -> Timed:
    return dataclasses.replace(one, outcome=outcome)
