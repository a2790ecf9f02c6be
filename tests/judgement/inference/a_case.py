"""A case and its readings, made quickly for tests."""

from __future__ import annotations

from datetime import date

from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.placed_readings import PlacedReading
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.inputs.parsing import parse_inputs
from checkers.judgement.case import Case

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}


def case(device: dict[str, str] | None = None, circuit: dict[str, object] | None = None) -> Case:
    """Return a case of a 30 mA type A device, but for what is given."""
    return Case(
        parse_inputs(Device, DEVICE | (device or {})),
        parse_inputs(Circuit, circuit or {}),
        Instrument(),
        CODES["gb"],
        date(2026, 11, 24),
    )


def reading(test: str, value: str, **fields: object) -> PlacedReading:
    """Return a reading on AC, but for what is given."""
    return parse_inputs(PlacedReading, {"test": test, "value": value, "waveform": "ac"} | fields)


def time(value: str, multiple: float = 1, phase: str = "", **fields: object) -> PlacedReading:
    """Return a trip time."""
    return reading("trip-time", value, multiple=multiple, phase=phase, **fields)
