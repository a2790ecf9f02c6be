"""At each current a device must hold, must trip, or may do either."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.codes.registry import CODES
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.judgement.case import Case
from checkers.judgement.limits.demands import demand_at


@pytest.mark.parametrize(
    ("form", "waveform", "current", "must"),
    [
        ("rccb", "ac", 15.0, "hold"),  # half the rating
        ("rccb", "ac", 15.1, "either"),
        ("rccb", "ac", 29.9, "either"),
        ("rccb", "ac", 30.0, "trip"),
        ("rccb", "half-wave", 10.5, "hold"),  # 0.35 times
        ("rccb", "half-wave", 41.9, "either"),
        ("cbr", "half-wave", 42.0, "trip"),  # 1.4 times, without any time
        ("socket", "half-wave-135", 42.0, "not known"),
        ("rccb", "smooth-dc", 15.0, "hold"),
        ("rccb", "smooth-dc", 59.0, "either"),
        ("rccb", "smooth-dc", 60.0, "trip"),  # twice the rating
        ("socket", "smooth-dc", 600.0, "not known"),
    ],
)
def test_the_band_says_what_is_asked(form: str, waveform: str, current: float, must: str) -> None:
    """The bands of IEC 61008-1, IEC 62423 and IEC 60947-2 for a 30 mA type B."""
    device = Device("B", 30.0, "none", form)
    case = Case(device, Circuit(), Instrument(), CODES["iec"], date(2026, 11, 24))

    assert must == demand_at(case, waveform, current).must
