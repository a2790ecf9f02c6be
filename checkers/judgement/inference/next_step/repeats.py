"""Readings taken once more, as before or with the loads off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from checkers.domain.quantities.measured_value import Said
from checkers.judgement.inference.next_step.step import NextStep, binned
from checkers.judgement.inference.weighing.attempts import Noted
from checkers.wording.book import part

MOST = 4  # of the readings, the last ones, are offered again
SHORTER, LONGER = 0.75, 1.33
OF_A_FIGURE = ("inference.lower", "inference.same", "inference.higher")
OF_A_TRIP = ("inference.trips-this-time", "inference.does-not-trip")


def repeats(noted: Sequence[Noted]) -> tuple[NextStep, ...]:
    """Return the readings of a device that can be taken again, each test once."""
    distinct = {one.attempt: one for one in noted if not one.attempt.is_button}
    again = list(distinct.values())[-MOST:]
    unloaded = [one for one in again if one.attempt.loads != "off"]
    return (
        *(_again(one, "inference.repeat-as-before", one.attempt.loads) for one in again),
        *(_again(one, "inference.repeat-loads-off", "off") for one in unloaded),
    )


def _again(noted: Noted, code: str, loads: str) -> NextStep:
    attempt = replace(noted.attempt, first=False, loads=loads)
    words = part(code, name=noted.name)
    if noted.measured.said is not Said.FIGURE:
        end = attempt.current if attempt.is_ramp else attempt.window
        return NextStep(words, _outcomes(OF_A_TRIP), binned(attempt, (end,)), attempt)
    edges = (SHORTER * noted.measured.value, LONGER * noted.measured.value)
    return NextStep(words, _outcomes(OF_A_FIGURE), binned(attempt, edges), attempt)


def _outcomes(codes: Sequence[str]) -> tuple[str, ...]:
    return tuple(map(part, codes))
