"""A circuit made ready to be stepped through time: its networks and step constants."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from checkers.physics.converter.circuits import EARTH, OUTPUT_NODE, Circuit
from checkers.physics.converter.fault_setting import Setting
from checkers.physics.converter.network import Network


@dataclass(frozen=True, slots=True)
class Bench:
    """A circuit made ready: its networks (output leg low and high) and step constants."""

    networks: tuple[Network, ...]
    nodes: dict[str, int]
    link: tuple[int, int]
    fault: int
    line_conductance: tuple[float, float, float]
    inductance_step: float
    smoothing_step: float


def make_bench(circuit: Circuit, setting: Setting) -> Bench:
    """Return the bench of a circuit with a fault put in."""
    parts, place = setting.parts, setting.place_in(circuit)
    nodes = _numbered(circuit, place)
    inductance = setting.source_inductance
    inductance = parts.source_inductance if inductance is None else inductance
    inductance_step = 1e-3 * inductance / setting.step
    conductance = 1.0 / (parts.line_resistance + inductance_step)
    lines = [conductance if number < circuit.lines else 0.0 for number in range(3)]
    legs = (1, 0) if OUTPUT_NODE in nodes else (0,)
    link = circuit.link or (EARTH, EARTH)
    smoothing_step = 1e-6 * setting.smoothing_of(circuit) / setting.step
    bench = Bench(
        networks=tuple(_network(circuit, setting, nodes) for _ in legs),
        nodes=nodes,
        link=(nodes[link[0]], nodes[link[1]]),
        fault=nodes[circuit.places[place]],
        line_conductance=(lines[0], lines[1], lines[2]),
        inductance_step=inductance_step,
        smoothing_step=smoothing_step,
    )
    for leg, network in zip(legs, bench.networks, strict=True):
        _join_parts(network, bench, setting)
        if circuit.inverter and OUTPUT_NODE in nodes:
            supply = nodes[circuit.inverter[leg]]
            network.join(nodes[OUTPUT_NODE], supply, 1.0 / parts.valve_resistance)
    return bench


def _numbered(circuit: Circuit, place: str) -> dict[str, int]:
    """Number the nodes, lines first; the output only counts where the fault is there."""
    names = [f"line{number}" for number in range(1, circuit.lines + 1)]
    names += [node for pair in circuit.valves for node in pair]
    names += circuit.boost[0] if circuit.boost else ()
    names += [circuit.places[place]]
    inner = [name for name in dict.fromkeys(names) if name != EARTH]
    return {EARTH: -1} | {name: number for number, name in enumerate(inner)}


def _network(circuit: Circuit, setting: Setting, nodes: dict[str, int]) -> Network:
    """Return the network of a circuit's valves, load and raised link."""
    lines = [number if number < circuit.lines else -1 for number in range(3)]
    link = circuit.link or (EARTH, EARTH)
    network = Network(
        size=len(nodes) - 1,
        valves=tuple((nodes[anode], nodes[cathode]) for anode, cathode in circuit.valves),
        valve_conductance=1.0 / setting.parts.valve_resistance,
        valve_drop=setting.parts.valve_drop,
        entries=(*((line, -1) for line in lines), (nodes[link[0]], nodes[link[1]])),
    )
    network.join(nodes[circuit.load[0]], nodes[circuit.load[1]], 1.0 / setting.load_of(circuit))
    if circuit.boost:
        (low, high), ratio = circuit.boost
        stiff, volts = network.valve_conductance, ratio * sqrt(3.0) * setting.peak
        network.join(nodes[high], nodes[low], stiff)
        network.drive(nodes[high], nodes[low], stiff * volts)
    return network


def _join_parts(network: Network, bench: Bench, setting: Setting) -> None:
    """Join the lines, the capacitor and the fault to a network."""
    for line, conductance in enumerate(bench.line_conductance):
        if conductance:
            network.join(line, -1, conductance)
    network.join(*bench.link, bench.smoothing_step)
    network.join(bench.fault, -1, 1.0 / setting.fault_resistance)
