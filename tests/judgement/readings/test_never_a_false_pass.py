"""Whatever is typed, a pass needs every reading inside its limit and nothing left unknown."""

from __future__ import annotations

from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checkers import run

DEVICE = {"type": "A", "rated_residual_current": "30 mA"}
CODES = st.sampled_from(["iec", "gb", "au", "nz", "de", "nl", "za"])
TIMES = st.floats(1, 2000).map(lambda value: f"{value:.1f} ms")
CURRENTS = st.floats(1, 100).map(lambda value: f"{value:.1f} mA")
SOUND = [
    {"test": "no-trip", "multiple": "0.5", "waveform": "ac", "value": "> 1999 ms"},
    {"test": "trip-time", "multiple": "1", "waveform": "ac", "phase": "0", "value": "28 ms"},
    {"test": "trip-time", "multiple": "5", "waveform": "ac", "phase": "0", "value": "18 ms"},
    {"test": "ramp", "waveform": "ac", "value": "22 mA"},
    {"test": "button", "value": "operates"},
]


def outcome(readings: list[dict[str, Any]], code: str = "iec", **more: Any) -> str:
    """Return the outcome of some readings of a 30 mA type A device, or the kind of reply."""
    request = {"code": code, "on": "2026-11-24", "device": DEVICE, "readings": readings, **more}
    reply = run("readings", request)
    return str(reply.get("outcome", reply["kind"]))


def timed(multiple: str, value: str) -> dict[str, str]:
    """Return a trip time on AC at a multiple of the rating."""
    return {"test": "trip-time", "multiple": multiple, "waveform": "ac", "value": value}


@given(CODES, TIMES)
def test_a_time_over_the_limit_never_passes(code: str, time: str) -> None:
    """300 ms at the rating and 40 ms at five times (IEC 61008-1, table 1) bind in every code."""
    value = float(time.split(maxsplit=1)[0])

    assert outcome([timed("1", time)], code) != "pass" or value < 300
    assert outcome([timed("5", time)], code) != "pass" or value < 40


@given(CODES, CURRENTS)
def test_a_trip_current_outside_the_band_never_passes(code: str, current: str) -> None:
    """Half the rating to the rating, on AC, binds in every code."""
    value = float(current.split(maxsplit=1)[0])
    reading = {"test": "ramp", "waveform": "ac", "value": current}

    assert outcome([reading], code) != "pass" or 15 < value < 30


@given(
    st.sampled_from(range(len(SOUND))),
    st.sampled_from(["> 300", "no trip", "75 mA", "test not completed"]),
)
def test_one_bad_reading_spoils_the_sound_ones(place: int, bad: str) -> None:
    """No sound reading outvotes one that fails, or that is no result."""
    assume(SOUND[place]["test"] in ("trip-time", "ramp"))
    readings = [*SOUND, {**SOUND[place], "phase": "180", "value": bad}]

    assert outcome(SOUND) == "pass"
    assert outcome(readings) != "pass"


@given(st.sampled_from(["multiple", "waveform"]), st.sampled_from(["1", "5"]), TIMES)
def test_a_time_without_what_decides_its_limit_never_passes(
    missing: str, multiple: str, time: str
) -> None:
    """Leaving out the multiple or the waveform never makes a pass."""
    reading = timed(multiple, time)
    del reading[missing]

    assert outcome([reading]) == "cannot-say"


@given(st.permutations(SOUND), CODES)
def test_the_order_of_readings_never_matters(readings: list[dict[str, Any]], code: str) -> None:
    """The same readings in another order have the same outcome."""
    assert outcome(readings, code) == outcome(SOUND, code)


@given(st.floats(1, 299), st.sampled_from(["ms", "s"]), st.booleans())
def test_unit_and_decimal_sign_never_matter(value: float, unit: str, comma: bool) -> None:
    """28.5 ms, 0,0285 s and 0.0285 s are one reading."""
    plain = f"{value:.1f}"
    typed = plain if unit == "ms" else f"{float(plain) / 1000:.4f}"
    typed = typed.replace(".", ",") if comma else typed

    assert outcome([timed("1", f"{plain} ms")]) == outcome([timed("1", f"{typed} {unit}")])


@given(st.sampled_from(["AC", "A", "F"]), st.floats(0, 300))
def test_smooth_dc_beyond_what_the_type_bears_never_passes(kind: str, dc: float) -> None:
    """Type AC bears none declared, A 6 mA, F 10 mA (BS 7671:2018+A2:2022, 531.3.3, as quoted)."""
    borne = {"AC": 0.0, "A": 6.0, "F": 10.0}[kind]
    device = {"type": kind, "rated_residual_current": "30 mA"}
    found = outcome(SOUND, device=device, circuit={"dc_residual": f"{dc:.2f} mA"})

    assert found != "pass" or round(dc, 2) <= borne


@settings(max_examples=300)
@given(
    st.lists(
        st.fixed_dictionaries(
            {"value": st.text(max_size=12)},
            optional={
                "test": st.sampled_from(["trip-time", "no-trip", "ramp", "button", "unknown"]),
                "multiple": st.sampled_from(["½", "1", "5", "x"]),
                "waveform": st.sampled_from(["ac", "half-wave", "smooth-dc", "unknown"]),
            },
        ),
        min_size=1,
        max_size=4,
    )
)
def test_no_text_crashes_the_checker(readings: list[dict[str, Any]]) -> None:
    """Any text gives a verdict or a named error."""
    assert outcome(readings) != "crash"
