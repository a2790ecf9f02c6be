"""What the steps named 1 and 5 drive, by waveform, form and rating."""

from __future__ import annotations

from typing import Any

import pytest

from checkers.domain.errors import DataError
from checkers.domain.limits.instrument_steps import STEPS, load_steps

STEP: dict[str, Any] = {
    "when": {"waveform": ["half-wave"]},
    "factor": 1.4,
    "document": "iec-61008-1",
    "clause": "here",
    "evidence": "memory",
    "note": "Made up.",
}


@pytest.mark.parametrize(
    ("waveform", "form", "rated", "factor"),
    [
        ("ac", "rccb", 30.0, 1.0),
        ("half-wave", "rccb", 30.0, 1.4),
        ("half-wave-90", "cbr", 100.0, 1.4),
        ("half-wave-135", "socket", 10.01, 1.4),
        ("half-wave", "rcbo", 10.0, 2.0),
        ("half-wave", "modular", 6.0, 2.0),
        ("smooth-dc", "rccb", 30.0, 2.0),
        ("smooth-dc", "rdc-dd", 6.0, 1.0),
    ],
)
def test_a_named_step_drives_what_the_trade_makes_it_drive(
    waveform: str, form: str, rated: float, factor: float
) -> None:
    """1.4 times on half waves, twice up to 10 mA and on smooth DC (IEC 61008-1, IEC 62423)."""
    assert STEPS.factor(waveform, form, rated) == factor


def test_one_and_five_are_the_names() -> None:
    """Any other multiple is a current (common practice)."""
    assert {1.0, 5.0} == STEPS.named


@pytest.mark.parametrize(
    "wrong",
    [
        {key: value for key, value in STEP.items() if key != "factor"},
        {**STEP, "document": "of-nobody"},
        {**STEP, "evidence": "hearsay"},
        {**STEP, "colour": "red"},
    ],
    ids=["no factor", "a document not known", "an evidence word not known", "a key not known"],
)
def test_a_step_that_is_not_whole_is_refused(wrong: dict[str, Any]) -> None:
    """The file is named in the complaint."""
    with pytest.raises(DataError, match="here"):
        load_steps({"named": ["1"], "step": [wrong]}, "here")
