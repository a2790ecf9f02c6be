"""The words of a step: what to do, where to connect, why, what to write down, what if it fails."""

from __future__ import annotations

from collections.abc import Mapping

from checkers.domain.device.device import Form
from checkers.domain.device.readings import Test, Waveform
from checkers.domain.quantities.quantity import format_quantity
from checkers.wording.book import part

CONNECT: Mapping[str, tuple[str, ...]] = {
    Form.RCCB: ("plan.at-terminals",),
    Form.RCBO: ("plan.at-terminals", "plan.single-pole"),
    Form.CBR: ("plan.at-terminals",),
    Form.SOCKET: ("plan.at-socket",),
    Form.PORTABLE: ("plan.at-portable",),
    Form.MODULAR: ("plan.at-breaker-of-relay",),
    Form.GFCI: ("plan.at-outlet",),
    Form.RDC_DD: ("plan.at-charge-point",),
    Form.MONITOR: ("plan.at-monitor",),
}
LOOK: Mapping[str, str] = {
    Form.MODULAR: "plan.look-at-modular",
    Form.PORTABLE: "plan.look-at-portable",
    Form.RDC_DD: "plan.look-at-rdc-dd",
    Form.MONITOR: "plan.look-at-monitor",
    Form.GFCI: "plan.look-at-gfci",
}
WHY: Mapping[tuple[str, str], str] = {
    (Test.NO_TRIP, "ac"): "plan.why-no-trip-ac",
    (Test.TRIP_TIME, "ac"): "plan.why-trip-time-ac",
    (Test.RAMP, "ac"): "plan.why-ramp-ac",
    (Test.TRIP_TIME, "half-wave"): "plan.why-trip-time-half-wave",
    (Test.RAMP, "half-wave"): "plan.why-ramp-half-wave",
    (Test.RAMP, "composite"): "plan.why-ramp-composite",
    (Test.TRIP_TIME, "smooth-dc"): "plan.why-trip-time-smooth-dc",
    (Test.RAMP, "smooth-dc"): "plan.why-ramp-smooth-dc",
    (Test.BUTTON, ""): "plan.why-button",
}
WRITE_DOWN: Mapping[str, str] = {
    Test.NO_TRIP: "plan.write-down-no-trip",
    Test.TRIP_TIME: "plan.write-down-trip-time",
    Test.RAMP: "plan.write-down-ramp",
    Test.BUTTON: "plan.write-down-button",
}
IF_IT_FAILS: Mapping[str, tuple[str, ...]] = {
    Test.NO_TRIP: ("plan.if-no-trip-fails", "plan.retire"),
    Test.TRIP_TIME: ("plan.if-trip-time-fails", "plan.retire"),
    Test.RAMP: ("plan.if-ramp-fails", "plan.retire"),
    Test.BUTTON: ("plan.if-button-fails",),
}
SHAPES: Mapping[str, str] = {
    Waveform.AC: "plan.ac",
    Waveform.HALF_WAVE: "plan.half-wave",
    Waveform.SMOOTH_DC: "plan.smooth-dc",
    "composite": "plan.mixed-frequencies",
}
STARTS: Mapping[str, str] = {
    "0": "plan.starting-at-0",
    "180": "plan.starting-at-180",
    "+": "plan.positive",
    "-": "plan.negative",
}
DO: Mapping[str, str] = {
    Test.NO_TRIP: "plan.hold",
    Test.TRIP_TIME: "plan.take-time",
    Test.RAMP: "plan.raise",
}


def told(*codes: str) -> str:
    """Return the sentences of some parts, one after the other."""
    return " ".join(map(part, codes))


def what_to_do(test: str, shape: str, phase: str, current: float | None, lasting: float) -> str:
    """Return what to set and do in a step, as one sentence.

    Inputs: the test; the waveform; its start or direction; the current to set, or to rise to
    [mA], None for the test button; how long to hold it [ms].
    """
    if current is None:
        return part("plan.press-button")
    what = part(SHAPES[shape])
    if phase in STARTS:
        what = part(STARTS[phase], shape=what)
    time = format_quantity(lasting / 1000, "s")
    return part(DO[test], current=format_quantity(current, "mA"), what=what, time=time)
