"""A reply in text says each thing once, in the words of the pages."""

from __future__ import annotations

import pytest

from checkers import run
from checkers.catalogue.series import TWO_CHARGE_POINTS
from checkers.command_line.printing import headline, print_reply

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}


@pytest.fixture(scope="module")
def series() -> str:
    """Two devices side by side below a third, with spaces closed up."""
    return " ".join(print_reply(run("series", TWO_CHARGE_POINTS.request)).split())


def test_a_device_is_named_once_in_the_head_of_its_finding(series: str) -> None:
    """Where what is judged tells the device already, it does not stand in front as well."""
    assert "FAIL: smooth DC through main [" in series
    assert "PASS: left before main [" in series
    assert "PASS: left: a device of its own for point 1 [" in series


def test_a_name_that_only_looks_like_a_word_of_it_still_stands_in_front() -> None:
    """A device called a is told apart from the word."""
    device = {"id": "a", **DEVICE}
    loads = [{"below": "a", "load": "ev-charge-point", "dc_protection": "rdc-dd"}]
    text = print_reply(run("series", {"devices": [device], "loads": loads}))

    assert "PASS: a: a device of its own" in text


def test_a_current_is_written_in_one_way(series: str) -> None:
    """Amperes from 1 A on, in the sentences and in the figures."""
    assert "fault current 5 A" in series
    assert "5000" not in series


def test_a_plan_is_headed_as_a_plan() -> None:
    """It judges nothing; with a gap in it, the gap is what cannot be said."""
    plan = run("test-plan", {"code": "gb", "device": DEVICE})
    gap = run("test-plan", {"code": "gb", "device": {"type": "A"}})

    assert headline(plan) == "PLAN"
    assert print_reply(plan).startswith("PLAN ")
    assert "CANNOT SAY" not in print_reply(plan)
    assert headline(gap) == "CANNOT SAY"
