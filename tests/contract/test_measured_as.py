"""Measured stands only over what was read off and typed; other figures say how they came about."""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import checkers
from checkers.catalogue import CHECKERS
from checkers.domain.checker import Checker
from checkers.domain.verdicts import MeasuredAs

NUMBER = re.compile(r"\d+(?:\.\d+)?")
PREFIXES = (1.0, 1000.0, 0.001)  # 0.028 s is 28 ms
SOURCES = Path(checkers.__file__).parent
ASKED = {"code": "gb", "device": {"type": "A", "rated_residual_current": "30 mA"}}


def replies(checker: Checker) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """Yield each example's request with its reply."""
    for example in checker.examples:
        request = dict(example.request)
        yield request, checkers.run(checker.slug, request)


def typed_numbers(request: dict[str, Any]) -> list[float]:
    """Return every number that stands in a request, a comma read as a point as well."""
    text = json.dumps(request)
    return [float(one) for one in NUMBER.findall(f"{text} {text.replace(',', '.')}")]


def is_typed(figure: str, request: dict[str, Any]) -> bool:
    """Tell whether every number of a figure was typed, in whatever unit."""
    typed = typed_numbers(request)
    return all(
        any(abs(float(one) - scale * given) < 1e-9 for given in typed for scale in PREFIXES)
        for one in NUMBER.findall(figure)
    )


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda one: one.slug)
def test_what_is_called_measured_was_typed(checker: Checker) -> None:
    """Over every example: a sum, a product or a row of a list is never called so."""
    for request, reply in replies(checker):
        for one in reply["findings"]:
            if one.get("measured_as") == MeasuredAs.MEASURED:
                assert is_typed(one["measured"], request), one


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda one: one.slug)
def test_every_figure_says_how_it_came_about(checker: Checker) -> None:
    """And none is told of where there is no figure."""
    for _, reply in replies(checker):
        for one in reply["findings"]:
            assert ("measured_as" in one) is bool(one["measured"]), one


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda one: one.slug)
def test_a_finding_about_a_reading_is_measured(checker: Checker) -> None:
    """What an instrument showed keeps its name."""
    for _, reply in replies(checker):
        for one in reply["findings"]:
            if one.get("subject") and one["measured"]:
                assert one["measured_as"] == MeasuredAs.MEASURED


def measured_as(slug: str, **request: Any) -> set[tuple[str, str]]:
    """Return the figures of a reply, each with how it came about."""
    reply = checkers.run(slug, ASKED | request)
    assert reply["kind"] == "result", reply
    return {
        (one["measured"], one["measured_as"]) for one in reply["findings"] if one.get("measured_as")
    }


def test_a_clamp_is_measured_and_a_sum_of_a_list_is_not() -> None:
    """3 × 2 mA are 6 mA by calculation (worked); 6.2 mA was read off a clamp."""
    listed = [{"count": 3, "leakage": "2 mA"}]

    assert ("6.2 mA", "measured") in measured_as("leakage-budget", measured="6.2 mA")
    found = measured_as("leakage-budget", items=listed)
    assert found
    assert {how for _, how in found} == {"calculated"}


def test_a_touch_voltage_is_calculated_from_the_measured_resistance() -> None:
    """200 ohm × 30 mA is 6 V (IEC 60364-4-41, 411.5.3): nobody measured the 6 V."""
    found = measured_as("earth-electrode", electrode_resistance="200 ohm", system="tt")

    assert ("6 V", "calculated") in found


def _makes_a_finding(called: ast.expr) -> bool:
    """Tell whether a call makes a finding: by the room of words, or through a room's own helper."""
    return isinstance(called, ast.Name) and called.id.lower().endswith("finding")


def test_no_code_tells_a_figure_without_how_it_came_about() -> None:
    """Whoever builds a finding names both, so no later one is called measured by chance."""
    calls = [
        {one.arg for one in node.keywords}
        for file in SOURCES.rglob("*.py")
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(node, ast.Call) and _makes_a_finding(node.func)
    ]

    assert len([one for one in calls if "measured" in one]) > 15
    assert [one for one in calls if "measured" in one and "measured_as" not in one] == []
