"""Over drawn requests: what `readings` fails, explain never calls in order, in any code or form."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checkers import run
from checkers.domain.codes.registry import CODES

LEAVE = "leave it in service"
PROTECTED = "whether people are protected"
TIMES = ["18 ms", "28 ms", "60 ms", "180 ms", "299 ms", "301 ms", "310 ms", "900 ms", "1500 ms"]
CURRENTS = ["9 mA", "22 mA", "29 mA", "31 mA", "38 mA", "75 mA", "600 mA", "> 33 mA"]
SAID = ["30 s", "> 300 ms", "> 40 ms", "no trip", "tripped", "operates", "does not operate"]
READING = st.fixed_dictionaries(
    {
        "test": st.sampled_from(["trip-time", "trip-time", "no-trip", "ramp", "button"]),
        "value": st.sampled_from([*TIMES, *CURRENTS, *SAID, "n/t"]),
        "waveform": st.sampled_from(["ac", "ac", "half-wave", "smooth-dc", "unknown"]),
        "multiple": st.sampled_from([0.5, 1, 1, 2, 5]),
        "phase": st.sampled_from(["0", "180", "+", "-"]),
    }
)
REQUEST = st.fixed_dictionaries(
    {
        "code": st.sampled_from(sorted(CODES)),
        "on": st.just("2026-11-24"),
        "device": st.fixed_dictionaries(
            {
                "type": st.sampled_from(["AC", "A", "F", "B", "B+", "unknown"]),
                "delay": st.sampled_from(["none", "none", "G", "S", "60 ms"]),
                "form": st.sampled_from(
                    ["rccb", "rcbo", "socket", "portable", "modular", "cbr", "gfci", "rdc-dd"]
                ),
            },
            optional={
                "rated_residual_current": st.sampled_from(["10 mA", "30 mA", "100 mA", "1 A"])
            },
        ),
        "readings": st.lists(READING, min_size=1, max_size=3),
        "circuit": st.fixed_dictionaries(
            {"loads": st.sampled_from(["on", "off"])},
            optional={
                "dc_residual": st.sampled_from(["0 mA", "4 mA", "8 mA", "12 mA", "300 mA"]),
                "seen_to_open": st.booleans(),
            },
        ),
    }
)


@given(REQUEST)
@settings(max_examples=70, deadline=None, suppress_health_check=list(HealthCheck))
def test_whatever_readings_fails_is_no_all_clear(request: dict[str, Any]) -> None:
    """A failing device is a danger and never in order; what is open is said beside a leave."""
    judged, reply = run("readings", request), run("explain", request)
    assert judged["kind"] == reply["kind"]
    if reply["kind"] == "invalid":
        return
    said = [*reply["findings"], *reply["explanations"]]
    to_do = " ".join(one.get("do_next", "") for one in said).lower()
    listed = {one["code"]: one["probability"] for one in reply["explanations"]}

    if judged["outcome"] == "fail":
        assert reply["findings"][0]["about"] == PROTECTED
        assert "in-good-order" not in listed
        assert LEAVE not in to_do
        assert "good order" not in str(reply["answer"].get("leading_cause", "")).lower()
    elif judged["outcome"] != "pass":
        assert LEAVE not in to_do or "open" in to_do
    assert not listed or sum(listed.values()) == pytest.approx(1.0, abs=1e-6)
