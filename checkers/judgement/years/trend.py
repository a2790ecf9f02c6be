"""A straight line through readings of many years, with how sure it is.

Sources: [1] JCGM 100:2008 (GUM), H.3, for a line by least squares; each reading counts by its
uncertainty. [2] R. T. Birge, Physical Review 40 (1932) 207: where the points scatter more than
their uncertainties say, these are widened; they are never narrowed. [3] E. C. Fieller (1954):
the interval for where a fitted line reaches a value. All from memory; the tests compare the
figures with SciPy.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import hypot, inf, sqrt

from checkers.judgement.years.student_t import coverage_factor

DAYS_A_YEAR = 365.25
SURE = 0.95


@dataclass(frozen=True, slots=True)
class Point:
    """A figure read on a day, with its expanded uncertainty (coverage factor 2), in one unit."""

    day: date
    value: float
    uncertainty: float

    @property
    def year(self) -> float:
        """The day as years."""
        return self.day.toordinal() / DAYS_A_YEAR


@dataclass(frozen=True, slots=True)
class Band:
    """A value with the interval that holds it with 95 % probability."""

    value: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Span:
    """A day with the days between which it lies with 95 % probability."""

    day: date
    earliest: date
    latest: date


@dataclass(frozen=True, slots=True)
class Trend:
    """A line: its value at the weighted mean of the years, its slope a year, and their spread.

    `spread_of_mean` and `spread_of_slope` are standard uncertainties, `scatter` that of one
    reading about the line, and `factor` the coverage factor for 95 %.
    """

    middle: float
    value: float
    slope: float
    spread_of_mean: float
    spread_of_slope: float
    scatter: float
    factor: float

    @property
    def slope_band(self) -> Band:
        """The slope [unit a year] with its interval."""
        reach = self.factor * self.spread_of_slope
        return Band(self.slope, self.slope - reach, self.slope + reach)

    @property
    def is_seen(self) -> bool:
        """Whether the slope is more than the instruments and the scatter explain."""
        return abs(self.slope) > self.factor * self.spread_of_slope

    def expected(self, day: date) -> Band:
        """Return what a reading on a day would show, with the interval it would lie in."""
        line = self.line(day)
        reach = hypot(line.high - line.value, self.factor * self.scatter)
        return Band(line.value, line.value - reach, line.value + reach)

    def line(self, day: date) -> Band:
        """Return where the line lies on a day, with its interval: no reading's own scatter."""
        away = day.toordinal() / DAYS_A_YEAR - self.middle
        value = self.value + self.slope * away
        reach = self.factor * hypot(self.spread_of_mean, self.spread_of_slope * away)
        return Band(value, value - reach, value + reach)

    def reaches(self, limit: float) -> Span | None:
        """Return when the line reaches a limit, or None where no trend is seen.

        The limit may also have been reached in the past.
        """
        if not self.is_seen:
            return None
        away = (limit - self.value) / self.slope
        first, last = self._between(limit)
        return Span(*(_day(self.middle + one) for one in (away, first, last)))

    def _between(self, limit: float) -> tuple[float, float]:
        """Return the years from the middle between which the line reaches a limit [3]."""
        gap, squared = self.value - limit, self.factor**2
        a = self.slope**2 - squared * self.spread_of_slope**2
        b = self.slope * gap
        c = gap**2 - squared * self.spread_of_mean**2
        root = sqrt(max(b**2 - a * c, 0.0))
        ends = ((-b - root) / a, (-b + root) / a)
        return min(ends), max(ends)


def trend_of(points: Sequence[Point]) -> Trend | None:
    """Return the line through points, or None for fewer than two days.

    Inputs: at least two points, their values and uncertainties in one unit.
    Assumption: the readings are independent, so that an error common to all of them, which
    moves the line but not its slope, is counted as if it did both.
    """
    if len({point.day for point in points}) < 2:
        return None
    weights = [4 / point.uncertainty**2 for point in points]
    total = sum(weights)
    middle = _mean([point.year for point in points], weights)
    value = _mean([point.value for point in points], weights)
    years = [point.year - middle for point in points]
    breadth = sum(weight * year**2 for weight, year in zip(weights, years, strict=True))
    slope = (
        sum(
            weight * year * (point.value - value)
            for weight, year, point in zip(weights, years, points, strict=True)
        )
        / breadth
    )
    off = [point.value - value - slope * year for point, year in zip(points, years, strict=True)]
    widened, freedom = _widened(off, weights)
    return Trend(
        middle=middle,
        value=value,
        slope=slope,
        spread_of_mean=widened / sqrt(total),
        spread_of_slope=widened / sqrt(breadth),
        scatter=widened * sqrt(len(points) / total),
        factor=coverage_factor(SURE, freedom),
    )


def _widened(off: Sequence[float], weights: Sequence[float]) -> tuple[float, float]:
    """Return by how much the scatter exceeds the known uncertainties, and the degrees of freedom.

    Where it does not exceed them they count as known, with no limit to the degrees of freedom.
    """
    freedom = len(off) - 2
    if freedom < 1:
        return 1.0, inf
    squares = sum(weight * one**2 for weight, one in zip(weights, off, strict=True))
    ratio = sqrt(squares / freedom)
    return (ratio, freedom) if ratio > 1 else (1.0, inf)


def normalised_difference(one: Point, other: Point) -> float:
    """Return the difference of two readings as a share of their uncertainty together.

    Above 1 it is more than the instruments explain.
    Source: [1] ISO/IEC 17043, the number En (from memory).
    """
    return abs(one.value - other.value) / hypot(one.uncertainty, other.uncertainty)


def _mean(values: Sequence[float], weights: Sequence[float]) -> float:
    return sum(weight * one for weight, one in zip(weights, values, strict=True)) / sum(weights)


def _day(year: float) -> date:
    """Return the day of a year with fraction, kept within the days a calendar has."""
    days = min(max(year * DAYS_A_YEAR, 1.0), float(date.max.toordinal()))
    return date.fromordinal(1) + timedelta(days=round(days) - 1)
