"""Readings that say where they were taken and with which loads; a circuit that says its supply."""

from __future__ import annotations

from dataclasses import dataclass

from checkers.domain.device.readings import Circuit, Reading
from checkers.domain.inputs.fields import choice

PLACES = (
    ("device", "at the device, outgoing conductors off"),
    ("board", "at the board, circuits connected"),
    ("point", "at a socket-outlet or other point"),
    ("unknown", "not known"),
)
SUPPLIES = (
    ("public", "public network"),
    ("own", "inverter or generator on its own"),
    ("unknown", "not known"),
)
LOADS = (("on", "connected"), ("off", "disconnected"), ("as-circuit", "as said of the circuit"))


@dataclass(frozen=True, slots=True)
class PlacedReading(Reading):
    """One reading, with its place and its loads where they differ from the circuit's."""

    place: str = choice(PLACES, "Place", default="unknown", advanced=True)
    loads: str = choice(LOADS, "Loads", default="as-circuit", advanced=True)


@dataclass(frozen=True, slots=True)
class SuppliedCircuit(Circuit):
    """The circuit during the test, with what supplied it."""

    supply: str = choice(
        SUPPLIES,
        "Supply during the test",
        default="unknown",
        advanced=True,
        explain="A source that runs on its own may be without a bond from neutral to earth.",
    )
