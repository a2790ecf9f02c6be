"""The AC trip current of a device while smooth DC flows through it, in mA."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from checkers.domain.device.device import SENSES_SMOOTH_DC
from checkers.physics.core.dc_sensing import DcOpening, trip_while_sensing_dc
from checkers.physics.core.parameters import CORE, CoreData, Scatter
from checkers.physics.core.primary_current import Shape, rms_of
from checkers.physics.core.trip_band import TripBand
from checkers.physics.core.trip_under_bias import peak_to_trip, peaks_to_trip

# Smooth DC at which a curve is drawn, in multiples of the typical own trip current.
DRAWN_AT = (0.0, 0.15, 0.35, 0.7, 1.1, 1.8, 3.0, 5.0, 8.0, 12.0, 25.0, 60.0, 150.0, 400.0)


@dataclass(frozen=True, slots=True)
class CurvePoint:
    """A smooth DC [mA], and the AC trip current with it [mA r.m.s.]."""

    dc_residual: float
    trip: TripBand


def trip_current(
    data: CoreData,
    own: float,
    dc: float,
    shape: Shape = Shape.SINE,
    rated: float | None = None,
) -> float:
    """Return the trip current [mA r.m.s. of the alternating part] of a device with one core.

    Inputs: what is assumed of the core; the own trip current without DC [mA r.m.s., sine]; the
    smooth DC [mA]; the shape of the alternating part; the rating [mA], where it is known.
    Infinity where no current would do.
    """
    unit = sqrt(2.0) * own
    return rms_of(shape, unit * peak_to_trip(data.scaled(own, rated), dc / unit, shape))


def trip_band(
    device_type: str,
    own: TripBand,
    dc: float,
    opening: DcOpening | None = None,
    rated: float | None = None,
) -> TripBand:
    """Return the AC trip current of a device of a type while smooth DC flows through it.

    Inputs: the type, a known one; its own trip current without DC [mA]; the smooth DC [mA];
    where the DC alone opens a type that senses it (needed for those types only); the rating
    [mA], where it is known. Result: the band holds whatever still passes the type test.
    Assumes that a core is as large for its rating as any other of its type: see sensing_core.
    """
    if device_type in SENSES_SMOOTH_DC:
        return trip_while_sensing_dc(own, dc, _known(device_type, opening))
    trips = []
    for current, scatter in _combinations(own):
        core = _core(device_type, scatter)
        trips.append(core.harmed(current, trip_current(core, current, dc, rated=rated)))
    return TripBand(trips[0], min(trips), max(trips))


def trip_curve(
    device_type: str,
    own: TripBand,
    reach: float,
    opening: DcOpening | None = None,
    rated: float | None = None,
) -> tuple[CurvePoint, ...]:
    """Return the curve of trip current against smooth DC, to just beyond `reach` [mA]."""
    currents = _drawn_currents(own.typical, reach)
    if device_type in SENSES_SMOOTH_DC:
        return _curve_while_sensing_dc(device_type, own, currents, _known(device_type, opening))
    columns = [
        _column(_core(device_type, scatter), current, currents, rated)
        for current, scatter in _combinations(own)
    ]
    rows = zip(*columns, strict=True)
    return tuple(
        CurvePoint(dc, TripBand(row[0], min(row), max(row)))
        for dc, row in zip(currents, rows, strict=True)
    )


def _drawn_currents(own: float, reach: float) -> list[float]:
    """Return the smooth DC at which to draw [mA], the last one at or beyond the reach."""
    currents = [multiple * own for multiple in DRAWN_AT]
    needed = sum(dc < reach for dc in currents) + 1
    return currents[:needed]


def _combinations(own: TripBand) -> list[tuple[float, Scatter]]:
    """Return every own trip current with every core that can bound the band, typical first."""
    bounds = dict.fromkeys((own.low, own.high))
    ends = (Scatter.LEAST_HARMED, Scatter.MOST_HARMED)
    return [(own.typical, Scatter.TYPICAL), *((one, core) for one in bounds for core in ends)]


def _column(
    data: CoreData, own: float, currents: Sequence[float], rated: float | None
) -> list[float]:
    """Return the trip current [mA] of one core at each smooth DC [mA]."""
    unit = sqrt(2.0) * own
    biases = tuple(round(dc / unit, 6) for dc in currents)
    peaks = peaks_to_trip(data.scaled(own, rated), biases)
    return [data.harmed(own, peak * own) for peak in peaks]


def _curve_while_sensing_dc(
    device_type: str, own: TripBand, currents: Sequence[float], opening: DcOpening
) -> tuple[CurvePoint, ...]:
    """Return the curve of a type that senses DC, ended where the DC alone must open it."""
    inside = [dc for dc in currents if dc < opening.must_at]
    edges = (opening.may_from, opening.must_at * (1.0 - 1e-9), opening.must_at)
    return tuple(
        CurvePoint(dc, trip_band(device_type, own, dc, opening)) for dc in sorted({*inside, *edges})
    )


def _core(device_type: str, scatter: Scatter) -> CoreData:
    return CORE.cores[device_type, scatter]


def _known(device_type: str, opening: DcOpening | None) -> DcOpening:
    if opening is None:
        raise ValueError(f"type {device_type}: where smooth DC opens it is needed")
    return opening
