"""Readings taken once more, as before or with the loads off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from checkers.domain.quantities.measured_value import Said
from checkers.judgement.inference.next_step.step import NextStep, binned
from checkers.judgement.inference.weighing.attempts import Noted

MOST = 4  # of the readings, the last ones, are offered again
SHORTER, LONGER = 0.75, 1.33
FIGURE_WORDS = (
    "it is lower by a quarter or more",
    "it is about the same",
    "it is higher by a third or more, or there is no trip",
)
TRIP_WORDS = ("it trips this time", "it does not trip")


def repeats(noted: Sequence[Noted]) -> tuple[NextStep, ...]:
    """Return the readings of a device that can be taken again, each test once."""
    distinct = {one.attempt: one for one in noted if not one.attempt.is_button}
    again = list(distinct.values())[-MOST:]
    unloaded = [one for one in again if one.attempt.loads != "off"]
    return (
        *(_again(one, "as before", one.attempt.loads) for one in again),
        *(_again(one, "loads off", "off") for one in unloaded),
    )


def _again(noted: Noted, how: str, loads: str) -> NextStep:
    attempt = replace(noted.attempt, first=False, loads=loads)
    words = f"repeat {noted.name}, {how}"
    if noted.measured.said is not Said.FIGURE:
        end = attempt.current if attempt.is_ramp else attempt.window
        return NextStep(words, TRIP_WORDS, binned(attempt, (end,)), attempt)
    edges = (SHORTER * noted.measured.value, LONGER * noted.measured.value)
    return NextStep(words, FIGURE_WORDS, binned(attempt, edges), attempt)
