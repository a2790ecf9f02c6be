"""The earth-fault current of a converter circuit, stepped through time to its steady state.

The neutral is earthed and taken as free of resistance; lines are a sine behind resistance and
inductance [1]. The step is backward Euler: it cannot ring when a valve opens, at the price
that a true ringing of 500 Hz shows some two per cent too low. The link starts at the peak it
charges to, so that it settles within a few cycles.

[1] IEC TR 60725 gives the reference impedance of the public supply (from memory).
"""

from __future__ import annotations

from dataclasses import dataclass

from checkers.physics.converter.circuits import Circuit
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.mains import Step, drive_of
from checkers.physics.converter.solver import Bench, make_bench

MOST_SETTLING_CYCLES = 40
SETTLED = 1e-3  # change of the link voltage over a cycle, in line peaks
MOST_TRIES = 20  # of valve states in one step


@dataclass(frozen=True, slots=True)
class Trace:
    """A fault current at even steps over whole mains cycles [mA], and how it was made."""

    currents: tuple[float, ...]
    cycles: int
    frequency: float

    @property
    def per_cycle(self) -> int:
        """Steps in one mains cycle."""
        return len(self.currents) // self.cycles

    @property
    def step(self) -> float:
        """Length of a step [ms]."""
        return 1000.0 / (self.frequency * self.per_cycle)


@dataclass(slots=True)
class _Memory:
    """What a step leaves to the next: line currents [A], link voltage [V], valve state."""

    line1: float = 0.0
    line2: float = 0.0
    line3: float = 0.0
    link: float = 0.0
    state: int = 0


def simulate(circuit: Circuit, setting: Setting) -> Trace:
    """Return the steady-state current to earth at a fault, over whole cycles.

    Inputs: a circuit, and the setting [units there]. Result: currents [mA], positive towards
    earth, for as many mains cycles as the circuit needs to repeat itself.
    Assumes one fault, an earthed neutral without resistance, and ideal firing.
    """
    bench = make_bench(circuit, setting)
    drive = drive_of(circuit, setting)
    cycle = drive[: setting.parts.steps_per_cycle]
    memory = _Memory(link=setting.charged_link_of(circuit))
    for _ in range(MOST_SETTLING_CYCLES):
        before = memory.link
        _march(bench, memory, cycle)
        if abs(memory.link - before) < SETTLED * setting.peak:
            break
    volts = _march(bench, memory, drive)
    scale = 1000.0 / setting.fault_resistance
    cycles = circuit.cycles_at(setting.place_in(circuit))
    return Trace(tuple(scale * value for value in volts), cycles, setting.frequency)


def _march(bench: Bench, memory: _Memory, drive: list[Step]) -> list[float]:
    """Step a circuit on, and return the voltage of the fault's node after each step [V].

    One flat loop, because it is the only slow part of the package.
    """
    g1, g2, g3 = bench.line_conductance
    keep, smooth = bench.inductance_step, bench.smoothing_step
    plus, minus = bench.link
    i1, i2, i3, link, state = memory.line1, memory.line2, memory.line3, memory.link, memory.state
    line2, line3 = (1 if g2 else -1), (2 if g3 else -1)
    valves = [(1 << bit, *pair) for bit, pair in enumerate(bench.networks[0].valves)]
    drop = bench.networks[0].valve_drop
    solved = [network.solved for network in bench.networks]
    volts = []
    for e1, e2, e3, fired, leg in drive:
        s1, s2, s3 = e1 + keep * i1, e2 + keep * i2, e3 + keep * i3
        j1, j2, j3, j4 = g1 * s1, g2 * s2, g3 * s3, smooth * link
        allowed = fired | state
        for _ in range(MOST_TRIES):
            rows = solved[leg].get(state) or bench.networks[leg].rows(state)
            v = [k + a * j1 + b * j2 + c * j3 + d * j4 for k, a, b, c, d in rows]
            wanted = 0
            for bit, anode, cathode in valves:
                if v[anode] - v[cathode] > drop:
                    wanted |= bit
            wanted &= allowed
            if wanted == state:
                break
            state = wanted
        i1, i2, i3 = g1 * (s1 - v[0]), g2 * (s2 - v[line2]), g3 * (s3 - v[line3])
        link = v[plus] - v[minus]
        volts.append(v[bench.fault])
    memory.line1, memory.line2, memory.line3 = i1, i2, i3
    memory.link, memory.state = link, state
    return volts
