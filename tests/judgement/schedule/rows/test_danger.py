"""The order of danger goes by what was found, never by how it is said."""

from __future__ import annotations

from dataclasses import replace

import pytest

from checkers.catalogue.schedule import Inputs, schedule_for
from checkers.domain.inputs.parsing import parse_inputs
from checkers.judgement.schedule.rows import danger
from checkers.judgement.schedule.rows.danger import WorstFirst, danger_of
from checkers.judgement.schedule.rows.row import NEEDS_A_PERSON, Row

HEAD = "RCD no.,Type,IΔn,Form,Delay,x1 (ms),x2 (ms),Ramp (mA),No trip x0.5,x0.2 (ms),button\n"
ROWS = {
    "never trips": "A,30 mA,rcbo,,>300,,,,,",
    "no trip on the ramp": "A,30 mA,rcbo,,,,no trip,,,",
    "three times too late": "A,30 mA,rcbo,,900,,,,,",
    "just too late": "A,30 mA,rcbo,,400,,,,,",
    "needs thrice the largest rating": "A,1000 mA,rcbo,,,,3 A,,,",
    "dead button": "A,30 mA,rcbo,,,,,,,no",
    "trips at a third of the largest": "A,1000 mA,rcbo,,,,300 mA,,,",
    "S trips at once": "A,100 mA,rcbo,S,20,,,,,",
    "trips in the no-trip test": "A,30 mA,rcbo,,,,,20 ms,,",
    "trips at a fifth": "A,30 mA,rcbo,,,,,,35 ms,",
}
KINDS = {
    "never trips": danger.DID_NOT_TRIP,
    "no trip on the ramp": danger.DID_NOT_TRIP,
    "three times too late": danger.TOO_LATE,
    "just too late": danger.TOO_LATE,
    "needs thrice the largest rating": danger.TOO_LATE,
    "dead button": danger.BUTTON,
    "trips at a third of the largest": danger.TOO_EASILY,
    "S trips at once": danger.TOO_EASILY,
    "trips in the no-trip test": danger.TOO_EASILY,
    "trips at a fifth": danger.TOO_EASILY,
}


def _rows() -> dict[str, Row]:
    text = HEAD + "".join(f"{name},{cells}\n" for name, cells in ROWS.items())
    request = {"code": "iec", "on": "2026-11-24", "text": text}
    schedule = schedule_for(parse_inputs(Inputs, request))
    judged = [*schedule.feed(text), *schedule.finish()]
    return {row.device: row for row in judged if row.device in ROWS}


@pytest.mark.parametrize("name", ROWS)
def test_each_failure_is_told_by_its_kind(name: str) -> None:
    """IEC 61008-1: 300 ms at the rating, 130 ms to 500 ms for S, 0.5 IΔn to IΔn on the ramp."""
    row = _rows()[name]

    assert row.outcome == "fail"
    assert danger_of(row)[1] == KINDS[name]


def test_the_later_of_two_comes_first() -> None:
    """900 ms before 400 ms, whatever line they stand on."""
    rows = _rows()
    worst = WorstFirst()
    for name in ("just too late", "three times too late"):
        worst.add(rows[name])

    assert [row.device for row in worst.rows] == ["three times too late", "just too late"]


def test_a_row_counts_by_its_worst_figure() -> None:
    """A device 1.3 and 3 times too late is 3 times too late."""
    rows = _rows()
    both = replace(
        rows["just too late"],
        findings=(*rows["just too late"].findings, *rows["three times too late"].findings),
    )

    assert danger_of(both)[2] == danger_of(rows["three times too late"])[2]


def test_no_word_of_a_finding_changes_the_order() -> None:
    """Every text of every finding may be said otherwise."""
    for row in _rows().values():
        if row.outcome in NEEDS_A_PERSON:
            reworded = tuple(
                replace(one, about="x", says="x", measured="x", limit="x", do_next="x")
                for one in row.findings
            )
            assert danger_of(replace(row, findings=reworded)) == danger_of(row)
