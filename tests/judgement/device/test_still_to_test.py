"""A pass that leaves out a test which the code requires is one so far, and says so everywhere."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest

import checkers
from checkers.catalogue import readings
from checkers.command_line.printing import headline, print_reply
from checkers.domain.codes.registry import CODES

DEVICE = {"type": "A", "rated_residual_current": "30 mA", "form": "rcbo"}
READINGS: dict[str, dict[str, Any]] = {
    "½": {"test": "no-trip", "multiple": "1/2", "waveform": "ac", "value": "> 1999 ms"},
    "×1": {"test": "trip-time", "multiple": 1, "waveform": "ac", "value": "26 ms"},
    "×5": {"test": "trip-time", "multiple": 5, "waveform": "ac", "value": "14 ms"},
    "ramp": {"test": "ramp", "waveform": "ac", "value": "21 mA"},
    "button": {"test": "button", "value": "operates"},
}


def asked(*names: str, code: str = "gb", on: str = "2026-11-24", **device: str) -> dict[str, Any]:
    """Return the reply to some of the readings of a sound device."""
    request = {"code": code, "on": on, "device": DEVICE | device}
    return checkers.run("readings", request | {"readings": [READINGS[one] for one in names]})


def missing(reply: dict[str, Any]) -> set[str]:
    """Return what is still to do, by the names of the readings."""
    short = {("trip-time", 1.0): "×1", ("trip-time", 5.0): "×5", ("no-trip", 0.5): "½"}
    return {
        short.get((one["test"], one.get("multiple")), one["test"]) for one in reply["still_to_do"]
    }


@pytest.mark.parametrize(
    ("code", "on", "required"),
    [
        # BS 7671:2018+A2:2022, 643.8: one AC test at the rating; 643.10: functional testing.
        ("gb", "2026-11-24", {"×1", "button"}),
        # BS 7671:2018 before its second amendment, as trade articles of the time quote it.
        ("gb", "2020-06-01", {"×5", "button"}),
        # BS 7671:2008, Part 6: half, once and five times the rating.
        ("gb", "2015-06-01", {"½", "×1", "×5", "button"}),
        # IEC 60364-6:2016, 6.4.3.7: at a current not above the rating; the button is a function.
        ("iec", "2026-11-24", {"×1", "button"}),
    ],
)
def test_what_the_code_requires_is_still_to_do_until_it_is_done(
    code: str, on: str, required: set[str]
) -> None:
    """Any choice of readings leaves exactly the others, and a pass is whole only with all."""
    for count in range(1, len(READINGS) + 1):
        for names in combinations(READINGS, count):
            reply = asked(*names, code=code, on=on)
            assert required - set(names) == missing(reply)
            if reply["outcome"] == "pass":
                whole = required <= set(names)
                assert headline(reply).startswith("PASS SO FAR; still to do: ") is not whole


@pytest.mark.parametrize("code", CODES)
def test_no_code_lets_a_bare_pass_stand_for_less_than_it_requires(code: str) -> None:
    """The first line of what is printed names every test that is still to do."""
    for names in combinations(READINGS, 2):
        reply = asked(*names, code=code)
        first = " ".join(print_reply(reply).split("\n\n")[0].split())
        if reply["outcome"] == "pass" and reply["still_to_do"]:
            assert first.startswith("PASS SO FAR; still to do: ")
            assert all(one["words"] in first for one in reply["still_to_do"])


def test_what_is_still_to_do_is_named_with_its_code_and_clause() -> None:
    """Test, multiple, waveform, document with edition, clause, and the words that are shown."""
    first, second = asked("ramp")["still_to_do"]

    assert first == {
        "test": "trip-time",
        "multiple": 1.0,
        "waveform": "ac",
        "code": "BS 7671:2018+A2:2022",
        "clause": "643.7.1, 643.8",
        "words": "×1 trip time on AC (BS 7671)",
    }
    assert second["words"] == "test button (BS 7671)"


@pytest.mark.parametrize("value", ["-", "not tested", "aborted", "28/18"])
def test_what_is_no_result_does_nothing(value: str) -> None:
    """A line that holds no result leaves its test to do."""
    given = [READINGS["ramp"], READINGS["×1"] | {"value": value}]
    reply = checkers.run("readings", {"code": "gb", "device": DEVICE, "readings": given})

    assert "×1" in missing(reply)


@pytest.mark.parametrize("code", ["au", "nz"])
def test_an_instrument_does_for_the_button_where_the_code_says_so(code: str) -> None:
    """AS/NZS 3000, section 8, as quoted: by the test button or by an instrument."""
    assert "button" not in missing(asked("×1", code=code))
    assert "button" in missing(asked("½", code=code))


def test_the_next_test_is_the_first_that_is_still_to_do() -> None:
    """The key that was there before stays, and says the same."""
    reply = asked("ramp")

    assert reply["next_test"]["test"] == reply["still_to_do"][0]["words"]
    assert asked("×1", "button")["next_test"] is None
    assert asked("×1", "button")["still_to_do"] == []


def test_the_years_too_tell_what_was_never_done() -> None:
    """A device of which only the ramp was ever taken passes so far."""
    history = [READINGS["ramp"] | {"on": "2026-10-01"}, READINGS["½"] | {"on": "2026-10-01"}]
    request = {"code": "gb", "on": "2026-11-24", "device": DEVICE, "history": history}

    assert missing(checkers.run("over-the-years", request)) == {"×1", "button"}


def test_the_sound_example_is_a_whole_pass() -> None:
    """What the page shows as in good order has all that its code requires."""
    reply = checkers.run("readings", dict(readings.SOUND.request))

    assert reply["still_to_do"] == []
