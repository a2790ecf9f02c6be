"""Each row of each product standard binds at its own current, whatever the test is called."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from math import inf

import pytest

from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument, Reading, Waveform
from checkers.domain.limits.conditions import Interval
from checkers.domain.limits.rows import Row, Table
from checkers.domain.limits.tables import TABLES
from checkers.domain.sources.documents import PRODUCT_STANDARD, SOURCES
from checkers.domain.verdicts import Judges, Outcome
from checkers.judgement.case import Case
from checkers.judgement.readings.any_reading import judge_reading

SURE = Instrument(time_uncertainty=0.01, current_uncertainty=0.001)
NAMES = ("trip-time", "no-trip")
USUAL = {"form": "rccb", "type": "B", "delay": "none"}
WAVEFORMS = frozenset(Waveform)


def product_rows(measures: str) -> list[tuple[Table, Row]]:
    """Return the rows of product standards that a reading can be held to."""
    return [
        (table, row)
        for table in TABLES.values()
        if table.measures == measures and SOURCES[table.document].kind == PRODUCT_STANDARD
        for row in table.rows
        if not row.when.has_dc and (row.when.only("waveform") or WAVEFORMS) & WAVEFORMS
    ]


@dataclass(frozen=True)
class Told:
    """A device that a row is about, and how it is asked about."""

    case: Case
    waveform: str

    def outcomes(self, test: str, value: str, current: float | None = None) -> set[Outcome]:
        """Return the outcomes by the device standard of one reading."""
        reading = Reading(value, test, None, current, self.waveform)
        found = (one.finding for one in judge_reading(reading, self.case))
        return {one.outcome for one in found if one.judges is Judges.DEVICE_STANDARD}


def some(interval: Interval | None, usual: float) -> float:
    """Return a value in a range, the usual one where it may be."""
    if interval is None or interval.holds(usual):
        return usual
    return interval.low * 2 if interval.high == inf else interval.high


def told(table: Table, row: Row) -> Iterator[Told]:
    """Yield a device for each waveform of a row."""
    option = row.when.only("option") or frozenset()
    if option & {"protective", "monitoring", "class-5", "class-20"}:
        return
    made_to = "" if table.assumed else SOURCES[table.document].designation
    words = {name: sorted(row.when.only(name) or {usual}) for name, usual in USUAL.items()}
    delay: str | float = words["delay"][0]
    if delay == "set":
        delay = some(row.when.ranges.get("set_delay"), 100.0)
    device = Device(
        type=words["type"][-1],
        rated_residual_current=some(row.when.ranges.get("rated_residual_current"), 30.0),
        delay=delay,
        form=words["form"][0],
        made_to=made_to + (", 0.25 A" if "quarter-ampere" in option else ""),
    )
    case = Case(device, Circuit(loads="off"), SURE, CODES["iec"], date(2026, 11, 24))
    for waveform in sorted((row.when.only("waveform") or WAVEFORMS) & WAVEFORMS - {"unknown"}):
        yield Told(case, waveform)


TIMES = product_rows("trip-time")
BANDS = product_rows("operating-current")


def name(pair: tuple[Table, Row]) -> str:
    """Return what a row is called."""
    return f"{pair[0].key}, row {pair[1].number}"


@pytest.mark.parametrize("pair", TIMES, ids=name)
@pytest.mark.parametrize("test", NAMES)
def test_a_time_is_held_to_its_row_at_its_current(pair: tuple[Table, Row], test: str) -> None:
    """A millisecond inside passes and outside fails; held for an hour fails, there and beyond."""
    table, row = pair
    for one in told(table, row):
        device = one.case.device
        current = row.level(device.rated_residual_current) or 100.0
        most = row.at_most(device.rated_residual_current, device.set_delay, current)
        least = row.at_least(device.rated_residual_current, device.set_delay)
        for at in (current, 1.01 * current):
            assert one.outcomes(test, "no trip", at) == {Outcome.FAIL}, one
            if most is not None:
                assert one.outcomes(test, f"{most + 1} ms", at) == {Outcome.FAIL}, one
        if most is not None:
            assert one.outcomes(test, f"{most - 1} ms", current) == {Outcome.PASS}, one
        if least is not None:
            for at in (current, 0.99 * current):
                assert one.outcomes(test, f"{least - 1} ms", at) == {Outcome.FAIL}, one


@pytest.mark.parametrize("pair", BANDS, ids=name)
def test_a_current_is_held_to_its_band(pair: tuple[Table, Row]) -> None:
    """Below it the device holds, at its end it has tripped: on a rise, and when set at once."""
    table, row = pair
    for one in told(table, row):
        rated = one.case.device.rated_residual_current
        least, most = row.at_least(rated), row.at_most(rated)
        assert most is not None
        assert one.outcomes("ramp", f"{most - 0.01:.4f} mA") == {Outcome.PASS}, one
        assert one.outcomes("ramp", f"{most + 0.01:.4f} mA") == {Outcome.FAIL}, one
        assert one.outcomes("ramp", "no trip") == {Outcome.FAIL}, one
        for test in NAMES:
            assert one.outcomes(test, "no trip", most) == {Outcome.FAIL}, one
            if least is not None:
                assert one.outcomes("ramp", f"{least - 0.01:.4f} mA") == {Outcome.FAIL}, one
                assert one.outcomes(test, "no trip", least) == {Outcome.PASS}, one
                assert one.outcomes(test, "tripped", least) == {Outcome.FAIL}, one


def test_hardly_any_row_is_left_out() -> None:
    """Left out are only rows whose kind of device no input names."""
    assert sum(1 for pair in TIMES if list(told(*pair))) == len(TIMES)
    assert sum(1 for pair in BANDS if list(told(*pair))) >= len(BANDS) - 10
