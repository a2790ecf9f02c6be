"""Whatever readings come in whatever order, explain answers, and never with a verdict."""

from __future__ import annotations

import json
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checkers import run

READINGS = st.fixed_dictionaries(
    {
        "test": st.sampled_from(["trip-time", "no-trip", "ramp", "unknown"]),
        "value": st.sampled_from(
            [
                "28 ms",
                "> 300 ms",
                "no trip",
                "tripped",
                "< 40 ms",
                "22 mA",
                "no trip by 30 mA",
                "30 A",
            ]
        ),
        "waveform": st.sampled_from(["ac", "half-wave", "half-wave-135", "smooth-dc", "unknown"]),
        "multiple": st.sampled_from([0.5, 1, 2, 5, 100]),
        "phase": st.sampled_from(["0", "180", "+", "-"]),
        "place": st.sampled_from(["device", "board", "point", "unknown"]),
        "loads": st.sampled_from(["on", "off", "as-circuit"]),
    }
)
DEVICES = st.fixed_dictionaries(
    {
        "type": st.sampled_from(["AC", "A", "F", "B", "B+", "unknown"]),
        "rated_residual_current": st.sampled_from(["6 mA", "30 mA", "300 mA", "30 A"]),
        "delay": st.sampled_from(["none", "G", "S", "60 ms"]),
        "form": st.sampled_from(["rccb", "rcbo", "socket", "portable", "modular", "cbr"]),
    }
)
CIRCUITS = st.fixed_dictionaries(
    {
        "loads": st.sampled_from(["on", "off", "unknown"]),
        "system": st.sampled_from(["tn", "tt", "unknown"]),
        "supply": st.sampled_from(["public", "own", "unknown"]),
    },
    optional={
        "dc_residual": st.sampled_from(["0 mA", "8 mA", "10 A"]),
        "standing_leakage": st.sampled_from(["0 mA", "9 mA", "10 A"]),
        "seen_to_open": st.booleans(),
    },
)


@given(DEVICES, st.lists(READINGS, min_size=1, max_size=4), CIRCUITS)
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_request_is_answered_without_a_verdict(
    device: dict[str, Any], readings: list[dict[str, Any]], circuit: dict[str, Any]
) -> None:
    """Probabilities are a part of 1, no figure is missing, and the outcome is cannot-say."""
    reply = run("explain", {"device": device, "readings": readings, "circuit": circuit})

    assert reply["kind"] == "result", reply
    assert reply["outcome"] == "cannot-say"
    assert 0.5 < sum(one["probability"] for one in reply["explanations"]) < 1.001
    assert "NaN" not in json.dumps(reply)
    assert "Infinity" not in json.dumps(reply)
