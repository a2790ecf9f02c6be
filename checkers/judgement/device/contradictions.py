"""Readings of one device that cannot all be true of a device left alone."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import product

from checkers.domain.device.readings import Reading, Test
from checkers.domain.quantities.measured_value import Said
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.judging import JUDGING
from checkers.domain.verdicts import Finding, Judges, MeasuredAs, Outcome
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.limits.time_bounds import TOLERANCE
from checkers.wording.book import part
from checkers.wording.finding import NO_FACTS, finding
from checkers.wording.reading_names import name_of

RANGE_ENDED = (Said.MORE_THAN, Said.NO_TRIP)
TRIPPED = (Said.FIGURE, Said.LESS_THAN, Said.TRIPPED)
AT_CURRENT = (Test.TRIP_TIME, Test.NO_TRIP)


def contradictions(readings: Sequence[Reading], case: Case) -> list[Finding]:
    """Return a finding for every pair of readings that contradict each other."""
    pairs = [(a, b) for a, b in product(readings, readings) if a.waveform == b.waveform]
    found = (
        _slower_at_more(a, b, case) or _ramp_against_time(a, b, case) or _not_alike(a, b, case)
        for a, b in pairs
    )
    return [*(one for one in found if one is not None), *_no_trip_against_ramp(readings, case)]


def _slower_at_more(low: Reading, high: Reading, case: Case) -> Finding | None:
    """Find a time that is longer at the greater of two currents, on the same start phase."""
    if not (_is_time(low) and _is_time(high)) or low.phase != high.phase:
        return None
    below, above = level_of(low, case), level_of(high, case)
    if below is None or above is None or above.current <= below.current:
        return None
    longer = high.measured.value - low.measured.value
    if longer <= JUDGING.slower_at_more_current:
        return None
    facts = {"longer": format_quantity(longer, "ms")}
    return _contradiction("slower-at-more-current", low, high, facts)


def _not_alike(one: Reading, other: Reading, case: Case) -> Finding | None:
    """Find a trip at a current, and a device that held at that current or more."""
    if one.test not in AT_CURRENT or other.test not in AT_CURRENT or _two_starts(one, other):
        return None
    tripped, held = level_of(one, case), level_of(other, case)
    if tripped is None or held is None or held.current < tripped.current * (1 - TOLERANCE):
        return None
    if not _time_says_held(other, case) or not _held_longer(one, other):
        return None
    same = name_of(one) == name_of(other)
    return _contradiction("tripped-and-held" if same else "held-at-more", one, other)


def _two_starts(one: Reading, other: Reading) -> bool:
    """Tell whether two tests began at two different points, so that each may be as it is."""
    return bool(one.phase and other.phase) and one.phase != other.phase


def _held_longer(one: Reading, other: Reading) -> bool:
    """Tell whether a device held for longer than it took to trip in another test."""
    trip, hold = one.measured, other.measured
    if hold.said is Said.NO_TRIP:
        return trip.said in TRIPPED
    return trip.said in (Said.FIGURE, Said.LESS_THAN) and hold.value > trip.value


def _is_time(reading: Reading) -> bool:
    measured = reading.measured
    return reading.test == Test.TRIP_TIME and measured.said is Said.FIGURE and measured.unit == "ms"


def _ramp_against_time(ramp: Reading, time: Reading, case: Case) -> Finding | None:
    """Find a device that trips at a current on the ramp, and not when that is applied at once.

    The current set and the current read are both uncertain, hence twice the uncertainty.
    """
    if ramp.test != Test.RAMP or time.test not in AT_CURRENT:
        return None
    level, current = level_of(time, case), ramp.measured
    if level is None or current.unit != "mA":
        return None
    near = 2 * case.usual_current_uncertainty(case.device.rated_residual_current or level.current)
    if _time_says_held(time, case) and _at_most(ramp, level.current - near):
        return _contradiction("ramp-below-a-hold", ramp, time)
    if _is_time(time) and _more_than(ramp, level.current + near):
        return _contradiction("ramp-above-a-trip", ramp, time)
    return None


def _time_says_held(time: Reading, case: Case) -> bool:
    return time.measured.said in RANGE_ENDED and not case.circuit.seen_to_open


def _at_most(ramp: Reading, current: float) -> bool:
    return ramp.measured.said in (Said.FIGURE, Said.LESS_THAN) and ramp.measured.value <= current


def _more_than(ramp: Reading, current: float) -> bool:
    return ramp.measured.said in (Said.FIGURE, Said.MORE_THAN) and ramp.measured.value >= current


def _no_trip_against_ramp(readings: Iterable[Reading], case: Case) -> list[Finding]:
    """Find a device that trips in the no-trip test though its ramp is well above it."""
    listed = list(readings)
    tripped = [
        one
        for one in listed
        if one.test == Test.NO_TRIP and one.measured.said in (Said.TRIPPED, Said.FIGURE)
    ]
    ramps = [one for one in listed if one.test == Test.RAMP and one.measured.unit == "mA"]
    return [
        _tripped_below_ramp(held, ramp, case)
        for held, ramp in product(tripped, ramps)
        if held.waveform == ramp.waveform and _above_no_trip(held, ramp, case)
    ]


def _above_no_trip(held: Reading, ramp: Reading, case: Case) -> bool:
    level, rated = level_of(held, case), case.device.rated_residual_current
    if level is None or rated is None:
        return False
    return _more_than(ramp, level.current + case.usual_current_uncertainty(rated))


def _tripped_below_ramp(held: Reading, ramp: Reading, case: Case) -> Finding:
    band = operating_band(case, ramp.waveform)
    found = _contradiction("no-trip-below-ramp", held, ramp)
    return replace(found, sources=band.sources if band else ())


def _contradiction(
    code: str, one: Reading, other: Reading, facts: Mapping[str, object] = NO_FACTS
) -> Finding:
    names = {"one": name_of(one), "other": name_of(other)}
    same = names["one"] == names["other"]
    return finding(
        f"device.{code}",
        Outcome.CANNOT_SAY,
        Judges.DEVICE_STANDARD,
        facts,
        about=part("device.twice" if same else "device.two-tests", **names),
        measured=f"{one.measured} and {other.measured}",
        measured_as=MeasuredAs.MEASURED,
    )
