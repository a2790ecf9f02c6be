"""The current that a planned test drives, and the limit that its reading must meet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from checkers.domain.device.readings import Reading, Test
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row, citations
from checkers.domain.limits.tables import rows, rows_in
from checkers.domain.limits.words import WORDS
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.sources.documents import Citation, cite
from checkers.domain.sources.judging import JUDGING
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import band_of, operating_band
from checkers.judgement.limits.demands import Must, demand_at
from checkers.judgement.limits.test_current import level_of
from checkers.judgement.limits.time_limits import (
    QUARTER_AMPERE,
    BindingTimes,
    binding_times,
    product_times,
)
from checkers.judgement.plan.planned_tests import PlannedTest
from checkers.wording.book import part

FIVE_TIMES = 5.0
KINDS = frozenset({"type-I", "not-type-I", "type-II"})
ALARM_SOURCE = cite("iec-62020-1", "response of monitors", "memory")


@dataclass(frozen=True, slots=True)
class PlannedLimit:
    """A limit in words, with its sources and the figures behind it; empty where none is known."""

    words: str = ""
    sources: tuple[Citation, ...] = ()
    limits: tuple[Limit, ...] = ()


NO_LIMIT = PlannedLimit()


def as_reading(test: PlannedTest) -> Reading:
    """Return a planned test as the reading it will give, with nothing measured yet."""
    return Reading(
        test=test.test, multiple=test.multiple, current=test.current, waveform=test.waveform
    )


def current_of(test: PlannedTest, case: Case) -> float | None:
    """Return the current to set [mA], or None where the rating is needed and not known.

    Where the maker declares the shortest time at a quarter of an ampere, that current
    stands in place of five times the rating.
    """
    row = quarter_row(test, case)
    if row is not None and case.device.quarter_ampere:
        return row.when.current
    level = level_of(as_reading(test), case)
    return None if level is None else level.current


def risen_to(test: PlannedTest, case: Case) -> float | None:
    """Return the current [mA] by which a device must have operated in a ramp, if it is known."""
    if case.only_warns:
        return case.device.rated_residual_current
    band = operating_band(case, test.waveform)
    return None if band is None else band.at_most


def quarter_row(test: PlannedTest, case: Case) -> Row | None:
    """Return the row for a maker's choice of a quarter ampere, where the test is the other."""
    rated = case.device.rated_residual_current
    if rated is None or test.test != Test.TRIP_TIME or test.multiple != FIVE_TIMES:
        return None
    found = rows(
        "trip-time", on=case.day, made_to=case.made_to, waveform=test.waveform, **case.device_asked
    )
    return next((row for row in found if row.when.only("option") == QUARTER_AMPERE), None)


def limit_of(test: PlannedTest, case: Case) -> PlannedLimit:
    """Return the limit of a planned test in words: of the code, of the device standard, or both."""
    if case.only_warns and test.test == Test.RAMP:
        return PlannedLimit(part("plan.alarm"), (ALARM_SOURCE,))
    return {
        Test.NO_TRIP: _no_trip,
        Test.TRIP_TIME: _trip_time,
        Test.RAMP: _ramp,
    }.get(Test(test.test), _button)(test, case)


def _button(test: PlannedTest, case: Case) -> PlannedLimit:
    del test, case
    return PlannedLimit(part("plan.operates"))


def _no_trip(test: PlannedTest, case: Case) -> PlannedLimit:
    current = current_of(test, case)
    if current is None or demand_at(case, test.waveform, current).must is not Must.HOLD:
        return NO_LIMIT
    band = operating_band(case, test.waveform)
    lasting = (test.lasting or JUDGING.no_trip_lasts) / 1000
    sources = band.sources if band else ()
    words = part("plan.no-trip-within", time=format_quantity(lasting, "s"))
    return PlannedLimit(words, sources)


def _trip_time(test: PlannedTest, case: Case) -> PlannedLimit:
    current = current_of(test, case)
    if current is None:
        return NO_LIMIT
    product = product_times(case, test.waveform, current)
    by_code, by_product = _code_time(test, case, current), _decisive(product)
    words = _both(by_code.words, " ".join(map(str, by_product)))
    sources = tuple(dict.fromkeys((*by_code.sources, *citations(*product.rows))))
    return PlannedLimit(words, sources, (*by_code.limits, *by_product))


def _code_time(test: PlannedTest, case: Case, current: float) -> PlannedLimit:
    """Return the code's own limit, in words for each kind of device that it tells apart."""
    if not test.limits:
        return NO_LIMIT
    asked = case.device_asked | {"waveform": test.waveform}
    found = rows_in(test.limits, on=case.day, **asked)
    kinds = sorted({word for row in found for word in row.when.only("option") or ()} & KINDS)
    if not kinds:
        times = binding_times(found, case, current)
        limits = _decisive(times)
        return PlannedLimit(" ".join(map(str, limits)), citations(*times.rows), limits)
    return _by_kind(
        {
            one: binding_times(
                rows_in(test.limits, on=case.day, option=one, **asked), case, current
            )
            for one in kinds
        }
    )


def _by_kind(times: Mapping[str, BindingTimes]) -> PlannedLimit:
    """Return the limit of each kind of device for which one is known, by its kind."""
    known = [(kind, limit) for kind, one in times.items() for limit in _decisive(one)]
    words = ", ".join(part("plan.if-of-kind", limit=one, kind=WORDS[kind]) for kind, one in known)
    limits = tuple(limit for _, limit in known)
    return PlannedLimit(words, citations(*(row for one in limits for row in one.rows)), limits)


def _decisive(times: BindingTimes) -> tuple[Limit, ...]:
    """Return the limit that a time is held to, or none where none decides both ways."""
    return (times.promised,) if times.decides and times.promised.is_set else ()


def _both(by_code: str, by_product: str) -> str:
    if by_code and by_product and by_code != by_product:
        return part("plan.both-limits", by_code=by_code, by_product=by_product)
    return by_code or by_product


def _ramp(test: PlannedTest, case: Case) -> PlannedLimit:
    product = operating_band(case, test.waveform)
    asked = case.device_asked | {"waveform": test.waveform}
    code = rows_in(test.limits, on=case.day, **asked) if test.limits else ()
    by_code = tuple(band_of(row, case) for row in code[:1])
    by_product = (product,) if product else ()
    bands = (*by_code, *by_product)
    words = _both(" ".join(map(str, by_code)), " ".join(map(str, by_product)))
    return PlannedLimit(words, citations(*(row for band in bands for row in band.rows)), bands)
