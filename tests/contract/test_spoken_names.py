"""No text that a person reads holds the name that a test has in a request."""

from __future__ import annotations

import re

import pytest

import checkers
from checkers.catalogue import CHECKERS
from checkers.command_line.printing import print_reply
from checkers.domain.checker import Checker
from checkers.wording.reading_names import spoken

SLUG = re.compile(r"trip-time|no-trip(?! test)")


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda one: one.slug)
def test_no_printed_reply_to_an_example_holds_a_slug(checker: Checker) -> None:
    """Every example, as the command line prints it."""
    for example in checker.examples:
        printed = print_reply(checkers.run(checker.slug, dict(example.request)))
        assert SLUG.findall(printed) == []


def test_the_command_line_calls_a_test_by_its_name() -> None:
    """Two readings of which one contradicts the other, and a trip time by itself."""
    readings = [
        {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "20 ms"},
        {"test": "trip-time", "multiple": 5, "waveform": "ac", "value": "90 ms"},
        {"test": "no-trip", "multiple": "1/2", "waveform": "ac", "value": "tripped"},
    ]
    device = {"type": "A", "rated_residual_current": "30 mA"}
    printed = print_reply(checkers.run("readings", {"device": device, "readings": readings}))

    assert "PASS: Trip time ×1 [device standard]" in printed
    assert "Trip time ×1 and trip time ×5" in printed
    assert "No-trip test ×0.5" in printed
    assert SLUG.findall(printed) == []


@pytest.mark.parametrize(
    ("about", "words"),
    [
        ("trip-time ×1 0°", "trip time ×1 0°"),
        ("ramp and trip-time ×1 0°", "ramp and trip time ×1 0°"),
        ("no-trip ×0.5 and ramp", "no-trip test ×0.5 and ramp"),
        ("a no-trip test drives", "a no-trip test drives"),
        ("in no-trip tests", "in no-trip tests"),
    ],
)
def test_a_name_is_put_in_words_wherever_it_stands(about: str, words: str) -> None:
    """At the beginning, and after another test; what is in words already stays."""
    assert words == spoken(about)
