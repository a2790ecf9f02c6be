"""Lists of the reference hold everything their data holds."""

from __future__ import annotations

from build_tools.pages.macros.reference import (
    causes_macro,
    circuits_macro,
    electrode_limits_macro,
    quantities_macro,
    surveys_macro,
)
from checkers.domain.causes import CAUSES
from checkers.domain.tables.glossary import QUANTITIES
from checkers.physics.converter.circuits import CIRCUITS


def test_every_cause_with_what_it_rests_on() -> None:
    """Its code is the place on the page; danger is said in words."""
    shown = causes_macro("", "")

    for cause in CAUSES.values():
        assert (f'id="{cause.code}"' in shown) == (cause.prior is not None)
    assert shown.count("people may be without protection") == sum(
        cause.danger for cause in CAUSES.values() if cause.prior
    )


def test_every_quantity_and_every_circuit() -> None:
    """The glossary and the gallery are whole."""
    quantities, circuits = quantities_macro("", ""), circuits_macro("", "../")

    assert all(f'id="{key}"' in quantities for key in QUANTITIES)
    assert all(f'<h2 id="{key}">' in circuits for key in CIRCUITS)
    assert "../checkers/fault-waveform/#circuit=six-pulse" in circuits


def test_greatest_electrode_resistances() -> None:
    """50 V / 30 mA = 1666 ohm, 833 at 25 V, 4000 at 120 V of DC (worked in published articles)."""
    shown = electrode_limits_macro("", "")
    line = shown.split(">30 mA<")[1].split("</tr>")[0]

    assert [f"<td>{ohm}</td>" in line for ohm in (1666, 833, 4000)] == [True] * 3


def test_surveys_name_their_share() -> None:
    """6.4 % of 3231 devices in Austria were bad (a textbook, as quoted)."""
    assert "6.4 %" in surveys_macro("", "")
    assert "3231" in surveys_macro("", "")
