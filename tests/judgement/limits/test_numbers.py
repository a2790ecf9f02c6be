"""The numbers beside a finding's words say the same as the words."""

from __future__ import annotations

import re
from typing import Any

import pytest

import checkers
from checkers.catalogue import CHECKERS
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import parse_measured
from checkers.judgement.limits.numbers import figure_numbers, reading_numbers

UNIT = r"\s(?P<unit>ms|s|mA|A|V|W|ohm)\b"
FIGURE = re.compile(rf"(?P<sign>[<>]\s|up to |at most |about )?(?P<value>\d[\d.]*).*?{UNIT}")
IN_PLAIN_UNIT = {"s": (1000.0, "ms"), "A": (1000.0, "mA")}
AT_MOST = re.compile(rf"≤ (?P<high>[\d.]+){UNIT}")
AT_LEAST = re.compile(rf"≥ (?P<low>[\d.]+){UNIT}")
BETWEEN = re.compile(
    rf"(?P<low>[\d.]+){UNIT.replace('unit', 'unit_of_low')} to (?P<high>[\d.]+){UNIT}"
)


def every_finding() -> list[Any]:
    """Every finding of every example, with a name for the test."""
    replies = [
        (f"{checker.slug}: {example.title}", checkers.run(checker.slug, dict(example.request)))
        for checker in CHECKERS
        for example in checker.examples
    ]
    return [
        pytest.param(finding, id=f"{name}: {finding['about']}, {finding['judges']}")
        for name, reply in replies
        for finding in reply["findings"]
    ]


def ends(limit: str) -> dict[str, Any] | None:
    """Read the ends of a limit from its words; None where it is not in figures alone."""
    for pattern in (AT_MOST, AT_LEAST, BETWEEN):
        if match := pattern.fullmatch(limit):
            words = match.groupdict()
            factor, unit = plain(words["unit"])
            of_low, _ = plain(words.get("unit_of_low") or words["unit"])
            low, high = words.get("low"), words.get("high")
            return {
                "unit": unit,
                "at_least": None if low is None else float(low) * of_low,
                "at_most": None if high is None else float(high) * factor,
            }
    return None


def plain(unit: str) -> tuple[float, str]:
    """Return the factor to, and the name of, the unit that numbers come in."""
    return IN_PLAIN_UNIT.get(unit, (1.0, unit))


def open_ended(numbers: dict[str, Any]) -> bool:
    """Tell whether the true value may lie anywhere on one side."""
    return numbers["least"] is None or numbers["most"] is None


def last_digit(figure: str) -> float:
    """Return what one step of a figure's last digit is worth."""
    _, point, decimals = figure.partition(".")
    return 10.0 ** -len(decimals) if point else 1.0


@pytest.mark.parametrize("finding", every_finding())
def test_numbers_agree_with_the_words(finding: dict[str, Any]) -> None:
    """A limit in figures and a reading in figures come as the same numbers, or as none at all."""
    said, numbers = ends(finding["limit"]), finding.get("numbers")
    shown = list(FIGURE.finditer(finding["measured"]))
    if said is None or not shown:
        assert numbers is None
        return

    assert numbers is not None
    assert said == pytest.approx({key: numbers[key] for key in said})
    figure = next(one for one in shown if plain(one["unit"])[1] == numbers["unit"])
    factor, _ = plain(figure["unit"])
    step = last_digit(figure["value"]) * factor
    assert float(figure["value"]) * factor == pytest.approx(numbers["value"], abs=step)
    sign = figure["sign"] or ""
    assert (sign in {"> ", "up to ", "at most ", "< "}) == open_ended(numbers) or not sign


@pytest.mark.parametrize("finding", every_finding())
def test_numbers_hold_together(finding: dict[str, Any]) -> None:
    """The value lies in its span, the limits are in order, and a sure outcome fits both."""
    numbers = finding.get("numbers")
    if numbers is None:
        return
    value, least, most = numbers["value"], numbers["least"], numbers["most"]
    low, high = numbers["at_least"], numbers["at_most"]

    assert low is not None or high is not None
    assert low is None or high is None or low < high
    if value is None:
        assert (least, most) == (None, None)
        return
    assert least is None or least <= value
    assert most is None or value <= most
    inside = (low is None or value >= low) and (high is None or value <= high)
    assert finding["outcome"] != "pass" or inside
    assert finding["outcome"] != "fail" or not inside or open_ended(numbers)


@pytest.mark.parametrize(
    ("typed", "value", "least", "most"),
    [
        ("28 ms", 28.0, 18.0, 38.0),
        ("4 ms", 4.0, 0.0, 14.0),
        ("> 300 ms", 300.0, 300.0, None),
        ("< 10 ms", 10.0, None, 10.0),
        ("no trip", None, None, None),
    ],
)
def test_a_bound_is_open_on_its_far_side(
    typed: str, value: float | None, least: float | None, most: float | None
) -> None:
    """A figure spans its uncertainty, a bound is open, and no trip has no value."""
    numbers = reading_numbers(
        parse_measured(typed, "trip_time"), Limit("ms", at_most=300.0), uncertainty=10.0
    )

    assert numbers is not None
    assert (value, least, most) == (numbers.value, numbers.least, numbers.most)


@pytest.mark.parametrize("typed", ["operates", "test not completed", "27 mA"])
def test_what_cannot_be_placed_has_no_numbers(typed: str) -> None:
    """A word, an aborted test and a figure in another unit are not put on a scale."""
    measured = parse_measured(typed, "trip_time")

    assert reading_numbers(measured, Limit("ms", at_most=300.0), 10.0) is None


def test_a_figure_without_a_spread_is_its_own_span() -> None:
    """What is not measured, such as a rating, has no uncertainty."""
    numbers = figure_numbers(30.0, Limit("mA", at_most=30.0))

    assert (numbers.value, numbers.least, numbers.most) == (30.0, 30.0, 30.0)
