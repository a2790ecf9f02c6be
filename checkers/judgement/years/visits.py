"""Readings of one device from several visits, put into series that can be compared."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import MISSING, dataclass
from datetime import date
from math import hypot

from checkers.domain.device.readings import Reading, Test
from checkers.domain.inputs.fields import day
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import SHOWS_NOTHING, Said
from checkers.domain.sources.judging import JUDGING
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.limits.time_limits import product_times
from checkers.judgement.readings.installation_tests import installation_band, installation_limits
from checkers.judgement.years.trend import Point
from checkers.physics.scatter import SCATTER
from checkers.wording.reading_names import name_of

COVERAGE = 2.0
CURRENT_REPEATS = SCATTER.trip_current_repeats.typical
TIME_REPEATS = SCATTER.time_repeats.typical
UNITS = {Test.TRIP_TIME.value: "ms", Test.RAMP.value: "mA"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit(Reading):
    """A reading with the day on which it was taken."""

    on: date = day("Day", default=MISSING, explain="The day of the reading.")


@dataclass(frozen=True, slots=True)
class Series:
    """Readings of one test in one way, oldest first, and the limit they are held to today.

    `by_figures` are the points as an instrument without any error would have read them.
    """

    visits: tuple[Visit, ...]
    points: tuple[Point, ...]
    by_figures: tuple[Point, ...]
    limit: Limit

    @property
    def unit(self) -> str:
        """The unit of the readings, empty where the test gives no figure."""
        return self.limit.unit

    @property
    def name(self) -> str:
        """What the readings are called."""
        return name_of(self.latest)

    @property
    def way(self) -> tuple[object, ...]:
        """How the test was made: which, at what level, with which waveform and start."""
        return _way(self.latest)

    @property
    def latest(self) -> Visit:
        """The newest reading."""
        return self.visits[-1]


def series_of(visits: Iterable[Visit], case: Case) -> list[Series]:
    """Return the readings by test, level, waveform and start, each oldest first."""
    groups: dict[tuple[object, ...], list[Visit]] = {}
    for visit in sorted(visits, key=lambda one: one.on):
        groups.setdefault(_way(visit), []).append(visit)
    return [_series(group, case) for group in groups.values()]


def _way(visit: Visit) -> tuple[object, ...]:
    return visit.test, visit.multiple, visit.current, visit.waveform, visit.phase


def last_days(visits: Sequence[Visit]) -> dict[str, date]:
    """Return the last day on which each kind of test gave a result."""
    found: dict[str, date] = {}
    for visit in sorted(visits, key=lambda one: one.on):
        if visit.measured.said not in SHOWS_NOTHING:
            found[visit.test] = visit.on
    return found


def _series(visits: Sequence[Visit], case: Case) -> Series:
    limit = _limit(visits[-1], case)
    figures = [visit for visit in visits if _is_figure(visit, limit.unit)]
    points = tuple(_point(visit, _instrument(visit, limit, case)) for visit in figures)
    by_figures = tuple(_point(visit, 0.0) for visit in figures)
    return Series(tuple(visits), points, by_figures, limit)


def _is_figure(visit: Visit, unit: str) -> bool:
    """Tell whether a reading is a figure in its own unit: a bound cannot lie on a line."""
    return bool(unit) and visit.measured.said is Said.FIGURE and visit.measured.unit == unit


def _point(visit: Visit, instrument: float) -> Point:
    """Return a reading with the uncertainty of its instrument and of the device together."""
    return Point(visit.on, visit.measured.value, hypot(instrument, _repeats(visit)))


def _instrument(visit: Visit, limit: Limit, case: Case) -> float:
    """Return the instrument's expanded uncertainty, of the limit where it is not known."""
    reference = limit.at_most or visit.measured.value
    if visit.test == Test.RAMP:
        return case.current_uncertainty(case.device.rated_residual_current or reference)
    return case.time_uncertainty(reference)


def _repeats(visit: Visit) -> float:
    """Return by how much the device itself may differ: it does not repeat itself exactly.

    A time whose start is not given may be later by the wait for the useful half cycle.
    """
    if visit.test == Test.RAMP:
        return COVERAGE * CURRENT_REPEATS * visit.measured.value
    own = COVERAGE * TIME_REPEATS
    return own if visit.phase else hypot(own, JUDGING.slower_at_more_current)


def _limit(visit: Visit, case: Case) -> Limit:
    """Return the tighter of the limits of the device standard and of the code."""
    found = _times(visit, case) if visit.test == Test.TRIP_TIME else _bands(visit, case)
    at_most = [one.at_most for one in found if one.at_most is not None]
    at_least = [one.at_least for one in found if one.at_least is not None]
    unit = UNITS.get(visit.test, "")
    return Limit(unit, max(at_least, default=None), min(at_most, default=None))


def _times(visit: Visit, case: Case) -> list[Limit]:
    level = level_of(visit, case)
    if level is None:
        return []
    product = product_times(case, visit.waveform, level.current)
    return [one.promised for one in (product, *installation_limits(visit, case, level))]


def _bands(visit: Visit, case: Case) -> list[Limit]:
    if visit.test != Test.RAMP:
        return []
    bands = (operating_band(case, visit.waveform), installation_band(visit, case))
    return [band for band in bands if band is not None]
