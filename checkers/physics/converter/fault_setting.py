"""What a circuit is put into for an earth fault: supply, fault, smoothing, load, firing."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from checkers.physics.converter.circuits import EARTH, PARTS, Circuit, Parts


@dataclass(frozen=True, slots=True)
class Setting:
    """What is put into a circuit; None takes what the circuit itself says.

    Line voltage r.m.s. to earth [V], frequency [Hz], fault and link load resistance [ohm],
    smoothing [µF], source inductance [mH], delay angle [degree], and the place of the fault.
    """

    line_voltage: float = 230.0
    frequency: float = 50.0
    fault_resistance: float = 1000.0
    smoothing: float | None = None
    source_inductance: float | None = None
    link_load: float | None = None
    delay_angle: float | None = None
    place: str = ""
    parts: Parts = PARTS

    def place_in(self, circuit: Circuit) -> str:
        """Where in a circuit the fault is."""
        return self.place or circuit.first_place

    def smoothing_of(self, circuit: Circuit) -> float:
        """Smoothing of a circuit [µF]; none where it has no link, or one held by a boost stage."""
        if circuit.link is None or circuit.boost:
            return 0.0
        return circuit.smoothing if self.smoothing is None else self.smoothing

    def load_of(self, circuit: Circuit) -> float:
        """Load resistance of a circuit [ohm]."""
        return circuit.link_load if self.link_load is None else self.link_load

    def delay_of(self, circuit: Circuit) -> float:
        """Delay angle of a circuit's thyristors [degree]."""
        return circuit.delay_angle if self.delay_angle is None else self.delay_angle

    def charged_link_of(self, circuit: Circuit) -> float:
        """Voltage a smoothing capacitor charges to without load [V]; 0 without one."""
        if circuit.link is None or not self.smoothing_of(circuit):
            return 0.0
        to_earth = EARTH in circuit.link
        crest = self.peak if to_earth or circuit.lines == 1 else self.peak * sqrt(3.0)
        return max(crest - self.parts.valve_drop * (1 if to_earth else 2), 0.0)

    @property
    def peak(self) -> float:
        """Peak of the line voltage to earth [V]."""
        return self.line_voltage * sqrt(2.0)

    @property
    def step(self) -> float:
        """Length of a time step [s]."""
        return 1.0 / (self.frequency * self.parts.steps_per_cycle)
