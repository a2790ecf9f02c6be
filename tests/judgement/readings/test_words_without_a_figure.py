"""A word that tells of a test button never stands for a figure: no pass and no failure by it."""

from __future__ import annotations

from itertools import product
from typing import Any

import pytest

from checkers import run
from checkers.domain.limits.limit import Limit
from checkers.domain.quantities.measured_value import WORDS, Said, parse_measured
from checkers.domain.verdicts import Outcome
from checkers.judgement.limits.comparison import compare

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
ABOUT_A_BUTTON = sorted(WORDS[Said.OPERATES] | WORDS[Said.DOES_NOT_OPERATE])
TIMED: list[dict[str, Any]] = [
    {"test": "trip-time", "multiple": 1, "waveform": "ac"},
    {"test": "trip-time", "multiple": 5, "waveform": "half-wave"},
    {"test": "no-trip", "multiple": "1/2", "waveform": "ac"},
    {"test": "ramp", "waveform": "ac"},
    {"test": "unknown"},
]
CASES = list(product(TIMED, ABOUT_A_BUTTON))


@pytest.mark.parametrize(("test", "word"), CASES, ids=[f"{t['test']} {w}" for t, w in CASES])
def test_a_word_of_the_button_decides_nothing_elsewhere(test: dict[str, Any], word: str) -> None:
    """“ok” in the place of a time is asked about, “fail” likewise."""
    reply = run("readings", {"code": "gb", "device": DEVICE, "readings": [{**test, "value": word}]})

    assert reply["outcome"] == "cannot-say", reply["findings"]


@pytest.mark.parametrize("said", [one for one in Said if WORDS.get(one)])
def test_a_word_compared_with_a_limit_decides_nothing(said: Said) -> None:
    """Whatever word reaches a comparison, it has no value to compare."""
    word = parse_measured(min(WORDS[said]), "trip_time")

    for limit in (Limit("ms", at_most=300.0), Limit("ms", at_least=10.0)):
        assert compare(word, limit, 30.0, 0.95).outcome is Outcome.CANNOT_SAY
