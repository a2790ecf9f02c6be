"""Trees of devices and loads, short to write and drawn at random."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from checkers.catalogue.series import Inputs
from checkers.domain.inputs.parsing import parse_inputs
from checkers.judgement.series.arrangement import Arrangement

Request = dict[str, Any]

LOADS = (
    "resistive",
    "switched-mode-supply",
    "ev-charge-point",
    "three-phase-drive",
    "heat-pump-single-phase",
    "heat-pump-three-phase",
    "pv-inverter",
)
TYPES = ("AC", "A", "F", "B")
RATINGS = ("30 mA", "100 mA", "300 mA")


@st.composite
def trees(draw: st.DrawFn, most: int = 8) -> Request:
    """Draw a request: devices below one another, and loads on some of them."""
    count = draw(st.integers(1, most))
    devices = [
        {
            "id": f"d{place}",
            "below": f"d{draw(st.integers(0, place - 1))}" if place else None,
            "type": draw(st.sampled_from(TYPES)),
            "rated_residual_current": draw(st.sampled_from(RATINGS)),
        }
        for place in range(count)
    ]
    loads = [
        {
            "below": f"d{draw(st.integers(0, count - 1))}",
            "load": draw(st.sampled_from(LOADS)),
            "count": draw(st.integers(1, 3)),
            "dc_protection": draw(st.sampled_from(("none", "rdc-dd", "type-b"))),
        }
        for _ in range(draw(st.integers(1, most)))
    ]
    return {"devices": devices, "loads": loads}


def arranged(request: Request) -> Arrangement:
    """Return the arrangement that is judged for a request."""
    return parse_inputs(Inputs, request).arrangement
