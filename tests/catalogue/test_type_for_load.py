"""The type-for-load checker: its answer by equipment, maker, code and day, and its refusals."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run
from checkers.domain.loads.registry import LOADS

TYPES = ["AC", "A", "F", "B", "B+"]
MAKERS = [*TYPES, "no-dc", "silent"]


def asked(**request: Any) -> dict[str, Any]:
    """The reply to a request."""
    return run("type-for-load", request)


def answer(**request: Any) -> dict[str, Any]:
    """The answer to a request."""
    found = asked(**request)["answer"]
    assert isinstance(found, dict)
    return found


def outcome(fitted: str, **request: Any) -> str:
    """The outcome for a 30 mA device of a type."""
    device = {"type": fitted, "rated_residual_current": "30 mA"}
    return str(asked(device=device, **request)["outcome"])


@pytest.mark.parametrize("load", list(LOADS))
def test_every_kind_of_equipment_gets_the_answer_of_the_contract(load: str) -> None:
    """A type, what else serves, and the greatest smooth DC, for every supply it has."""
    for supply in LOADS[load].circuits:
        found = answer(load=load, supply=supply)

        assert found["type"] in TYPES
        assert isinstance(found["also_acceptable"], list)
        assert found["greatest_smooth_dc"]
        assert asked(load=load, supply=supply)["outcome"] == "cannot-say"


@pytest.mark.parametrize("load", list(LOADS))
@pytest.mark.parametrize("maker_says", MAKERS)
def test_a_type_narrower_than_the_answer_never_passes(load: str, maker_says: str) -> None:
    """Whatever the maker states, only the type answered, or a wider one, may pass."""
    least = answer(load=load, maker_says=maker_says)["type"]

    for narrower in TYPES[: TYPES.index(least)]:
        assert outcome(narrower, load=load, maker_says=maker_says) != "pass"


@pytest.mark.parametrize(
    ("load", "maker_says", "expected"),
    [
        ("three-phase-drive", "silent", "B"),
        ("heat-pump-single-phase", "silent", "F"),
        ("heat-pump-single-phase", "A", "A"),
        ("heat-pump-single-phase", "F", "F"),
        ("heat-pump-single-phase", "B", "B"),
        ("heat-pump-three-phase", "silent", "B"),
        ("heat-pump-three-phase", "F", "F"),
        ("washing-machine", "no-dc", "F"),
        ("switched-mode-supply", "silent", "A"),
        ("ev-charge-point", "silent", "B"),
        ("ev-charge-point", "A", "B"),
        ("pv-inverter", "silent", "B"),
        ("pv-inverter", "no-dc", "A"),
        ("resistive", "silent", "AC"),
        ("resistive", "A", "A"),
    ],
)
def test_the_maker_moves_the_answer(load: str, maker_says: str, expected: str) -> None:
    """A silent maker gives the cautious answer; a statement raises it, or lowers it if it may.

    No smooth DC says nothing of mixed frequencies, nor a type of detection that nobody stated.
    """
    assert answer(load=load, maker_says=maker_says)["type"] == expected


def test_a_silent_maker_leaves_the_condition_in_words() -> None:
    """The narrower type is listed with what would make it serve."""
    also = answer(load="heat-pump-single-phase", maker_says="silent")["also_acceptable"]

    assert also[0] == "A, where its maker states that a type A suffices"


def test_a_maker_who_asks_for_more_is_not_offered_less() -> None:
    """Once the maker calls for type B, its statement for a type A is no longer listed."""
    also = answer(load="heat-pump-single-phase", maker_says="B")["also_acceptable"]

    assert not any(one.startswith("A") for one in also)


def test_a_statement_against_the_circuit_is_asked_about() -> None:
    """A three-phase drive that is said to need a type A only: neither pass nor fail."""
    reply = asked(load="three-phase-drive", maker_says="A", device={"type": "A"})

    assert reply["outcome"] == "cannot-say"
    assert "less than its circuit calls for" in reply["findings"][0]["says"]
    assert reply["answer"]["type"] == "B"


@pytest.mark.parametrize(
    ("separation", "maker_says", "expected"),
    [
        ("none", "silent", "fail"),
        ("unknown", "silent", "cannot-say"),
        ("simple", "silent", "pass"),
        ("none", "A", "pass"),
        ("none", "no-dc", "pass"),
        ("simple", "B", "fail"),
    ],
)
def test_a_solar_inverter_on_a_type_a(separation: str, maker_says: str, expected: str) -> None:
    """Type B unless separated or declared (IEC 60364-7-712:2017, 712.531.3.5.1, secondary)."""
    request = {"load": "pv-inverter", "separation": separation, "maker_says": maker_says}

    assert outcome("A", **request) == expected


def test_india_asks_for_type_b_behind_every_solar_inverter() -> None:
    """SP 30:2023 part 8 knows no exception (secondary): separation does not help there."""
    request = {"load": "pv-inverter", "separation": "simple", "on": "2024-01-01"}

    assert answer(code="in", **request)["type"] == "B"
    assert outcome("A", code="in", **request) == "fail"
    assert outcome("A", code="iec", **request) == "pass"


@pytest.mark.parametrize(
    ("code", "day", "expected"),
    [
        ("au", "2023-04-30", "pass"),
        ("au", "2023-05-01", "fail"),
        ("gb", "2022-03-27", "pass"),
        ("gb", "2022-03-28", "cannot-say"),
        ("de", "2026-11-24", "fail"),
        ("iec", "2026-11-24", "pass"),
    ],
)
def test_type_ac_is_accepted_by_code_and_day(code: str, day: str, expected: str) -> None:
    """AS/NZS 3000:2018 amendment 2, BS 7671:2018+A2:2022, DIN VDE 0100-530: a plain heater."""
    assert outcome("AC", load="resistive", code=code, on=day) == expected


def test_the_day_a_device_was_fitted_counts_for_its_type() -> None:
    """A type AC from before the ban may stay on a heater, and the reply says what holds today."""
    request = {"load": "resistive", "code": "au", "on": "2026-11-24", "fitted_on": "2015-01-01"}
    reply = asked(device={"type": "AC"}, **request)

    assert reply["outcome"] == "pass"
    assert any("For new work today" in caution for caution in reply["cautions"])


def test_a_day_of_fitting_in_the_future_is_refused() -> None:
    """A device cannot have been fitted after the day asked about."""
    reply = asked(load="resistive", on="2020-01-01", fitted_on="2021-01-01")

    assert list(reply["errors"]) == ["fitted_on"]


def test_a_condition_of_the_code_is_listed_with_its_type() -> None:
    """In the UK type AC is listed for a heater, with the condition, and not for electronics."""
    plain = answer(load="resistive", code="gb", on="2026-11-24")
    electronic = answer(load="switched-mode-supply", code="gb", on="2026-11-24")

    assert plain["type"] == "A"
    assert any(one.startswith("AC, where it serves only fixed") for one in plain["also_acceptable"])
    assert not any(one.startswith("AC") for one in electronic["also_acceptable"])


def test_medical_locations_take_type_a_or_b_only() -> None:
    """IEC 60364-7-710 (memory): never AC; F is not named, so it is not passed either."""
    assert outcome("AC", load="medical") == "fail"
    assert outcome("A", load="medical") == "pass"
    assert outcome("F", load="medical") == "cannot-say"
    assert outcome("B", load="medical") == "pass"
    also = answer(load="medical")["also_acceptable"]
    assert also == ["B or B+: wider, it sees the same and more"]


def test_a_charge_point_needs_a_rating_of_30_ma_at_most() -> None:
    """Each connecting point has an RCD of 30 mA or less (IEC 60364-7-722:2018, secondary)."""
    device = {"type": "B", "rated_residual_current": "100 mA"}

    reply = asked(load="ev-charge-point", device=device)

    assert reply["outcome"] == "fail"
    assert [f["about"] for f in reply["findings"] if f["outcome"] == "fail"] == [
        "rated residual current"
    ]


def test_german_sites_need_type_b_on_three_phase_sockets_only() -> None:
    """DGUV Information 203-006, 5.2 (read): three-phase sockets; a 30 mA type A elsewhere."""
    said = {"maker_says": "A", "condition_holds": "yes"}
    request = {"load": "site-machine", "code": "de", **said}

    assert answer(supply="three-phase", **request)["type"] == "B"
    assert answer(supply="single-phase", **request)["type"] == "A"


def test_between_two_lines_a_single_phase_drive_needs_type_b() -> None:
    """The same drive, fed from line and neutral, needs a type F."""
    assert answer(load="single-phase-drive", supply="single-phase")["type"] == "F"
    assert answer(load="single-phase-drive", supply="line-to-line")["type"] == "B"


@pytest.mark.parametrize(
    ("request_", "field"),
    [
        ({}, "load"),
        ({"load": "toaster"}, "load"),
        ({"load": "resistive", "supply": "gas"}, "supply"),
        ({"load": "dimmer", "supply": "three-phase"}, "supply"),
        ({"load": "resistive", "separation": "some"}, "separation"),
        ({"load": "resistive", "maker_says": "perhaps"}, "maker_says"),
        ({"load": "resistive", "weight": "2 kg"}, "weight"),
    ],
)
def test_a_bad_field_is_named(request_: dict[str, Any], field: str) -> None:
    """Missing, unknown and unfitting values come back under the name of the field."""
    reply = run("type-for-load", request_)

    assert reply["kind"] == "invalid"
    assert list(reply["errors"]) == [field]


def test_what_plays_no_part_is_said() -> None:
    """Detection in a heat pump and separation of a heater are not dropped in silence."""
    request = {"load": "heat-pump-single-phase", "separation": "simple", "dc_detection": "yes"}

    cautions = " ".join(asked(**request)["cautions"])

    assert "Separation plays no part" in cautions
    assert "detection plays no part" in cautions
