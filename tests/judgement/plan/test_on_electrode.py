"""A plan on an electrode leaves out what would put too much on metal parts."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}


def steps_of(resistance: str, **more: Any) -> list[dict[str, Any]]:
    """Return the steps of a British plan that set a current, on an electrode."""
    request = {"code": "gb", "on": "2026-11-24", "device": DEVICE, **more}
    if resistance:
        request["electrode_resistance"] = resistance
    reply = run("test-plan", request)
    assert reply["kind"] == "result", reply
    return [one for one in reply["answer"]["steps"] if one["current"]]


# Ohm's law; 50 V is the limit of IEC 60364-4-41, 25 V that of special places in several codes.
@pytest.mark.parametrize(
    ("ohms", "limit"), [(1666, "50 V"), (900, "50 V"), (900, "25 V"), (100, "50 V"), (166, "25 V")]
)
def test_what_exceeds_the_touch_voltage_is_left_out_and_nothing_else(ohms: int, limit: str) -> None:
    """Each test current times the resistance, against the voltage that may stay."""
    for step in steps_of(f"{ohms} ohm", touch_voltage_limit=limit):
        volts = ohms * step["current"]["value"] / 1000

        assert volts == pytest.approx(step["touch_voltage"]["value"], abs=0.02)
        assert step["do"].startswith("Leave it out") == (volts > float(limit.removesuffix(" V")))


def test_five_times_on_the_greatest_electrode_would_be_250_volts() -> None:
    """30 mA at 1666 ohm: the test at the rating just serves, five times the rating does not."""
    one, five = (
        next(step for step in steps_of("1666 ohm") if step["multiple"] == multiple)
        for multiple in (1, 5)
    )

    assert one["do"].startswith("Set 30 mA")
    assert "249.9 V" in five["do"]
    assert "above 50 V" in five["do"]
    assert "has not failed the device" in five["do"]


def test_smooth_dc_has_its_own_limit() -> None:
    """120 V of DC (IEC 60364-4-41): 60 mA through 1666 ohm is 100 V, and may be driven."""
    steps = steps_of("1666 ohm", device={**DEVICE, "type": "B"})
    dc = [one for one in steps if one["waveform"] == "smooth-dc" and one["current"]["value"] == 60]

    assert dc
    assert not any(one["do"].startswith("Leave it out") for one in dc)


def test_without_an_electrode_no_step_is_left_out() -> None:
    """The plan says only, among its cautions, to work it out first."""
    assert not any(one["touch_voltage"] for one in steps_of(""))
    assert not any(one["do"].startswith("Leave it out") for one in steps_of(""))


def test_a_smooth_dc_step_first_frees_what_is_upstream() -> None:
    """Nobody relies on a type AC, A or F there while the test may blind it."""
    steps = steps_of("", device={**DEVICE, "type": "B", "rated_residual_current": "300 mA"})
    for step in steps:
        said = "upstream released or switched off" in step["connect"]
        assert said == (step["waveform"] == "smooth-dc")


def test_the_clamp_of_a_plan_resolves_what_it_is_to_find() -> None:
    """A reading of 0.0 A on a coarse clamp is not written as 0."""
    reply = run("test-plan", {"device": DEVICE})
    step = next(one for one in reply["answer"]["steps"] if one["test"] == "dc-residual")

    assert "resolve 1 mA" in step["connect"]
    assert "never 0" in step["write_down"]
