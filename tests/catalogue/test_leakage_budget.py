"""What the leakage checker answers, whatever is put into it."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run
from checkers.domain.loads.registry import LOADS

ORDER = ["pass", "cannot-say", "borderline", "fail"]
CURRENTS = st.floats(min_value=0.01, max_value=20).map(lambda one: round(one, 3))
DEVICE = {"type": "A", "rated_residual_current": "30 mA"}


def ask(**request: Any) -> dict[str, Any]:
    """Return the reply for a 30 mA device, unless another is given."""
    return run("leakage-budget", {"code": "gb", "on": "2026-11-24", "device": DEVICE, **request})


def items(*leakages: float, **more: Any) -> list[dict[str, Any]]:
    """Return items of so many milliamperes each."""
    return [{"leakage": f"{one} mA", **more} for one in leakages]


ITEMS = st.fixed_dictionaries(
    {
        "leakage": CURRENTS.map(lambda one: f"{one} mA"),
        "count": st.integers(1, 4),
        "nature": st.sampled_from(["capacitive", "resistive", "unknown"]),
        "line": st.sampled_from(["L1", "L2", "L3", "three-phase", "unknown"]),
    }
)
OF_A_KIND = st.fixed_dictionaries({"load": st.sampled_from(list(LOADS)), "count": st.just(3)})
MEASURED = st.sampled_from(
    [{}, {"measured": "0.2 mA", "clamp_filter": "off"}, {"measured": "9 mA"}]
)


@settings(deadline=None, max_examples=200)
@given(
    st.lists(ITEMS | OF_A_KIND, min_size=1, max_size=5),
    ITEMS | OF_A_KIND,
    MEASURED,
    st.sampled_from(["three-phase", "unknown"]),
)
def test_one_more_item_never_mends_anything(
    listed: list[dict[str, Any]], more: dict[str, Any], measured: dict[str, str], supply: str
) -> None:
    """Adding an item never gives a better outcome, on whatever line, measured or not."""
    before = ask(items=listed, supply=supply, **measured)["outcome"]
    after = ask(items=[*listed, more], supply=supply, **measured)["outcome"]

    assert ORDER.index(after) >= ORDER.index(before)


@settings(deadline=None, max_examples=100)
@given(st.lists(ITEMS, min_size=1, max_size=5))
def test_telling_less_of_an_item_never_makes_a_list_pass_or_fail(
    listed: list[dict[str, Any]],
) -> None:
    """Without line and nature a verdict stays, or becomes cannot say.

    That equipment is three-phase is told by its line, or by its kind.
    """
    on_lines = [one for one in listed if one["line"] != "three-phase"]
    known = ask(items=on_lines)["outcome"]
    untold = [{**one, "line": "unknown", "nature": "unknown"} for one in on_lines]

    assert ask(items=untold)["outcome"] in {known, "cannot-say"}


def test_a_balanced_sum_never_passes_alone() -> None:
    """Nothing with everything on, and 10 mA on each line by itself: above 9 mA."""
    listed = [
        {"leakage": "10 mA", "nature": "capacitive", "line": one} for one in ("L1", "L2", "L3")
    ]
    reply = ask(items=listed, supply="three-phase")

    assert reply["answer"]["with_everything_on"]["value"] == 0
    assert reply["outcome"] == "fail"
    assert ask(items=listed, measured="0.1 mA", clamp_filter="off")["outcome"] == "fail"


def test_the_catalogue_neither_fails_a_list_nor_outvotes_a_clamp() -> None:
    """Its usual figures are no measurement: they ask for one, and give way to it."""
    many = [{"load": "washing-machine", "count": 9}]

    assert ask(items=many, supply="single-phase")["outcome"] == "cannot-say"
    assert ask(items=many, measured="4 mA", clamp_filter="off")["outcome"] == "pass"


def test_equipment_fed_from_three_lines_only_needs_no_line() -> None:
    """Two drives of 8 mA may lie at any angle to each other: more than 9 mA, or less."""
    listed = [{"load": "three-phase-drive", "leakage": "8 mA", "count": 2}]
    untold = ask(items=listed)

    assert untold["outcome"] == "cannot-say"
    assert untold["answer"] == ask(items=[{**listed[0], "line": "three-phase"}])["answer"]


def test_a_single_phase_device_has_one_line() -> None:
    """Everything adds up, and naming two lines of it is refused by name."""
    one = [{"leakage": "2 mA", "count": 9, "nature": "capacitive"}]
    two = [{"leakage": "2 mA", "line": line} for line in ("L1", "L2")]

    assert ask(items=one)["outcome"] == "cannot-say"
    assert ask(items=one, supply="single-phase")["outcome"] == "fail"
    assert list(ask(items=two, supply="single-phase")["errors"]) == ["supply"]


@settings(deadline=None)
@given(st.lists(CURRENTS, min_size=2, max_size=8))
def test_the_order_of_items_changes_nothing(leakages: list[float]) -> None:
    """The same list in another order has the same sum, outcome and number of devices."""
    one, other = ask(items=items(*leakages)), ask(items=items(*reversed(leakages)))

    assert one["outcome"] == other["outcome"]
    assert one["answer"].get("devices_needed") == other["answer"].get("devices_needed")
    assert one["answer"]["expected"] == other["answer"]["expected"]


@settings(deadline=None)
@given(CURRENTS, st.floats(min_value=1, max_value=3))
def test_a_larger_measurement_never_mends_anything(current: float, factor: float) -> None:
    """More leakage never has a better outcome."""
    low, high = (ask(measured=one)["outcome"] for one in (current, current * factor))

    assert ORDER.index(high) >= ORDER.index(low)


@settings(deadline=None)
@given(st.lists(CURRENTS, min_size=1, max_size=8))
def test_every_group_of_a_split_is_within_the_budget(leakages: list[float]) -> None:
    """Each device of the split passes by itself, and all items are on one."""
    answer = ask(items=items(*leakages))["answer"]

    held = sum(len(group["holds"]) for group in answer.get("groups", []))
    assert all(group["leakage"]["value"] <= 9.0001 for group in answer.get("groups", []))
    assert not held or held == sum(one <= 9 for one in leakages)


def test_a_target_above_the_rule_fails_however_round_it_is() -> None:
    """10 mA on a 30 mA device are above 9 mA, as a list and as a measurement."""
    assert ask(items=items(10))["outcome"] == "fail"
    assert ask(measured="10 mA")["outcome"] == "fail"


def test_a_measurement_at_the_limit_is_borderline() -> None:
    """9 mA by a clamp may be more."""
    assert ask(measured="9 mA")["outcome"] == "borderline"
    assert ask(measured="8.9 mA", clamp_uncertainty="0.05 mA")["outcome"] == "pass"


def test_leakage_above_half_the_rating_may_trip_the_device_by_itself() -> None:
    """Both the rule for the sum and the current the device must bear are exceeded."""
    findings = ask(measured="18 mA")["findings"]

    assert [one["outcome"] for one in findings] == ["fail", "fail"]
    assert {one["judges"] for one in findings} == {"installation-code", "function"}


@pytest.mark.parametrize("resistance", ["1 Mohm", "100 kohm", "37 kohm"])
def test_insulation_alone_never_passes(resistance: str) -> None:
    """A DC test does not show what filters and cables leak."""
    reply = ask(insulation_resistance=resistance)

    assert reply["outcome"] == "cannot-say"
    assert "resistive part only" in reply["findings"][0]["says"]


def test_insulation_that_alone_lets_too_much_through_fails() -> None:
    """20 kohm let 11.5 mA through."""
    assert ask(insulation_resistance="20 kohm")["outcome"] == "fail"


def test_a_filter_hides_what_a_type_b_device_senses() -> None:
    """The same reading passes for type A with a remark, and decides nothing for type B."""
    b = {"type": "B", "rated_residual_current": "30 mA"}

    assert ask(measured="3 mA", clamp_filter="on")["outcome"] == "pass"
    assert ask(measured="3 mA", clamp_filter="on", device=b)["outcome"] == "cannot-say"
    assert ask(measured="3 mA", clamp_filter="off", device=b)["outcome"] == "pass"
    untold = {"rated_residual_current": "30 mA"}
    assert ask(measured="3 mA", clamp_filter="on", device=untold)["outcome"] == "cannot-say"


def test_equipment_without_an_upper_figure_is_measured_not_passed() -> None:
    """A solar inverter may leak far more than it usually does."""
    reply = ask(items=[{"load": "pv-inverter"}], device={"rated_residual_current": "300 mA"})

    assert reply["outcome"] == "cannot-say"
    assert "clamp" in reply["findings"][0]["do_next"]


def test_a_list_above_and_a_measurement_below_are_not_settled() -> None:
    """Something may have been at rest when it was measured."""
    reply = ask(items=items(5, 6), measured="4 mA")

    assert reply["outcome"] == "cannot-say"


@pytest.mark.parametrize(
    "missing",
    [{"device": {"type": "A"}, "measured": "3 mA"}, {}, {"code": "us", "measured": "1 mA"}],
)
def test_nothing_passes_without_rating_leakage_or_rule(missing: dict[str, Any]) -> None:
    """Each of the three is needed."""
    assert ask(**missing)["outcome"] == "cannot-say"


@pytest.mark.parametrize(
    ("bad", "field"),
    [
        ({"items": [{"load": "toaster"}]}, "items[0].load"),
        ({"items": [{"count": 3}]}, "items[0].leakage"),
        ({"items": [{"leakage": "1 mA", "count": 0}]}, "items[0].count"),
        ({"measured": "-2 mA"}, "measured"),
        ({"measured": "2 V"}, "measured"),
        ({"insulation_resistance": "0 ohm"}, "insulation_resistance"),
    ],
)
def test_bad_input_is_named_by_field(bad: dict[str, Any], field: str) -> None:
    """The message stands at the field that is wrong."""
    assert list(ask(**bad)["errors"]) == [field]


@pytest.mark.parametrize("measured", ["0.1 mA", "3 mA", "60 mA"])
def test_the_rating_is_asked_for_where_it_decides(measured: str) -> None:
    """The limit is a share of it: whatever was measured, nothing is judged without."""
    findings = run("leakage-budget", {"code": "iec", "measured": measured})["findings"]

    assert [(one["outcome"], one["field"]) for one in findings] == [
        ("cannot-say", "device.rated_residual_current")
    ]
