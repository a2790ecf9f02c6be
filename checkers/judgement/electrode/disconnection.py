"""How long a device may take at the current that a fault to earth really gives."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from checkers.domain.device.abilities import Ability
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row, citations
from checkers.domain.limits.tables import rows, rows_in
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.domain.sources.documents import Citation
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Numbers, Outcome
from checkers.judgement.case import Case
from checkers.judgement.electrode.electrode import Electrode
from checkers.judgement.limits.time_limits import QUARTER_AMPERE, BindingTimes, binding_times
from checkers.wording.book import part
from checkers.wording.finding import finding

UNDELAYED = "none"
SHORTEST_FROM = 5.0
CHOICE_UP_TO = 30.0
"""Rating [mA] up to which a maker may give the shortest time at 0.25 A."""


@dataclass(frozen=True, slots=True)
class EarthFault:
    """The current of a fault to earth [mA], and how long the device may take [ms] at it.

    `time` is None where no greatest time is set, and infinite where the device need not operate.
    `set_delay` is the delay it is set to, or None.
    """

    current: float
    multiple: float
    time: BindingTimes
    must_operate: bool
    set_delay: float | None

    @property
    def greatest_time(self) -> float | None:
        """The longest the device may take [ms], or None where its maker alone states it."""
        return self.known_time if self.must_operate else inf

    @property
    def known_time(self) -> float | None:
        """The longest the device may take [ms] where it must operate, or None if not known."""
        return self.time.promised.at_most if self.must_operate else None

    def surely_exceeds(self, limit: float) -> bool:
        """Tell whether the device cannot be within a limit [ms]: by its time, or its delay alone.

        Assumption: a delay that its standard fixes at twice the rating holds above it too, as
        is common practice.
        """
        if self.greatest_time is None:
            return self.set_delay is not None and self.set_delay > limit
        return self.greatest_time > limit


def earth_fault(electrode: Electrode, resistance: float) -> EarthFault | None:
    """Return the fault over a resistance [ohm], or None where the rating is not known.

    Assumption: the resistance is all there is in the fault's path. Where it is that of the
    electrode alone, the source's own electrode makes the real current smaller.
    """
    rated = electrode.rated
    if rated is None:
        return None
    current = 1000 * electrode.line_voltage / resistance
    time = surest_time(electrode.case, current)
    delay = electrode.case.device.set_delay
    return EarthFault(current, current / rated, time, current >= rated, delay)


def surest_time(case: Case, current: float) -> BindingTimes:
    """Return the greatest time at a current [mA], whichever of its options the maker chose."""
    found = rows("trip-time", on=case.day, made_to=case.made_to, waveform="ac", **case.device_asked)
    rated = case.device.rated_residual_current
    quarter = [row for row in found if row.when.only("option") == QUARTER_AMPERE]
    sure = all(current >= (row.level(rated) or 0.0) for row in quarter)
    kept = [row for row in found if sure or row.when.only("option") is None]
    return binding_times([row for row in kept if _is_sure(row, case, current)], case, current)


def _is_sure(row: Row, case: Case, current: float) -> bool:
    """Tell whether a row binds whatever a circuit-breaker's maker chose for its shortest time."""
    device = case.device
    small = (device.rated_residual_current or inf) <= CHOICE_UP_TO
    chosen = device.has(Ability.BREAKER) and small and device.delay_class == UNDELAYED
    shortest = (row.when.multiple or 0.0) >= SHORTEST_FROM
    return not (chosen and shortest) or current >= CONSTANTS["quarter_ampere_of_breakers"].value


def disconnection_row(electrode: Electrode) -> Row | None:
    """Return the code's greatest disconnection time here, or None where it has none."""
    return _row(electrode, "disconnection-time")


def row_at_rating(electrode: Electrode) -> Row | None:
    """Return the disconnection time that the code asks of a test at the rating, or None."""
    return _row(electrode, "disconnection-time-at-rating")


def _row(electrode: Electrode, purpose: str) -> Row | None:
    table = electrode.case.code.tables.get(purpose)
    if table is None:
        return None
    found = rows_in(
        table,
        on=electrode.case.day,
        system=electrode.system,
        supply="ac",
        circuit=electrode.circuit,
        voltage=electrode.line_voltage,
    )
    return found[0] if found else None


def judge_disconnection(electrode: Electrode) -> list[Finding]:
    """Return the finding on the disconnection time, where it can be asked at all."""
    row, resistance = disconnection_row(electrode), electrode.resistance
    if row is None or resistance is None or electrode.rated is None:
        return []
    limit = row.at_most()
    likely = earth_fault(electrode, resistance)
    weakest = earth_fault(electrode, resistance + electrode.uncertainty(resistance, Outcome.PASS))
    if limit is None or likely is None or weakest is None:
        return []
    return [_finding(_outcome(likely, weakest, limit), likely, limit, row)]


def _outcome(likely: EarthFault, weakest: EarthFault, limit: float) -> Outcome:
    if likely.surely_exceeds(limit):
        return Outcome.FAIL
    if likely.greatest_time is None or weakest.greatest_time is None:
        return Outcome.CANNOT_SAY
    return Outcome.PASS if weakest.greatest_time <= limit else Outcome.BORDERLINE


def _finding(outcome: Outcome, fault: EarthFault, limit: float, row: Row) -> Finding:
    time = fault.known_time
    facts = {
        "current": format_quantity(fault.current, "mA"),
        "multiple": format_number(fault.multiple),
        "limit": format_quantity(limit, "ms"),
        "time": "" if time is None else format_quantity(time, "ms"),
        "delay": "" if fault.set_delay is None else format_quantity(fault.set_delay, "ms"),
    }
    return finding(
        _code(outcome, fault),
        outcome,
        Judges.INSTALLATION_CODE,
        facts,
        measured="" if time is None else part("electrode.at-most", time=facts["time"]),
        measured_as=MeasuredAs.CALCULATED,
        limit=str(Limit("ms", at_most=limit)),
        field="electrode_resistance",
        sources=(*citations(row, *fault.time.rows), *_by_delay(outcome, fault)),
        numbers=None if time is None else Numbers("ms", time, None, time, at_most=limit),
    )


def _code(outcome: Outcome, fault: EarthFault) -> str:
    """Return what was found: by the device's time, by its delay alone, or by what is declared."""
    if not fault.must_operate:
        return "electrode.need-not-disconnect"
    if outcome is Outcome.CANNOT_SAY:
        delayed = fault.set_delay is not None
        return "electrode.delayed-time-as-declared" if delayed else "electrode.time-as-declared"
    return "electrode.delay-alone-too-long" if fault.known_time is None else _BY_TIME[outcome]


def _by_delay(outcome: Outcome, fault: EarthFault) -> tuple[Citation, ...]:
    """Return where it stands that the delay holds here, if the finding rests on it."""
    rests = outcome is Outcome.FAIL and fault.greatest_time is None
    return (CONSTANTS["delay_above_twice"].citation,) if rests else ()


_BY_TIME = {
    Outcome.PASS: "electrode.disconnects-in-time",
    Outcome.FAIL: "electrode.disconnects-too-late",
    Outcome.BORDERLINE: "electrode.may-disconnect-too-late",
}
