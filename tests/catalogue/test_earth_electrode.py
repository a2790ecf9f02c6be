"""What the electrode checker answers, whatever is put into it."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers import run

ORDER = ["pass", "borderline", "fail"]
RATINGS = st.sampled_from(["10 mA", "30 mA", "100 mA", "300 mA", "500 mA", "1 A"])
RESISTANCES = st.floats(min_value=0.1, max_value=9_000)


def ask(resistance: float | str | None = None, **more: Any) -> dict[str, Any]:
    """Return the reply for a resistance [ohm]."""
    given = {} if resistance is None else {"electrode_resistance": resistance}
    return run("earth-electrode", {"code": "gb", "on": "2026-11-24", **given, **more})


def device(rated: str, kind: str = "A", **more: Any) -> dict[str, Any]:
    """Return a device of a rating."""
    return {"rated_residual_current": rated, "type": kind, **more}


@settings(deadline=None)
@given(RESISTANCES, st.floats(min_value=1.0, max_value=10.0), RATINGS, st.sampled_from(["A", "B"]))
def test_more_resistance_never_mends_anything(
    resistance: float, factor: float, rated: str, kind: str
) -> None:
    """A higher resistance never has a better outcome, for any rating and type."""
    low = ask(resistance, device=device(rated, kind))["outcome"]
    high = ask(resistance * factor, device=device(rated, kind))["outcome"]

    assert ORDER.index(high) >= ORDER.index(low)


@settings(deadline=None)
@given(RESISTANCES, st.tuples(RATINGS, RATINGS))
def test_a_higher_rating_never_mends_anything(resistance: float, two: tuple[str, str]) -> None:
    """With the same electrode, the device of the higher rating never has a better outcome."""
    lower, higher = sorted(
        two, key=lambda one: float(one.split()[0]) * (1000 if "mA" not in one else 1)
    )
    low, high = (ask(resistance, device=device(one))["outcome"] for one in (lower, higher))

    assert ORDER.index(high) >= ORDER.index(low)


@settings(deadline=None)
@given(RESISTANCES, RATINGS)
def test_nothing_passes_above_the_limit(resistance: float, rated: str) -> None:
    """A pass means that resistance times rating stays under 50 V."""
    reply = ask(resistance, device=device(rated))

    if reply["outcome"] == "pass":
        assert reply["answer"]["touch_voltage"]["value"] <= 50
        assert resistance <= reply["answer"]["greatest_resistance"]["value"] + 1


@pytest.mark.parametrize("missing", [{"device": {"type": "A"}}, {"electrode_resistance": None}])
def test_nothing_passes_when_rating_or_resistance_is_unknown(missing: dict[str, Any]) -> None:
    """Without the one or the other there is no verdict, and the finding says which is missing."""
    reply = ask(**{"resistance": "20 ohm", "device": device("30 mA"), **missing})
    reply = ask(device=device("30 mA")) if "electrode_resistance" in missing else reply

    assert reply["outcome"] == "cannot-say"
    assert any("not" in finding["says"] for finding in reply["findings"])


def test_units_and_spellings_change_nothing() -> None:
    """0.22 kΩ, 220 Ω and 220 are one resistance."""
    replies = [
        ask(one, device=device("30 mA")) for one in ("0.22 kΩ", "220 Ω", "220", "220,0 ohms")
    ]

    assert all(reply == replies[0] for reply in replies)


def test_a_limit_above_the_codes_own_is_not_taken() -> None:
    """Asking for 120 V does not turn a failure into a pass."""
    reply = ask("2000 ohm", device=device("30 mA"), touch_voltage_limit="120 V")

    assert reply["outcome"] == "fail"
    assert reply["answer"]["greatest_resistance"]["value"] == 1666


def test_only_a_type_that_senses_smooth_dc_is_judged_for_it() -> None:
    """Type A has no DC figures, and the reply says that DC was not judged."""
    reply = ask("20 ohm", device=device("30 mA", "A"))

    assert "dc_touch_voltage" not in reply["answer"]
    assert any("Smooth DC was not judged" in caution for caution in reply["cautions"])


def test_a_device_that_stands_in_the_cold_needs_a_better_electrode() -> None:
    """700 ohm make 21 V with 30 mA, and 26.25 V with 1.25 times as much."""
    warm = {"touch_voltage_limit": "25 V", "resistance_uncertainty": "1 ohm"}
    assert ask("700 ohm", device=device("30 mA"), **warm)["outcome"] == "pass"
    assert ask("700 ohm", device=device("30 mA"), cold="yes", **warm)["outcome"] == "fail"


def test_a_smaller_uncertainty_settles_a_borderline_reading() -> None:
    """480 ohm with 100 mA is close; measured to 10 ohm it passes."""
    assert ask("480 ohm", device=device("100 mA"))["outcome"] == "borderline"
    settled = ask("480 ohm", device=device("100 mA"), resistance_uncertainty="10 ohm")
    assert settled["outcome"] == "pass"


def test_a_long_set_delay_leaves_the_disconnection_time_to_its_maker() -> None:
    """Above 60 ms the maker alone states the break time: nothing passes without it.

    A delay that alone is longer than the time allowed fails.
    """
    relay = device("300 mA", delay="150 ms", form="modular")

    reply = ask("20 ohm", device=relay)

    assert reply["outcome"] == "cannot-say"
    assert any("maker states the time" in finding["says"] for finding in reply["findings"])


def test_a_set_delay_of_60_ms_meets_the_time_of_a_distribution_circuit() -> None:
    """At many times its rating it opens within 150 ms, and 1 s is allowed."""
    relay = device("300 mA", delay="60 ms", form="modular")

    assert ask("20 ohm", device=relay, circuit="distribution")["outcome"] == "pass"


def test_a_country_without_a_rule_is_not_judged() -> None:
    """Where no touch-voltage rule is carried, no electrode passes."""
    reply = run(
        "earth-electrode",
        {"code": "us", "electrode_resistance": "5 ohm", "device": device("30 mA")},
    )

    assert reply["outcome"] == "cannot-say"


@pytest.mark.parametrize("bad", ["0 ohm", "-5 ohm", "nan", "220 V", "1e3", "200 kohm"])
def test_a_bad_resistance_is_named_with_what_would_be_right(bad: str) -> None:
    """The message stands at its field."""
    reply = ask(bad, device=device("30 mA"))

    assert list(reply["errors"]) == ["electrode_resistance"]
