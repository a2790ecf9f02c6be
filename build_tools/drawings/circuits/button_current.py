"""What the test button does: a current past the core, with no earth in it."""

from __future__ import annotations

from build_tools.drawings.circuits.parts import core, joint, part
from build_tools.drawings.svg import Picture, arrow, label, labels, line
from checkers.physics.core.parameters import CORE

LINE_AT, NEUTRAL_AT = 62.0, 122.0
LEFT, RIGHT, CORE_AT = 30.0, 330.0, 150.0
TAP_BELOW, TAP_ABOVE = 250.0, 70.0
BYPASS_AT = 176.0


def button_current() -> Picture:
    """Draw the current of a test button, and say how great it may be."""
    most = CORE.button.values["greatest"]
    return Picture(
        key="button-current",
        title="What the test button does",
        describes="A resistor inside the device joins the line below the core to the neutral above "
        "it, so that its current passes the core one way only. No earth is part of it. The "
        f"current may be up to {most:g} times the rating.",
        height=222.0,
        parts=(
            *_wires(),
            core((CORE_AT, (LINE_AT + NEUTRAL_AT) / 2.0), 46.0),
            label((CORE_AT, LINE_AT - 24.0), "core", anchor="middle", kind="picture__text--strong"),
            part((TAP_BELOW - 26.0, BYPASS_AT - 14.0), 52.0, 28.0, "resistor"),
            part((TAP_ABOVE + 34.0, BYPASS_AT - 14.0), 64.0, 28.0, "button T"),
            arrow((TAP_BELOW - 34.0, BYPASS_AT + 24.0), (TAP_ABOVE + 100.0, BYPASS_AT + 24.0)),
            labels((TAP_ABOVE + 4.0, BYPASS_AT + 42.0), (f"up to {most:g} × IΔn",)),
        ),
        caption="It proves that the mechanism opens. It says nothing of the trip current, of the "
        "time, or of the earth connection.",
        sources=(CORE.button.citation.words,),
    )


def _wires() -> list[str]:
    path_of_button = [
        ((TAP_BELOW, LINE_AT), (TAP_BELOW, BYPASS_AT)),
        ((TAP_BELOW, BYPASS_AT), (TAP_ABOVE, BYPASS_AT)),
        ((TAP_ABOVE, BYPASS_AT), (TAP_ABOVE, NEUTRAL_AT)),
    ]
    return [
        line((LEFT, LINE_AT), (RIGHT, LINE_AT), "picture__wire"),
        line((LEFT, NEUTRAL_AT), (RIGHT, NEUTRAL_AT), "picture__wire"),
        label((LEFT - 6.0, LINE_AT + 4.5), "L", anchor="end", kind="picture__text--strong"),
        label((LEFT - 6.0, NEUTRAL_AT + 4.5), "N", anchor="end", kind="picture__text--strong"),
        label((RIGHT, LINE_AT - 8.0), "to the loads", anchor="end", kind="picture__text--soft"),
        *(line(start, end, "picture__wire") for start, end in path_of_button),
        joint((TAP_BELOW, LINE_AT)),
        joint((TAP_ABOVE, NEUTRAL_AT)),
    ]
