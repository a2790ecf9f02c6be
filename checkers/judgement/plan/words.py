"""The words of a test plan: why, where to connect, what to write down, what if it fails."""

from __future__ import annotations

from collections.abc import Mapping

from checkers.domain.device.device import Form
from checkers.domain.device.readings import Test, Waveform
from checkers.domain.quantities.quantity import format_quantity

AT_TERMINALS = (
    "Line and neutral leads both on the load side of the device, the earth lead on the protective "
    "conductor, every other supply off. At its outgoing terminals the device alone is tested; at "
    "the farthest socket-outlet the wiring is tested with it."
)
CONNECT: Mapping[str, str] = {
    Form.RCCB: AT_TERMINALS,
    Form.RCBO: f"{AT_TERMINALS} Across a single-pole device the timer would run on.",
    Form.CBR: AT_TERMINALS,
    Form.SOCKET: "Plug the instrument into the socket-outlet of the device itself.",
    Form.PORTABLE: (
        "Plug the device into a sound, earthed socket-outlet and the instrument into the device. "
        "An RCD before it may trip first."
    ),
    Form.MODULAR: (
        "Downstream of the tripping breaker, so that the test current passes the sensor once. The "
        "time counts for sensor, relay, release and breaker together."
    ),
    Form.GFCI: "Plug the instrument into the outlet of the device, or into one on its load side.",
    Form.RDC_DD: (
        "At the charge point's outlet, through a test adapter that stands for a vehicle, from a "
        "line to the protective conductor."
    ),
    Form.MONITOR: "Through the sensor of the monitor, once; watch its alarm.",
}
BY_HAND = "Nothing to connect."
CLAMP = "A clamp around all live conductors of the device, without the protective conductor."
DC_CLAMP = (
    f"{CLAMP} It must read DC and resolve 1 mA. Close it and set it to zero first, away from "
    "magnets and other currents; then turn it round on the conductors and take half the difference."
)
BEFORE_SMOOTH_DC = (
    "First have every circuit of a type AC, A or F device upstream released or switched off: this "
    "test can blind that device. Repeat its AC test afterwards."
)

WHY: Mapping[tuple[str, str], str] = {
    (Test.NO_TRIP, "ac"): (
        "Shows that it does not trip too early. A device that never trips holds too: this alone "
        "proves nothing."
    ),
    (Test.TRIP_TIME, "ac"): (
        "Shows that it opens within its time on AC. It says nothing of pulsating current or of DC."
    ),
    (Test.RAMP, "ac"): "Shows the current at which it trips: how much is left of its sensitivity.",
    (Test.TRIP_TIME, "half-wave"): (
        "Shows that it sees pulsating current. Whether the equipment calls for more than that is "
        "settled by inspection."
    ),
    (Test.RAMP, "half-wave"): "Shows the pulsating current at which it trips, as r.m.s.",
    (Test.RAMP, "composite"): "Shows that it sees the mixed frequencies of inverters.",
    (Test.TRIP_TIME, "smooth-dc"): (
        "Only a test with smooth DC shows that it operates on smooth DC; an AC test cannot."
    ),
    (Test.RAMP, "smooth-dc"): "Shows the smooth DC at which it operates, for each direction.",
    (Test.BUTTON, ""): (
        "Shows that the mechanism moves, with more than the rating. It comes last: pressed first, "
        "it would free a sticking mechanism unseen."
    ),
}
WRITE_DOWN: Mapping[str, str] = {
    Test.NO_TRIP: "Whether it held, and for how long.",
    Test.TRIP_TIME: (
        "The time in ms with multiple, waveform and start. Of two starts the longer one decides. "
        "No trip within the test is written as “> 300 ms” or as shown, never left blank."
    ),
    Test.RAMP: "The trip current in mA with waveform and direction.",
    Test.BUTTON: "Operates, or does not operate.",
}
RETIRE = "If it fails again, take the device out of service and tell the person in charge."
IF_IT_FAILS: Mapping[str, str] = {
    Test.NO_TRIP: (
        "Repeat at the outgoing terminals with the load conductors off. If it holds there, leakage "
        f"of the circuit adds to the test: find it. {RETIRE}"
    ),
    Test.TRIP_TIME: (
        "Check that the waveform set is the one for this step; repeat at the outgoing terminals "
        f"with the load conductors off, neutral included. {RETIRE}"
    ),
    Test.RAMP: (
        "Too low: leakage adds to the test. Too high: wrong waveform set, another rating fitted, "
        "DC through the device, or neutral and earth joined downstream. Repeat at the terminals "
        f"with the load conductors off. {RETIRE}"
    ),
    Test.BUTTON: (
        "Check that the supply is on. Take the device out of service; look for smooth DC, which "
        "can silence a button."
    ),
}
LOOK: Mapping[str, str] = {
    Form.MODULAR: (
        "Read and note the rating and delay set on the relay. See that the sensor's lead is "
        "connected, and that the breaker opens when the relay trips."
    ),
    Form.PORTABLE: "Look over plug, cable and case. Damage ends the test here.",
    Form.RDC_DD: "Find the RCD that the 6 mA detection works beside: that one protects people.",
    Form.MONITOR: "A monitor warns and does not protect: find the device that disconnects as well.",
    Form.GFCI: "Look at the outlet and its marking. See that line and load are not interchanged.",
}
INSPECT = (
    "Read type, rated residual current, delay, rated current and standard on the device. See that "
    "all live conductors pass through it, that no neutral is shared, and that it is undamaged. "
    "Prove the protective conductor and the earth connection before any test current flows."
)
TYPE_CHECK = (
    "Compare the type on the device with everything connected behind it, and with the devices "
    "above it."
)
NO_AC_TEST = "No AC test can show that the type is right."
SHAPES: Mapping[str, str] = {
    Waveform.AC: "AC",
    Waveform.HALF_WAVE: "half wave",
    Waveform.SMOOTH_DC: "smooth DC",
    "composite": "mixed frequencies",
}
STARTS: Mapping[str, str] = {
    "0": ", starting at 0°",
    "180": ", starting at 180°",
    "+": ", positive",
    "-": ", negative",
}


def what_to_do(test: str, shape: str, phase: str, current: float | None, lasting: float) -> str:
    """Return what to set and do in a step, as one sentence.

    Inputs: the test; the waveform; its start or direction; the current to set, or to rise to
    [mA]; how long to hold it [ms].
    """
    if test == Test.BUTTON:
        return "Press the test button, supply on."
    what = f"{SHAPES[shape]}{STARTS.get(phase, '')}"
    amount = "" if current is None else f"{format_quantity(current, 'mA')} "
    if test == Test.NO_TRIP:
        return f"Hold {amount}{what}, for {format_quantity(lasting / 1000, 's')}."
    if test == Test.TRIP_TIME:
        return f"Set {amount}{what}, and take the time."
    end = f" to {amount.strip()} or until it responds" if amount else " until it responds"
    return f"Raise {what} slowly{end}."
