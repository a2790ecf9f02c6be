"""The fault-waveform checker: its answer, its verdicts and its refusals."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run


def asked(**request: Any) -> dict[str, Any]:
    """The reply to a request."""
    return run("fault-waveform", request)


def test_the_answer_holds_everything_the_contract_names() -> None:
    """Average, r.m.s., peak, ripple, low interval, class, type and points."""
    answer = asked(circuit="six-pulse", fault_resistance="1 kohm")["answer"]

    assert set(answer) >= {
        "average",
        "rms",
        "peak",
        "ripple",
        "longest_low_interval",
        "class",
        "type",
        "points",
    }
    assert answer["type"] == "B"
    assert answer["average"]["unit"] == "mA"
    assert answer["ripple"] == {"value": pytest.approx(18.3, abs=0.1), "unit": "%"}
    assert all(len(point) == 2 for point in answer["points"])


def size(**request: Any) -> dict[str, Any]:
    """The finding on the size of a fault, with a 30 mA device of type B but for what is given."""
    device = {"type": "B", "rated_residual_current": "30 mA"}
    reply = asked(**{"device": device, **request})
    return next(one for one in reply["findings"] if one["about"] == "size of this fault")


@pytest.mark.parametrize("resistance", ["5 kohm", "2 kohm", "1 kohm"])
def test_a_drive_s_output_without_a_mains_part_proves_no_trip(resistance: str) -> None:
    """IEC 62423: a 30 mA type B may need 420 mA at 1 kHz and 72 mA at 150 Hz (memory, secondary).

    Through 5 kohm flow 45.7 mA at 1 kHz, 11.4 mA at 10 Hz and 9.6 mA at 150 Hz.
    """
    found = size(circuit="six-pulse-inverter", fault_resistance=resistance)

    assert found["outcome"] == "cannot-say"
    assert "it may need 420 mA" in found["says"]
    assert "it may need 72 mA" in found["says"]
    assert "at 10 Hz, where no limit is known" in found["says"]


def test_one_line_that_reaches_its_limit_trips_a_sound_device() -> None:
    """Through 500 ohm 456 mA flow at 1 kHz: more than 14 times the rating."""
    assert size(circuit="six-pulse-inverter", fault_resistance="500 ohm")["outcome"] == "pass"


def test_above_1_khz_no_limit_is_known() -> None:
    """Drives switch at 2 to 16 kHz: through 500 ohm only the slow lines could trip it."""
    found = size(
        circuit="six-pulse-inverter", fault_resistance="800 ohm", switching_frequency="8 kHz"
    )

    assert found["outcome"] == "cannot-say"
    assert "8000 Hz, where no limit is known" in found["says"] or "8 kHz" in found["says"]


def test_a_single_phase_inverter_is_like_the_composite_test() -> None:
    """Mains 0.71, 1 kHz 0.54 and 10 Hz 0.13 of the r.m.s.: the row of the composite test holds."""
    device = {"type": "F", "rated_residual_current": "30 mA"}
    found = size(circuit="single-phase-inverter", fault_resistance="2 kohm", device=device)

    assert found["outcome"] == "pass"
    assert found["limit"] == "≥ 42 mA"


def test_the_switching_frequency_that_was_taken_is_named() -> None:
    """Where none is given the reply says which, and where nothing switches that it is no matter."""
    reply = asked(circuit="six-pulse-inverter")
    still = asked(circuit="bridge", switching_frequency="4 kHz")

    assert any("switching frequency was taken as" in one for one in reply["cautions"])
    assert reply["answer"]["switching_frequency"] == {"value": 1000.0, "unit": "Hz"}
    assert any("plays no part" in one for one in still["cautions"])


def test_without_a_device_nothing_is_judged() -> None:
    """An answer alone is no pass."""
    reply = asked(circuit="no-converter")

    assert reply["outcome"] == "cannot-say"
    assert "Nothing was judged" in reply["findings"][0]["says"]


@pytest.mark.parametrize(
    ("circuit", "fitted", "outcome"),
    [
        ("no-converter", "AC", "pass"),
        ("bridge", "AC", "fail"),
        ("bridge", "A", "pass"),
        ("single-phase-inverter", "A", "fail"),
        ("single-phase-inverter", "F", "pass"),
        ("two-phase-bridge", "F", "fail"),
        ("six-pulse-inverter", "B", "cannot-say"),  # the type fits, the size proves no trip
        ("six-pulse-inverter", "B+", "cannot-say"),
    ],
)
def test_a_device_is_judged_against_every_fault(circuit: str, fitted: str, outcome: str) -> None:
    """A type passes only if it sees the faults in every place of the circuit."""
    device = {"type": fitted, "rated_residual_current": "30 mA"}

    assert asked(circuit=circuit, device=device)["outcome"] == outcome


@pytest.mark.parametrize(
    ("code", "day", "outcome"),
    [
        ("iec", "2026-11-24", "pass"),
        ("au", "2023-04-30", "pass"),
        ("au", "2023-05-01", "fail"),
        ("gb", "2026-11-24", "cannot-say"),
    ],
)
def test_the_local_code_may_refuse_a_type_that_sees_the_fault(
    code: str, day: str, outcome: str
) -> None:
    """Type AC sees a sine; AS/NZS 3000 ends it from 1 May 2023, BS 7671 keeps a condition."""
    device = {"type": "AC", "rated_residual_current": "30 mA"}

    reply = asked(circuit="no-converter", device=device, code=code, on=day)

    assert reply["outcome"] == outcome


def test_a_fault_too_small_for_a_trip_is_no_pass() -> None:
    """10 kohm give 23 mA: less than the 30 mA at which a device must have tripped."""
    device = {"type": "A", "rated_residual_current": "30 mA"}

    reply = asked(circuit="no-converter", fault_resistance="10 kohm", device=device)

    assert reply["outcome"] == "cannot-say"
    assert reply["findings"][-1]["limit"] == "≥ 30 mA"


def test_a_monitor_is_not_judged_as_protection() -> None:
    """A monitor warns and does not trip, whatever its type."""
    device = {"type": "B", "form": "monitor"}

    assert asked(circuit="six-pulse", device=device)["outcome"] == "cannot-say"


def test_another_mains_frequency_is_outside_the_product_standards() -> None:
    """At 400 Hz no type passes: the limits are those of 50 Hz and 60 Hz."""
    device = {"type": "A", "rated_residual_current": "30 mA"}

    assert asked(circuit="bridge", frequency="400 Hz", device=device)["outcome"] == "cannot-say"


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("fault_resistance", "0"),
        ("fault_resistance", "-1 kohm"),
        ("fault_resistance", "nan"),
        ("fault_resistance", "100 Mohm"),
        ("frequency", "0 Hz"),
        ("frequency", "5 kHz"),
        ("smoothing", "-1 uF"),
        ("smoothing", "1 F"),
        ("line_voltage", "0 V"),
        ("line_voltage", "15 kV"),
        ("source_inductance", "-1 mH"),
        ("delay_angle", "180"),
        ("link_load", "0"),
        ("circuit", "flux-capacitor"),
        ("place", "the cellar"),
    ],
)
def test_absurd_input_is_refused_by_its_field(field: str, value: str) -> None:
    """Zero, negative, endless and unknown values come back under the name of the field."""
    reply = asked(**{"circuit": "bridge", field: value})

    assert reply["kind"] == "invalid"
    assert list(reply["errors"]) == [field]


def test_a_place_that_the_circuit_lacks_is_refused() -> None:
    """A plain bridge has no switched output."""
    assert list(asked(circuit="bridge", place="output")["errors"]) == ["place"]


def test_what_plays_no_part_is_said() -> None:
    """Smoothing without a link, or a delay angle without thyristors, is not dropped in silence."""
    cautions = " ".join(
        asked(circuit="no-converter", smoothing="100 uF", delay_angle="90")["cautions"]
    )

    assert "smoothing given plays no part" in cautions
    assert "delay angle given plays no part" in cautions


def test_harmonics_of_an_inverter_go_beyond_one_kilohertz() -> None:
    """Mains lines up to 1 kHz everywhere; multiples of the switching frequency for an inverter."""
    plain = asked(circuit="bridge")["answer"]["harmonics"]
    inverter = asked(circuit="six-pulse-inverter")["answer"]["harmonics"]

    assert max(frequency for frequency, _ in plain) <= 1000.0
    assert max(frequency for frequency, _ in inverter) > 1000.0
    assert 10.0 in {frequency for frequency, _ in inverter}
