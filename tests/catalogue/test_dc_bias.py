"""Smooth DC in the core: what is judged, what is answered, and what never passes."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run

TYPES = ["AC", "A", "F", "B", "B+", "unknown"]


def ask(device: dict[str, Any] | None, dc: str, own: str = "", **more: Any) -> dict[str, Any]:
    """The reply on a device with smooth DC through it."""
    request = {"on": "2026-11-24", "device": device, "dc_residual": dc, "own_trip_current": own}
    return run("dc-bias", {**request, **more})


def device(kind: str, rated: str = "30 mA", **more: str) -> dict[str, Any]:
    """A device as a request holds it."""
    return {"type": kind, "rated_residual_current": rated, **more}


def value(reply: dict[str, Any], name: str) -> float:
    """A figure of the answer, whose unit is mA."""
    assert reply["answer"][name]["unit"] == "mA"
    return float(reply["answer"][name]["value"])


def findings(reply: dict[str, Any], judges: str) -> list[dict[str, Any]]:
    """The findings of one kind."""
    return [one for one in reply["findings"] if one["judges"] == judges]


def test_50_ma_blinds_a_type_ac_device_whose_button_still_works() -> None:
    """Protection is gone and the button says otherwise: the finding says both."""
    reply = ask(device("AC"), "50 mA", "27 mA")

    assert reply["outcome"] == "fail"
    assert reply["answer"]["button_operates"] == "yes"
    assert "a button that works proves nothing" in findings(reply, "function")[0]["says"]
    assert value(reply, "low") > 30.0


def test_250_ma_leaves_the_button_dead_as_well() -> None:
    """Not even 75 mA from the button opens it."""
    reply = ask(device("AC"), "250 mA", "27 mA")

    assert reply["answer"]["button_operates"] == "no"
    assert reply["outcome"] == "fail"


@pytest.mark.parametrize(
    ("kind", "dc", "outcome"),
    [
        ("AC", "1 mA", "fail"),
        ("AC", "0 mA", "cannot-say"),
        ("A", "0 mA", "cannot-say"),
        ("A", "6 mA", "pass"),
        ("A", "6.1 mA", "fail"),
        ("F", "10 mA", "pass"),
        ("F", "10.1 mA", "fail"),
        ("B", "12 mA", "pass"),
        ("B", "12.1 mA", "cannot-say"),
        ("B", "59 mA", "cannot-say"),
        ("B", "60 mA", "fail"),
        ("B+", "12 mA", "pass"),
        ("unknown", "6 mA", "cannot-say"),
        ("unknown", "50 mA", "cannot-say"),
    ],
)
def test_only_dc_within_the_declared_tolerance_passes(kind: str, dc: str, outcome: str) -> None:
    """The declared figures decide the pass, and nothing above them passes."""
    assert ask(device(kind), dc)["outcome"] == outcome


@given(
    st.sampled_from(TYPES),
    st.sampled_from([10, 30, 100, 300, 500]),
    st.floats(0.0, 2000.0),
    st.sampled_from([None, 0.4, 0.9, 1.3]),
)
@settings(max_examples=80, deadline=None)
def test_dc_beyond_the_tolerance_never_passes(
    kind: str, rated: int, dc: float, share: float | None
) -> None:
    """Whatever the rating, the DC and the trip current: a pass needs a declared tolerance."""
    own = "" if share is None else f"{share * rated:.2f} mA"
    reply = ask(device(kind, f"{rated} mA"), f"{dc:.3f} mA", own)
    declared = {"A": 6.0, "F": 10.0, "B": max(10.0, 0.4 * rated), "B+": max(10.0, 0.4 * rated)}

    assert reply["kind"] == "result"
    if reply["outcome"] == "pass":
        assert 0.0 < dc <= declared[kind] + 0.001
        assert share is None or 0.5 <= share <= 1.0


def test_a_trip_current_beyond_the_rating_fails_before_any_dc() -> None:
    """33 mA on a 30 mA device is a failure, whatever DC the type bears."""
    reply = ask(device("A"), "5 mA", "33 mA")

    assert reply["outcome"] == "fail"
    assert findings(reply, "device-standard")[0]["outcome"] == "fail"
    assert findings(reply, "fitness-for-dc")[0]["outcome"] == "pass"


def test_a_device_that_may_go_either_way_gets_no_verdict_from_the_model() -> None:
    """Type A with 12 mA: not declared, so unfit; the model itself cannot say."""
    reply = ask(device("A"), "12 mA")

    assert findings(reply, "fitness-for-dc")[0]["outcome"] == "fail"
    assert findings(reply, "function")[0]["outcome"] == "cannot-say"


def test_a_type_that_senses_dc_opens_on_it() -> None:
    """At twice the rating a type B has opened by itself: no AC is needed, no button asked."""
    reply = ask(device("B"), "60 mA")

    assert reply["answer"]["opens_on_the_dc"] == "must"
    assert value(reply, "high") == 0.0
    assert reply["answer"]["button_operates"] == "cannot say"


def test_modular_devices_with_a_dc_sensor_are_like_type_b() -> None:
    """Sensor, relay and breaker apart: the trip current stays where it was."""
    reply = ask(device("B", "300 mA", form="modular"), "100 mA", "250 mA")

    assert reply["outcome"] == "pass"
    assert value(reply, "ac_trip_current") == 250.0


@pytest.mark.parametrize("form", ["gfci", "rdc-dd", "monitor"])
def test_other_kinds_of_device_are_not_modelled(form: str) -> None:
    """A form of another kind gets neither figures nor a verdict."""
    reply = ask(device("A", form=form), "5 mA")

    assert reply["outcome"] == "cannot-say"
    assert reply["answer"] == {}
    assert reply["findings"][0]["field"] == "device.form"


def test_without_rating_or_trip_current_no_figure_is_made_up() -> None:
    """The finding names what is missing."""
    reply = ask({"type": "A"}, "12 mA")

    assert reply["answer"] == {}
    assert findings(reply, "function")[0]["field"] == "device.rated_residual_current"


def test_type_b_without_its_rating_cannot_be_judged_beyond_10_ma() -> None:
    """0.4 times an unknown rating is unknown; 10 mA every type B bears."""
    assert ask({"type": "B"}, "12 mA")["outcome"] == "cannot-say"
    assert ask({"type": "B"}, "12 mA", "22 mA")["outcome"] == "cannot-say"
    assert ask({"type": "B"}, "10 mA")["outcome"] == "pass"


def test_the_curve_holds_the_point_asked_about_within_its_band() -> None:
    """Points and band are drawn over the same DC, from none to beyond the DC asked about."""
    answer = ask(device("AC"), "50 mA", "27 mA")["answer"]

    assert answer["points"][0] == [0.0, 27.0]
    assert answer["points"][-1][0] >= 250.0
    for (dc, trip), band in zip(answer["points"], answer["band"], strict=True):
        assert dc == band["dc_residual"]
        assert band["low"] <= trip <= band["high"]


@pytest.mark.parametrize("kind", ["A", "F"])
@pytest.mark.parametrize("dc", ["12 mA", "20 mA", "50 mA", "100 mA"])
def test_the_model_says_of_no_type_a_or_f_that_its_protection_is_gone(kind: str, dc: str) -> None:
    """A good core opens all the same: only a test with this DC flowing would show."""
    reply = ask(device(kind), dc, "22 mA")
    says = findings(reply, "function")[0]["says"]

    assert findings(reply, "fitness-for-dc")[0]["outcome"] == "fail"
    assert findings(reply, "function")[0]["outcome"] == "cannot-say"
    assert "protection is gone" not in says
    if dc != "12 mA":
        assert "may or may not open" in says


@pytest.mark.parametrize("kind", TYPES)
@pytest.mark.parametrize("own", ["", "22 mA"])
def test_no_band_is_of_zero_width(kind: str, own: str) -> None:
    """A device repeats its own trip current to a few parts in a hundred, at best."""
    answer = ask(device(kind), "7 mA", own)["answer"]

    for one in answer["band"]:
        assert one["high"] > one["low"] or one["high"] == 0.0, one


def test_declared_dc_leaves_the_band_within_the_rating() -> None:
    """What the standard assures for a sound device the model does not take away."""
    for kind, dc in (("A", "6 mA"), ("F", "10 mA")):
        for rated in ("10 mA", "30 mA", "100 mA"):
            assert value(ask(device(kind, rated), dc), "high") <= float(rated.split()[0])


def test_known_points_carry_their_source_in_words() -> None:
    """Bench points say that they have no published source, declared ones name the standard."""
    bench = ask(device("AC"), "50 mA")["answer"]["known_points"]
    declared = ask(device("A"), "5 mA")["answer"]["known_points"]

    assert len(bench) == 2
    assert {one["kind"] for one in bench} == {"measured"}
    assert {one["kind"] for one in declared} == {"declared"}
    assert all("no published source" in one["source"] for one in bench)
    assert "IEC 60364-5-53" in declared[0]["source"]


@pytest.mark.parametrize(
    ("request_part", "field"),
    [
        ({"dc_residual": "-5 mA"}, "dc_residual"),
        ({"dc_residual": "NaN"}, "dc_residual"),
        ({"dc_residual": "50 A"}, "dc_residual"),
        ({"dc_residual": ""}, "dc_residual"),
        ({"own_trip_current": "0"}, "own_trip_current"),
        ({"own_trip_current": "27 ms"}, "own_trip_current"),
        ({"device": {"type": "X"}}, "device.type"),
    ],
)
def test_bad_input_is_named_by_field(request_part: dict[str, Any], field: str) -> None:
    """Each wrong field is refused under its name."""
    reply = run("dc-bias", {"device": device("AC"), "dc_residual": "50 mA", **request_part})

    assert reply["kind"] == "invalid"
    assert field in reply["errors"]


def test_the_scatter_is_said_with_every_answer() -> None:
    """The band is no confidence interval, and DC has been seen to help as well as to harm."""
    cautions = " ".join(ask(device("AC"), "50 mA")["cautions"])

    assert "no confidence interval" in cautions
    assert "more sensitive as well as less" in cautions
