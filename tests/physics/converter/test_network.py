"""The nodal solver, against circuits that are solved by hand."""

from __future__ import annotations

import pytest

from checkers.physics.converter.network import Network, solve


def test_a_system_of_equations_is_solved() -> None:
    """Two equations in two unknowns come out as by hand: 3x + y = 9 and x + 2y = 8."""
    solution = solve([[3.0, 1.0], [1.0, 2.0]], [[9.0, 8.0]])

    assert [row[0] for row in solution] == pytest.approx([2.0, 3.0])


def test_a_zero_on_the_diagonal_is_no_hindrance() -> None:
    """Rows are exchanged where the first has nothing in the column: y = 5 and x = 7."""
    solution = solve([[0.0, 1.0], [1.0, 0.0]], [[5.0, 7.0]])

    assert [row[0] for row in solution] == pytest.approx([7.0, 5.0])


def test_a_divider_divides() -> None:
    """A current into 1 ohm to earth and 3 ohm through a second node splits by conductance."""
    network = Network(2, (), 1.0, 0.0, ((0, -1), (-1, -1), (-1, -1), (-1, -1)))
    network.join(0, -1, 1.0)
    network.join(0, 1, 0.5)
    network.join(1, -1, 1.0)

    upper, lower, earth = network.rows(0)

    assert upper[1] == pytest.approx(0.75)  # 1 ohm beside 2 + 1 ohm
    assert lower[1] == pytest.approx(0.25)
    assert earth == (0.0, 0.0, 0.0, 0.0, 0.0)


def test_a_conducting_valve_keeps_its_drop() -> None:
    """A constant 10 A into 1 ohm beside a valve of 0.7 V and 0.01 ohm: solved by hand."""
    network = Network(1, ((0, -1),), 100.0, 0.7, ((-1, -1),) * 4)
    network.join(0, -1, 1.0)
    network.drive(0, -1, 10.0)

    voltage = network.rows(1)[0][0]

    assert voltage == pytest.approx((10.0 + 70.0) / 101.0)
    assert network.rows(0)[0][0] == pytest.approx(10.0)
