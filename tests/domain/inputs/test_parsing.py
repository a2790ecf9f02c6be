"""A request is read whole, or every bad field of it is named."""

from __future__ import annotations

import json
from typing import Any

import pytest

from checkers.catalogue.readings import Inputs
from checkers.domain.errors import InvalidRequest
from checkers.domain.inputs.parsing import parse_inputs


def errors_of(request: Any) -> dict[str, str]:
    """Return the messages by field for a request that cannot be read."""
    with pytest.raises(InvalidRequest) as caught:
        parse_inputs(Inputs, request)
    return caught.value.errors


def test_every_bad_field_is_named_at_once() -> None:
    """One reply names all that is wrong, each by its own field."""
    errors = errors_of(
        {
            "code": "atlantis",
            "on": "yesterday",
            "colour": "blue",
            "device": {"type": "Z", "rated_residual_current": "-30 mA"},
            "readings": [{"test": "trip-time", "value": "nan"}, {"value": ""}],
        }
    )

    assert set(errors) == {
        "code",
        "on",
        "colour",
        "device.type",
        "device.rated_residual_current",
        "readings[0].value",
        "readings[1].value",
    }


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -1, True, [], {}, "∞", "1e9 mA"])
def test_a_figure_that_is_none_is_refused_by_field(value: Any) -> None:
    """NaN, infinity, negatives, truth values and containers are no currents."""
    request = {"device": {"rated_residual_current": value}, "readings": [{"value": "28"}]}

    assert set(errors_of(request)) == {"device.rated_residual_current"}


def test_a_message_names_the_value_and_the_range() -> None:
    """An absurd figure is answered with what would be right."""
    message = errors_of(
        {"device": {"rated_residual_current": "300 A"}, "readings": [{"value": "1"}]}
    )

    assert "'300 A'" in message["device.rated_residual_current"]
    assert "1 mA to 30 A" in message["device.rated_residual_current"]


@pytest.mark.parametrize("request_value", [None, [], "text", 5])
def test_a_request_that_is_no_object_is_refused(request_value: Any) -> None:
    """A list, a text or a number is no request."""
    assert "request" in errors_of(request_value)


def test_multiple_and_current_together_are_refused() -> None:
    """A reading has one test current, said one way."""
    reading = {"test": "trip-time", "multiple": 1, "current": "150 mA", "value": "28"}

    assert set(errors_of({"readings": [reading]})) == {"readings[0].current"}


def test_json_numbers_and_typed_text_give_the_same_inputs() -> None:
    """A number of JSON is a bare number that was typed."""
    typed = {"device": {"rated_residual_current": "30"}, "readings": [{"value": "28"}]}
    as_json = json.loads('{"device":{"rated_residual_current":30},"readings":[{"value":28}]}')

    assert parse_inputs(Inputs, typed) == parse_inputs(Inputs, as_json)
