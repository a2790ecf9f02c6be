"""A neutral-to-earth link below a device: part of the test current goes back past its core."""

from __future__ import annotations

from build_tools.drawings.circuits.parts import core, earth, joint, part
from build_tools.drawings.svg import Picture, arrow, label, line

LINE_AT, NEUTRAL_AT, EARTH_AT = 60.0, 116.0, 172.0
LEFT, RIGHT, CORE_AT, LINK_AT, TEST_AT = 30.0, 340.0, 96.0, 196.0, 296.0


def neutral_to_earth() -> Picture:
    """Draw the ways of a test current where neutral touches earth below the device."""
    return Picture(
        key="neutral-to-earth",
        title="A neutral-to-earth link below the device",
        describes="The instrument drives the test current from line to the protective conductor. "
        "At the link it parts: one share returns by the neutral through the core and cancels "
        "itself there; only the rest, which returns by the protective conductor, is seen.",
        height=226.0,
        parts=(*_wires(), *_parts(), *_arrows()),
        caption="The device sees only the share that returns by earth: its trip current reads too "
        "high, its time too long, or it does not trip at all. In TN the link is short and takes "
        "much; in TT the electrodes stand in between.",
    )


def _wires() -> list[str]:
    wires = [
        line((LEFT, y), (RIGHT, y), kind)
        for y, kind in (
            (LINE_AT, "picture__wire"),
            (NEUTRAL_AT, "picture__wire"),
            (EARTH_AT, "picture__wire picture__wire--earth"),
        )
    ]
    names = [
        label((LEFT - 6.0, y + 4.5), words, anchor="end", kind="picture__text--strong")
        for words, y in (("L", LINE_AT), ("N", NEUTRAL_AT), ("PE", EARTH_AT))
    ]
    bond = line((LEFT + 14.0, NEUTRAL_AT), (LEFT + 14.0, EARTH_AT), "picture__wire")
    return [*wires, *names, bond, joint((LEFT + 14.0, NEUTRAL_AT)), joint((LEFT + 14.0, EARTH_AT))]


def _parts() -> list[str]:
    return [
        earth((LEFT + 14.0, EARTH_AT)),
        core((CORE_AT, (LINE_AT + NEUTRAL_AT) / 2.0), 42.0),
        label((CORE_AT, LINE_AT - 20.0), "RCD", anchor="middle", kind="picture__text--strong"),
        line((LINK_AT, NEUTRAL_AT), (LINK_AT, EARTH_AT), "picture__wire"),
        joint((LINK_AT, NEUTRAL_AT)),
        joint((LINK_AT, EARTH_AT)),
        label((LINK_AT + 8.0, EARTH_AT - 22.0), "the link"),
        line((TEST_AT, LINE_AT), (TEST_AT, EARTH_AT), "picture__wire"),
        part((TEST_AT - 26.0, 100.0), 52.0, 32.0, "tester"),
    ]


def _arrows() -> list[str]:
    return [
        arrow((130.0, LINE_AT - 10.0), (250.0, LINE_AT - 10.0)),
        label((190.0, LINE_AT - 18.0), "test current", anchor="middle"),
        arrow((LINK_AT - 10.0, NEUTRAL_AT - 10.0), (CORE_AT + 18.0, NEUTRAL_AT - 10.0)),
        label((152.0, NEUTRAL_AT - 18.0), "not seen", anchor="middle"),
        arrow((LINK_AT - 10.0, EARTH_AT + 16.0), (CORE_AT - 20.0, EARTH_AT + 16.0)),
        label((140.0, EARTH_AT + 36.0), "seen", anchor="middle"),
    ]
