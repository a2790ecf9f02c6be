"""What drives a circuit step by step: line voltages, fired valves, the inverter's output leg."""

from __future__ import annotations

from math import pi, sin

from checkers.physics.converter.circuits import Circuit
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.inverter import leg_positions

Step = tuple[float, float, float, int, int]


def drive_of(circuit: Circuit, setting: Setting) -> list[Step]:
    """Return for each step the three line voltages [V], the fired valves, and the output leg."""
    parts, count = setting.parts, setting.parts.steps_per_cycle
    place = setting.place_in(circuit)
    cycles = circuit.cycles_at(place)
    switched = circuit.inverter is not None and place == "output"
    legs = leg_positions(parts, cycles) if switched else [0] * (count * cycles)
    thirds = [2.0 * pi * number / 3.0 for number in range(3)]
    steps: list[Step] = []
    for at, leg in enumerate(legs):
        angle = 2.0 * pi * (at + 1) / count
        one, two, three = (
            setting.peak * sin(angle - third) if number < circuit.lines else 0.0
            for number, third in enumerate(thirds)
        )
        steps.append((one, two, three, _fired(circuit, setting, at), leg))
    return steps


def _fired(circuit: Circuit, setting: Setting, at: int) -> int:
    """Return which valves may start to conduct in a step: every diode, and thyristors in time."""
    cycle, within = divmod(at, setting.parts.steps_per_cycle)
    angle = 360.0 * (within + 1) / setting.parts.steps_per_cycle
    delay = setting.delay_of(circuit)
    resting = circuit.burst is not None and cycle % circuit.burst[1] >= circuit.burst[0]
    mask = 0
    for bit, (anode, _) in enumerate(circuit.valves):
        since = angle if anode == "line1" else (angle + 180.0) % 360.0
        in_time = not resting and delay <= since < 180.0
        mask |= (bit >= circuit.fired or in_time) << bit
    return mask
