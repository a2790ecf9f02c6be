"""A number within a sentence is the table's, leads to it, and is one number."""

from __future__ import annotations

import pytest

from build_tools.pages.macros.numbers import NoSingleNumberError, known_macro, limit_macro


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        # IEC 61008-1 table 1 and table 20, as makers reprint them.
        ("trip-time type=A rated=30mA multiple=1 waveform=ac", "at most 300 ms"),
        ("trip-time type=A rated=30mA multiple=1 waveform=ac only=most", "300 ms"),
        ("trip-time type=A rated=100mA multiple=1 waveform=ac delay=S", "130 ms to 500 ms"),
        ("operating-current type=A rated=30mA waveform=half-wave", "10.5 mA to 42 mA"),
        # UL 943: (20 / 30) ^ 1.43 = 0.560 s.
        ("trip-time form=gfci current=30mA waveform=ac", "at most 560 ms"),
        # IEC 62955:2018 tables 2 and 3.
        ("iec-62955/break-times current=6mA", "at most 10 s"),
        ("iec-62955/no-trip-times current=30mA", "no operation at all"),
    ],
)
def test_what_a_sentence_gets(asked: str, says: str) -> None:
    """The words between the link's tags."""
    assert f">{says}</a>" in limit_macro(asked, "../")


def test_it_leads_to_its_table_and_names_its_source() -> None:
    """One tap to the table, and the citation on it."""
    shown = limit_macro("trip-time type=A rated=30mA multiple=5 waveform=ac", "../../")

    assert 'href="../../limits/iec-61008-1/"' in shown
    assert "IEC 61008-1" in shown


@pytest.mark.parametrize(
    "asked",
    [
        "trip-time type=A rated=30mA waveform=ac",  # every multiple at once
        "trip-time type=AC rated=30mA multiple=1 waveform=half-wave",  # there is none
    ],
)
def test_several_numbers_or_none_stop_the_build(asked: str) -> None:
    """A sentence holds one number, and never a missing one."""
    with pytest.raises(NoSingleNumberError):
        limit_macro(asked, "")


def test_a_figure_that_stands_in_no_table() -> None:
    """With its unit, leading to the sources."""
    assert ">200 ohm</a>" in known_macro("electrode_stable_up_to ohm", "../")
