"""Names are turned into places, and whatever is wrong with them is named by field."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run


def device(name: str, below: str | None = None) -> dict[str, Any]:
    """Return a sound device of a request."""
    return {"id": name, "below": below, "type": "A", "rated_residual_current": "30 mA"}


def errors(devices: list[dict[str, Any]], loads: list[dict[str, Any]]) -> dict[str, str]:
    """Return what a request is refused for, by field."""
    reply = run("series", {"devices": devices, "loads": loads})
    assert reply["kind"] == "invalid", reply
    return dict(reply["errors"])


HEATER = {"below": "a", "load": "resistive"}


def test_a_parent_that_is_not_there_is_named() -> None:
    """The field, the name asked for, and the names there are."""
    found = errors([device("a", "x"), device("b", "a")], [HEATER])

    assert {"devices[0].below"} == set(found)
    assert "'x'" in found["devices[0].below"]
    assert "a, b" in found["devices[0].below"]


def test_a_load_on_a_device_that_is_not_there_is_named() -> None:
    """The field is that of the load."""
    found = errors([device("a")], [HEATER, {"below": "garage", "load": "resistive"}])

    assert {"loads[1].below"} == set(found)


def test_a_load_on_no_device_is_refused() -> None:
    """Equipment without a device above it is not part of any tree."""
    assert {"loads[0].below"} == set(errors([device("a")], [{"load": "resistive"}]))
    assert {"loads[0].below"} == set(errors([device("a")], [{"load": "resistive", "below": " , "}]))


def test_an_unknown_load_is_named() -> None:
    """The choices are in the message."""
    found = errors([device("a")], [{"below": "a", "load": "toaster"}])

    assert "resistive" in found["loads[0].load"]


def test_a_second_device_of_the_same_name_is_refused() -> None:
    """Case and spaces do not make another name."""
    found = errors([device("Main board"), device("a"), device("main  BOARD")], [HEATER])

    assert {"devices[2].id"} == set(found)
    assert "devices[0]" in found["devices[2].id"]


def test_a_name_with_a_comma_is_refused() -> None:
    """A comma parts the names of two devices above."""
    assert {"devices[1].id"} == set(errors([device("a"), device("b, c")], [HEATER]))


@pytest.mark.parametrize(
    ("devices", "fields"),
    [
        ([device("a", "a")], {"devices[0].below"}),
        ([device("a", "b"), device("b", "a")], {"devices[0].below", "devices[1].below"}),
        (
            [device("a", "c"), device("b", "a"), device("c", "b"), device("d", "c")],
            {"devices[0].below", "devices[1].below", "devices[2].below"},
        ),
    ],
)
def test_a_loop_is_refused_at_each_device_in_it(
    devices: list[dict[str, Any]], fields: set[str]
) -> None:
    """A device below a loop, and not part of it, is not marked."""
    found = errors(devices, [HEATER])

    assert fields == set(found)
    assert all("loop" in message for message in found.values())


def test_no_device_at_all_is_refused() -> None:
    """A tree needs a device, whether the list is empty or missing."""
    assert {"devices"} == set(errors([], []))
    assert {"devices"} == set(run("series", {"loads": []})["errors"])


def test_a_device_without_a_name_is_refused() -> None:
    """Nothing can stand below a device that has no name."""
    assert {"devices[0].id"} == set(errors([{"type": "A"}], []))


@pytest.mark.parametrize("resistance", ["0", "-5", "1e9", "0 ohm", "300 Mohm"])
def test_a_resistance_that_cannot_be_is_refused(resistance: str) -> None:
    """Nought, less than nothing, and more than any earth."""
    request = {"devices": [device("a")], "electrode_resistance": resistance}

    assert {"electrode_resistance"} == set(run("series", request)["errors"])


def test_names_are_found_whatever_their_case() -> None:
    """A phone that begins a word with a capital does no harm."""
    request = {
        "devices": [device("main"), device("b", "Main")],
        "loads": [HEATER | {"below": "B "}],
    }

    assert run("series", request)["kind"] == "result"


def test_whole_numbers_serve_as_names() -> None:
    """JSON may name devices by number."""
    one = {"id": 1, "below": None, "type": "A", "rated_residual_current": "30 mA"}
    request = {"devices": [one], "loads": [{"below": 1, "load": "resistive"}]}

    assert run("series", request)["outcome"] == "pass"
