"""A circuit's nodes solved at once, for each set of valves that may be conducting.

Nodal analysis with backward Euler companions: over one step, the source inductance and the
smoothing capacitor are each a conductance beside a current that remembers the step before. A
valve is its drop and a small resistance when it conducts, and all but nothing when it does
not, so for a given set of conducting valves the node voltages are a fixed linear map of four
currents: three lines and the capacitor.
"""

from __future__ import annotations

from dataclasses import dataclass, field

OFF_CONDUCTANCE = 1e-10  # [S] keeps a node that all valves leave alone at a voltage of its own

# One node: the constant part, and the weight of each of the four memory currents.
Row = tuple[float, float, float, float, float]


@dataclass(slots=True)
class Network:
    """The fixed part of a circuit and the solved maps of the valve states met so far.

    Nodes are numbered from 0; earth is -1. `conductance` [S] is the matrix of all that does not
    switch, `constant` [A] the current into each node from sources that never change, `entries`
    the node pairs that the four memory currents flow into and out of.
    """

    size: int
    valves: tuple[tuple[int, int], ...]
    valve_conductance: float
    valve_drop: float
    entries: tuple[tuple[int, int], ...]
    conductance: list[list[float]] = field(default_factory=list)
    constant: list[float] = field(default_factory=list)
    solved: dict[int, tuple[Row, ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.conductance = [[0.0] * self.size for _ in range(self.size)]
        self.constant = [0.0] * self.size

    def join(self, one: int, other: int, conductance: float) -> None:
        """Join two nodes with a conductance [S]."""
        add_conductance(self.conductance, one, other, conductance)

    def drive(self, into: int, out_of: int, current: float) -> None:
        """Let a constant current [A] flow into one node and out of another."""
        add_current(self.constant, into, out_of, current)

    def rows(self, state: int) -> tuple[Row, ...]:
        """Return the map of a state: bit k says whether valve k conducts.

        The last row is earth, so that node -1 is at 0 V.
        """
        found = self.solved.get(state)
        if found is None:
            found = self.solved[state] = self._solve(state)
        return found

    def _solve(self, state: int) -> tuple[Row, ...]:
        matrix = [list(row) for row in self.conductance]
        constant = list(self.constant)
        for bit, (anode, cathode) in enumerate(self.valves):
            conducts = state >> bit & 1
            conductance = self.valve_conductance if conducts else OFF_CONDUCTANCE
            add_conductance(matrix, anode, cathode, conductance)
            if conducts:
                add_current(constant, anode, cathode, self.valve_conductance * self.valve_drop)
        columns = [constant]
        for into, out_of in self.entries:
            column = [0.0] * self.size
            add_current(column, into, out_of, 1.0)
            columns.append(column)
        solution = solve(matrix, columns)
        rows = [(one[0], one[1], one[2], one[3], one[4]) for one in solution]
        return (*rows, (0.0, 0.0, 0.0, 0.0, 0.0))


def add_conductance(matrix: list[list[float]], one: int, other: int, conductance: float) -> None:
    """Add a conductance [S] between two nodes to a nodal matrix; earth is -1."""
    for here, there in ((one, other), (other, one)):
        if here >= 0:
            matrix[here][here] += conductance
            if there >= 0:
                matrix[here][there] -= conductance


def add_current(column: list[float], into: int, out_of: int, current: float) -> None:
    """Add a current [A] that enters one node and leaves another; earth is -1."""
    if into >= 0:
        column[into] += current
    if out_of >= 0:
        column[out_of] -= current


def solve(matrix: list[list[float]], columns: list[list[float]]) -> list[list[float]]:
    """Solve a square system for several right-hand sides, by elimination with pivoting.

    Inputs: the matrix as rows; the right-hand sides as columns.
    Result: one list for each unknown, holding its value for each right-hand side.
    """
    size = len(matrix)
    work = [[*row, *(column[at] for column in columns)] for at, row in enumerate(matrix)]
    for at in range(size):
        best = max(range(at, size), key=lambda row: abs(work[row][at]))
        work[at], work[best] = work[best], work[at]
        pivot = work[at][at]
        work[at] = [value / pivot for value in work[at]]
        for row in range(size):
            factor = work[row][at]
            if row != at and factor:
                work[row] = [a - factor * b for a, b in zip(work[row], work[at], strict=True)]
    return [row[size:] for row in work]
