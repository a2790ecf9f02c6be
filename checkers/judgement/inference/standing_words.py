"""How it is said that a device fails, that something is open, that nothing explains a reading."""

from __future__ import annotations

from collections.abc import Iterable

from checkers.judgement.inference.standing import Standing

NOT_EXPLAINED = "Not explained"
LEAVES_OPEN = (
    "It fails its limit, and no cause considered here accounts for it. That it is strange is no "
    "reason to trust the device."
)
REPEAT_THEN_REPLACE = (
    "Repeat it, and write down what was set. If it fails again, then replace the device; until "
    "then the device is out of service."
)
OUT_OF_SERVICE = (
    "Take the circuit out of use until the cause is found and the test is passed, or the device "
    "is replaced."
)
MOST = 4  # names that are listed


def failing_words(standing: Standing) -> str:
    """Return what fails, as sentences with a space behind them; nothing where nothing does."""
    said = ""
    if standing.failing:
        said += f"It fails: {listed(standing.failing)}. "
    if standing.dc_fails:
        said += "More smooth DC was measured than its type withstands. "
    return said


def what_is_open(standing: Standing) -> str:
    """Return what is to be settled and tested before a device in order may stay."""
    settle = f"Still open: {listed(standing.open)}. Settle that first. " if standing.open else ""
    todo = f"Still to do: {listed(standing.missing)}. " if standing.missing else ""
    return f"{settle}{todo}Only then leave it in service; record the readings."


def listed(names: Iterable[str]) -> str:
    """Return some names in a row, and that there are more."""
    every = list(names)
    more = f" and {len(every) - MOST} more" if len(every) > MOST else ""
    return "; ".join(every[:MOST]) + more
