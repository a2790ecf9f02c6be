"""How leakage currents add: in phase as figures, at right angles as the sides of a triangle."""

from __future__ import annotations

from math import hypot

from build_tools.drawings.scales import Scale
from build_tools.drawings.svg import Picture, arrow, label
from checkers.domain.quantities.quantity import format_quantity, parse_quantity

LEFT, WIDEST, BOTTOM = 20.0, 210.0, 150.0


def leakage_sum(resistive: str = "25 mA", capacitive: str = "10 mA") -> Picture:
    """Draw two currents at right angles and their sum."""
    across, up = (parse_quantity(text, "standing_leakage") for text in (resistive, capacitive))
    whole = hypot(across, up)
    scale = Scale(0.0, across, 0.0, WIDEST)
    right, top = LEFT + WIDEST, BOTTOM - up * WIDEST / across
    shown = format_quantity(whole, "mA", 3)
    return Picture(
        key=f"leakage-sum-{across:g}-{up:g}",
        title="Leakage adds as the sides of a triangle",
        describes=f"{resistive} in phase with the voltage and {capacitive} a quarter period ahead "
        f"make {shown}, not {across + up:g} mA.",
        height=BOTTOM + 34.0,
        parts=(
            arrow((LEFT, BOTTOM), (LEFT + scale.at(across), BOTTOM)),
            arrow((right, BOTTOM), (right, top)),
            arrow((LEFT, BOTTOM), (right, top), kind="picture__arrow picture__line--second"),
            label((LEFT + WIDEST / 2.0, BOTTOM + 20.0), f"resistive {resistive}", anchor="middle"),
            label((right + 10.0, (BOTTOM + top) / 2.0), f"capacitive {capacitive}"),
            label(
                (LEFT + WIDEST / 2.0, (BOTTOM + top) / 2.0 - 14.0),
                f"together {shown}",
                anchor="middle",
                kind="picture__text--strong picture__text--plate",
            ),
        ),
        caption=f"√({across:g}² + {up:g}²) = {shown}. Interference filters leak through "
        "capacitors, a test current and damp insulation through resistance.",
        sources=("Sum of currents at right angles, calculated",),
    )
