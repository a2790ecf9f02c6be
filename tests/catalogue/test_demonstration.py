"""The demonstration: parts, what they give, the order of steps, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run

AC_DEVICE = {"type": "AC", "rated_residual_current": "30 mA"}


def ask(dc: str, volts: str, turns: object, **more: Any) -> dict[str, Any]:
    """The reply on a set-up."""
    return run("demonstration", {"dc_wanted": dc, "supply_voltage": volts, "turns": turns, **more})


def figure(reply: dict[str, Any], name: str) -> tuple[float, str]:
    """A figure of the answer with its unit."""
    return reply["answer"][name]["value"], reply["answer"][name]["unit"]


def test_50_ma_from_12_v_with_ten_turns() -> None:
    """12 V × 10 / 50 mA = 2400 ohm, 5 mA in the wire, 60 mW, so 125 mW."""
    reply = ask("50 mA", "12 V", 10)

    assert figure(reply, "resistance") == (2400.0, "ohm")
    assert figure(reply, "standard_value") == (2400.0, "ohm")
    assert figure(reply, "current") == (5.0, "mA")
    assert figure(reply, "dc_residual") == (50.0, "mA")
    assert figure(reply, "power") == (0.06, "W")
    assert figure(reply, "power_rating") == (0.125, "W")
    assert reply["outcome"] == "pass"


def test_what_the_standard_value_really_gives_is_said() -> None:
    """5 V, four turns, 60 mA want 333 ohm; 330 ohm give 60.6 mA."""
    reply = ask("60 mA", "5 V", 4)

    assert figure(reply, "standard_value") == (330.0, "ohm")
    assert figure(reply, "dc_residual") == (60.61, "mA")


def test_a_source_above_extra_low_voltage_gets_no_resistor() -> None:
    """From 61 V on nothing is worked out, so that nobody builds it."""
    for volts in ("61 V", "110 V", "230 V"):
        reply = ask("50 mA", volts, 1)
        assert reply["outcome"] == "fail"
        assert reply["answer"] == {}
    assert ask("50 mA", "60 V", 10)["outcome"] == "pass"


@pytest.mark.parametrize(
    ("dc", "volts", "turns"), [("250 mA", "24 V", 1), ("10 A", "12 V", 1), ("10 A", "0.1 V", 1)]
)
def test_an_unsafe_resistor_fails_and_gets_no_steps(dc: str, volts: str, turns: int) -> None:
    """Too hot, or so low that the leads decide: the figures are shown, the steps are not."""
    reply = ask(dc, volts, turns, device=AC_DEVICE)

    assert reply["outcome"] == "fail"
    assert "steps" not in reply["answer"]
    assert "standard_value" in reply["answer"]


@pytest.mark.parametrize(
    ("part", "field"),
    [
        ({"turns": 0}, "turns"),
        ({"turns": -3}, "turns"),
        ({"turns": 1.5}, "turns"),
        ({"turns": 5000}, "turns"),
        ({"dc_wanted": "0 mA"}, "dc_wanted"),
        ({"dc_wanted": "-50 mA"}, "dc_wanted"),
        ({"dc_wanted": ""}, "dc_wanted"),
        ({"supply_voltage": "0 V"}, "supply_voltage"),
        ({"supply_voltage": "infinity"}, "supply_voltage"),
        ({"supply_voltage": ""}, "supply_voltage"),
    ],
)
def test_bad_input_is_named_by_field(part: dict[str, Any], field: str) -> None:
    """Each wrong field is refused under its name."""
    request = {"dc_wanted": "50 mA", "supply_voltage": "12 V", "turns": 10, **part}
    reply = run("demonstration", request)

    assert reply["kind"] == "invalid"
    assert field in reply["errors"]


def test_the_readings_to_expect_show_the_blinding() -> None:
    """Without DC the device opens at its rating, with it not, and the button works all along."""
    reply = ask("50 mA", "12 V", 10, device=AC_DEVICE, own_trip_current="27 mA")
    rows = {row["test"]: row for row in reply["answer"]["expected_readings"]}

    assert rows["AC of 30 mA"] == {
        "test": "AC of 30 mA",
        "without_dc": "opens",
        "with_dc": "does not open",
    }
    assert rows["test button"]["with_dc"] == "operates"
    assert reply["findings"][-1]["about"] == "what will be seen"
    assert reply["findings"][-1]["outcome"] == "pass"


@pytest.mark.parametrize(
    ("dc", "outcome", "words"),
    [
        ("10 mA", "pass", "Nothing should change"),
        ("30 mA", "cannot-say", "may open"),
        ("100 mA", "pass", "should open on the DC alone"),
    ],
)
def test_a_type_that_senses_dc_shows_the_contrast(dc: str, outcome: str, words: str) -> None:
    """Type B is not blinded: it stays as it was, or opens on the DC."""
    device = {"type": "B", "rated_residual_current": "30 mA"}
    finding = ask(dc, "12 V", 10, device=device)["findings"][-1]

    assert finding["outcome"] == outcome
    assert words in finding["says"]


def test_too_little_dc_may_show_nothing() -> None:
    """6 mA through a type A is what it bears: the difference may not show."""
    device = {"type": "A", "rated_residual_current": "30 mA"}

    assert ask("6 mA", "12 V", 1, device=device)["findings"][-1]["outcome"] == "cannot-say"


def test_a_device_half_described_is_asked_about() -> None:
    """With a type and no rating nothing is foretold."""
    reply = ask("50 mA", "12 V", 10, device={"type": "AC"})

    assert reply["outcome"] == "cannot-say"
    assert reply["answer"]["expected_readings"] == []


def test_the_button_is_told_to_work_at_the_rated_voltage_only() -> None:
    """Its resistor draws on the poles' voltage: steps, expected readings and cautions say so."""
    reply = ask("50 mA", "12 V", 10, device=AC_DEVICE, own_trip_current="27 mA")
    answer, cautions = reply["answer"], " ".join(reply["cautions"])
    (row,) = (one for one in answer["expected_readings"] if one["test"] == "test button")

    assert "rated voltage" in row["holds"]
    assert "rated voltage only" in cautions
    for step in answer["steps"]:
        assert "button" not in step or "rated voltage" in step, step


def test_the_steps_say_how_the_residual_ac_is_made() -> None:
    """Load side of one pole to supply side of another, behind an isolating transformer."""
    steps = " ".join(ask("50 mA", "12 V", 10)["answer"]["steps"])

    assert "load side of one pole" in steps
    assert "supply side of another pole" in steps
    assert "isolating transformer" in steps


def test_a_wire_that_loads_the_core_fails() -> None:
    """150 ohm through a hundred turns are 15 milliohm seen from one: a winding that is shorted."""
    shorted = ask("1 A", "1.5 V", 100, device={"type": "AC", "rated_residual_current": "300 mA"})
    (resistor,) = (one for one in shorted["findings"] if one["about"] == "resistor")

    assert shorted["outcome"] == "fail"
    assert "second winding" in resistor["says"]
    assert resistor["limit"] == "≥ 0.5 ohm"
    assert "steps" not in shorted["answer"]
    assert ask("50 mA", "12 V", 10)["outcome"] == "pass"


def test_cautions_come_first_and_the_steps_keep_their_order() -> None:
    """Isolated rig and source before the wire, the readings without DC before those with it."""
    reply = ask("50 mA", "12 V", 10)
    cautions, steps = " ".join(reply["cautions"]), reply["answer"]["steps"]

    for words in ("isolating transformer", "extra-low voltage", "current limited", "never on an"):
        assert words in cautions
    order = ["apart from any installation", "isolating transformer", "With everything dead"]
    order += ["current limit", "Without DC", "Switch the DC on", "not for use"]
    places = [next(at for at, step in enumerate(steps) if words in step) for words in order]
    assert places == sorted(places)
