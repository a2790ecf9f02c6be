"""Headings are understood by meaning; where they are not, the column is asked about."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checkers.domain.device.readings import Waveform
from checkers.judgement.schedule.headings.headings import meaning_of
from checkers.judgement.schedule.headings.meaning import READING, Meaning

UNDERSTOOD = [
    ("x1 0° (ms)", "trip time ×1 0° (ms)"),
    ("1x IΔn 0º ms", "trip time ×1 0° (ms)"),
    ("5 × I∆n 180", "trip time ×5 180°"),
    ("t 5IΔn [ms]", "trip time ×5 (ms)"),
    ("½ IΔn", "no-trip test ×0.5"),
    ("0,5 x", "no-trip test ×0.5"),
    ("Half (no trip)", "no-trip test ×0.5"),
    (".5 x (ms)", "no-trip test ×0.5 (ms)"),
    ("x.5 (ms)", "no-trip test ×0.5 (ms)"),
    ("× .5", "no-trip test ×0.5"),
    ("x,5 IΔn", "no-trip test ×0.5"),
    (",5x", "no-trip test ×0.5"),
    ("t ½ IΔₙ", "no-trip test ×0.5"),
    ("RCD operating time at IΔn (ms)", "trip time ×1 (ms)"),
    ("trip_time_x1_0", "trip time ×1 0°"),
    ("x1/x5 (ms)", "trip time ×1/×5 (ms)"),
    ("1x 0/180 ms", "trip time ×1 0°/180° (ms)"),
    ("150mA 0°", "trip time at 150 mA 0°"),
    ("x1 (s)", "trip time ×1 (s)"),
    ("Trip (mA)", "ramp (mA)"),
    ("Ramp", "ramp"),
    ("Functional test", "button"),
    ("Auslösezeit 5xIΔn [ms]", "trip time ×5 (ms)"),
    ("Ausloesezeit 1x", "trip time ×1"),
    ("tiempo de disparo 5xIdn", "trip time ×5"),
    ("Temps de déclenchement à IΔn 180° (ms)", "trip time ×1 180° (ms)"),
    ("utløsetid x5", "trip time ×5"),
    ("I?n mA", "rated residual current (mA)"),
    ("Nennfehlerstrom (mA)", "rated residual current (mA)"),
    ("RCD operating current IΔn (mA)", "rated residual current (mA)"),
    ("Rating (A)", "rated current (A)"),
    ("Rating", "rating"),
    ("RCD type", "device type"),
    ("Type", "type"),
    ("RCD", "device"),
    ("Circuit No.", "circuit"),
    ("Type A x1 0°", "trip time ×1 0° half-wave"),
    ("x1 DC", "trip time ×1 unknown"),
    ("DC residual (mA)", "smooth DC residual current (mA)"),
    ("Maximum disconnection time (s)", "not used"),
    ("x1 limit", "not used"),
    ("x1 previous", "not used"),
    ("AFDD test button", "not used"),
    ("Type of wiring", "not known"),
    ("15 mA", "not known"),
    ("Points", "not known"),
]
ASKED_ABOUT = [
    "x1 kitchen",
    "Time",
    "Disconnection time",
    "Operating current (mA)",
    "Residual current",
    "Test 1 (ms)",
    "trip time and trip current",
    "x1 ms mA",
    "x5¹ (ms)",
    "5²x (ms)",
    "x1½ (ms)",
    "x1..5 (ms)",
    "x1,000 (ms)",
]


@pytest.mark.parametrize(("heading", "means"), UNDERSTOOD)
def test_a_heading_is_understood(heading: str, means: str) -> None:
    """The words shown for its meaning are those expected."""
    assert means == str(meaning_of(heading))
    assert meaning_of(heading).is_sure


@pytest.mark.parametrize("heading", ASKED_ABOUT)
def test_a_heading_with_words_left_over_is_asked_about(heading: str) -> None:
    """It is never used as it stands."""
    assert meaning_of(heading).asks


@given(
    test=st.sampled_from(["trip-time", "no-trip", "ramp", "button"]),
    multiples=st.lists(st.sampled_from([1.0, 2.0, 5.0]), unique=True, max_size=2),
    phases=st.sampled_from([(), ("0",), ("180",), ("0", "180"), ("+",), ("-",)]),
    waveform=st.sampled_from(["", *(one.value for one in Waveform)]),
    unit=st.sampled_from(["", "ms", "s", "mA", "A"]),
)
@settings(deadline=None)
def test_what_is_shown_for_a_meaning_is_read_back_as_the_same(
    test: str, multiples: list[float], phases: tuple[str, ...], waveform: str, unit: str
) -> None:
    """A person may confirm or correct a mapping in the words it is shown in."""
    bare = test in ("ramp", "button")
    if test == "no-trip":
        multiples = [0.5]
    meaning = Meaning(
        READING,
        test=test,
        multiples=() if bare else tuple(multiples),
        phases=phases,
        waveform=waveform,
        unit=unit,
        names_no_trip=test == "no-trip",
    )

    assert meaning == meaning_of(str(meaning))


@given(st.text(max_size=60))
@settings(deadline=None)
def test_no_heading_is_too_strange(heading: str) -> None:
    """Whatever stands there, it means something or nothing, without an error."""
    assert str(meaning_of(heading))
